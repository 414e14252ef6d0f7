using Alburnum.Cli;
using Spectre.Console;

using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    stop.Cancel();
};
return await CommandLine.RunAsync(args, AnsiConsole.Console, Console.Error, stop.Token);
