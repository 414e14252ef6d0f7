using Alburnum.Web.Guarding;
using Microsoft.Extensions.Logging;

namespace Alburnum.Web.Tests.Guarding;

public sealed class RefusedRequestsTests
{
    [Fact]
    public void The_first_that_is_refused_is_told_at_once_and_many_after_it_together_a_minute_later()
    {
        var (lines, clock) = (new Lines(), new Clock());
        using var refused = new RefusedRequests(lines, clock);

        refused.Count(403);
        for (var i = 0; i < 5000; i++)
            refused.Count(403);
        refused.Count(503);
        Assert.Equal([Line(1, 403), Line(1, 503)], lines.Said);

        // Nothing more is refused: what was is told all the same.
        clock.EndMinute();
        Assert.Equal([Line(1, 403), Line(1, 503), Line(5000, 403)], lines.Said);
        clock.EndMinute();
        Assert.Equal(3, lines.Said.Count);
        refused.Count(403);
        Assert.Equal(Line(1, 403), lines.Said[^1]);
    }

    private static string Line(int count, int status) =>
        $"Warning: Requests refused since the last such line: {count}, with status {status}.";

    private sealed class Clock : TimeProvider
    {
        private readonly List<Running> _running = [];

        public void EndMinute()
        {
            foreach (var timer in _running.ToList())
                timer.Ring();
        }

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            Assert.Equal((TimeSpan.FromMinutes(1), Timeout.InfiniteTimeSpan), (dueTime, period));
            var timer = new Running(_running, () => callback(state));
            _running.Add(timer);
            return timer;
        }

        private sealed class Running(List<Running> all, Action ring) : ITimer
        {
            public void Ring() => ring();

            public bool Change(TimeSpan dueTime, TimeSpan period) => false;

            public void Dispose() => all.Remove(this);

            public ValueTask DisposeAsync()
            {
                Dispose();
                return ValueTask.CompletedTask;
            }
        }
    }

    private sealed class Lines : ILogger<RefusedRequests>
    {
        public List<string> Said { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        ) => Said.Add($"{logLevel}: {formatter(state, exception)}");
    }
}
