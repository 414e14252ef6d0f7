using Alburnum.Records.Store;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Storing;

/// <summary>Checks that the store is whole; changes nothing.</summary>
internal sealed class StoreCheckCommand(IAnsiConsole console) : AsyncCommand<StoreSettings>
{
    public override async Task<int> ExecuteAsync(
        CommandContext context,
        StoreSettings settings,
        CancellationToken cancellationToken
    )
    {
        var found = await StoreCheck.RunAsync(settings.StorePath, console.WriteLine, cancellationToken);
        console.WriteLine(
            Said(
                "terminal.store-holds",
                ("place", settings.StorePath),
                ("cases", Figures.Whole(found.Cases)),
                ("runs", Figures.Whole(found.Runs)),
                ("photographs", Figures.Whole(found.Photographs))
            )
        );
        if (found.Unused.Count > 0)
            console.WriteLine(Said("terminal.store-unused", ("files", Figures.Whole(found.Unused.Count))));
        foreach (var file in found.OpenToOthers)
            console.WriteLine(Said("terminal.store-open", ("file", file)));
        if (found.Damages.Count > 0)
            throw new InputRefusedException(found.Damages);
        console.WriteLine(Said("terminal.store-whole"));
        return CommandLine.Done;
    }
}
