using System.Runtime.InteropServices;
using Alburnum.Cli;
using Alburnum.Records.Facts;
using Spectre.Console;

using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    stop.Cancel();
};

// Asked to end from outside, as by a service manager: what is half written is taken back here too.
using var terminated = PosixSignalRegistration.Create(
    PosixSignal.SIGTERM,
    signal =>
    {
        signal.Cancel = true;
        stop.Cancel();
    }
);
Language.Choose();
var facts = new FactLibrary(Path.Combine(AppContext.BaseDirectory, "data"));
return await CommandLine.RunAsync(args, facts, AnsiConsole.Console, Console.Error, stop.Token);
