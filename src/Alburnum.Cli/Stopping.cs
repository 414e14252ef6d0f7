namespace Alburnum.Cli;

/// <summary>Ends the program when it is asked to stop: what it is doing is taken back, but not waited for for ever.</summary>
internal static class Stopping
{
    /// <summary>How long what is being done may take to end by itself.</summary>
    public static TimeSpan Grace { get; } = TimeSpan.FromSeconds(10);

    /// <summary>Asks what is being done to stop, and ends the program where it does not in time. A kill at any moment loses nothing that was told as done.</summary>
    /// <param name="stop">Signalled at once.</param>
    /// <param name="grace">How long to wait then.</param>
    /// <param name="exit">Ends the program with an exit status.</param>
    /// <returns>Completed once the program has been ended.</returns>
    public static async Task AskAsync(CancellationTokenSource stop, TimeSpan grace, Action<int> exit)
    {
        ArgumentNullException.ThrowIfNull(stop);
        ArgumentNullException.ThrowIfNull(exit);
        await stop.CancelAsync().ConfigureAwait(false);
        await Task.Delay(grace).ConfigureAwait(false);
        exit(CommandLine.Stopped);
    }
}
