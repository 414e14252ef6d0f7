using Alburnum.Web.Guarding;
using Microsoft.Extensions.Logging;

namespace Alburnum.Web.Tests.Guarding;

public sealed class RefusedRequestsTests
{
    [Fact]
    public void The_first_that_is_refused_is_told_at_once_and_many_after_it_together_a_minute_later()
    {
        var (lines, clock) = (new Lines(), new Clock());
        var refused = new RefusedRequests(lines, clock);

        refused.Count(403);
        for (var i = 0; i < 5000; i++)
            refused.Count(403);
        refused.Count(503);
        Assert.Equal([Line(1, 403), Line(1, 503)], lines.Said);

        clock.Now += TimeSpan.FromMinutes(1);
        refused.Count(403);
        Assert.Equal(Line(5001, 403), lines.Said[^1]);
        Assert.Equal(3, lines.Said.Count);
    }

    private static string Line(int count, int status) =>
        $"Warning: Requests refused since the last such line: {count}, with status {status}.";

    private sealed class Clock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 5, 12, 9, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
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
