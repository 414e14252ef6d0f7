using System.Runtime.InteropServices;
using Alburnum.Cli;
using Alburnum.Records.Facts;
using Spectre.Console;

using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    _ = Stopping.AskAsync(stop, Stopping.Grace, Environment.Exit);
};

// Asked to end from outside, as by a service manager: what is half written is taken back here too.
using var terminated = PosixSignalRegistration.Create(
    PosixSignal.SIGTERM,
    signal =>
    {
        signal.Cancel = true;
        _ = Stopping.AskAsync(stop, Stopping.Grace, Environment.Exit);
    }
);
Language.Choose();
var facts = new FactLibrary(Path.Combine(AppContext.BaseDirectory, "data"));
return await CommandLine.RunAsync(args, facts, AnsiConsole.Console, Console.Error, stop.Token);
