using System.ComponentModel;
using Alburnum.Records.Store;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Storing;

/// <summary>Makes a store of a back-up.</summary>
internal sealed class StoreRestoreCommand(IAnsiConsole console) : AsyncCommand<StoreRestoreCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The back-up; its store is made where --store says, where there is none yet")]
        public required string File { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var photographs = await BackUp.RestoreAsync(settings.File, settings.StorePath, cancellationToken);
        console.WriteLine(
            Said("terminal.restored", ("place", settings.StorePath), ("photographs", Figures.Whole(photographs)))
        );
        return CommandLine.Done;
    }
}
