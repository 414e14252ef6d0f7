using System.ComponentModel;
using Alburnum.Records.Store;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Storing;

/// <summary>Writes the store and its photographs into one file.</summary>
internal sealed class StoreBackUpCommand(IAnsiConsole console) : AsyncCommand<StoreBackUpCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("File to write, a ZIP; one that is there is not overwritten")]
        public required string File { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var photographs = await BackUp.WriteAsync(
            settings.StorePath,
            settings.File,
            console.WriteLine,
            cancellationToken
        );
        console.WriteLine(
            Said("terminal.backed-up", ("file", settings.File), ("photographs", Figures.Whole(photographs)))
        );
        return CommandLine.Done;
    }
}
