namespace Alburnum.Cli.Tests;

public sealed class StoppingTests
{
    [Fact]
    public async Task What_does_not_stop_when_it_is_asked_to_is_ended()
    {
        using var stop = new CancellationTokenSource();
        var ended = new List<int>();
        var wasAsked = false;

        await Stopping.AskAsync(
            stop,
            TimeSpan.FromMilliseconds(10),
            status =>
            {
                wasAsked = stop.IsCancellationRequested;
                ended.Add(status);
            }
        );

        Assert.True(wasAsked);
        Assert.Equal([CommandLine.Stopped], ended);
    }
}
