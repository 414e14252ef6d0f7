using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Cases;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Ledger;

/// <summary>Removes personal data from a case.</summary>
internal sealed class LedgerRedactCommand(IAnsiConsole console, FactLibrary facts)
    : AsyncCommand<LedgerRedactCommand.Settings>
{
    internal sealed class Settings : KeepingSettings
    {
        [CommandArgument(0, "<CASE>")]
        [Description("Number of the case in the store, or its reference where no other case has it")]
        public required string Case { get; init; }

        [CommandArgument(1, "<TEXT>")]
        [Description("What is removed, letter for letter, such as a name")]
        public required string Text { get; init; }

        [CommandOption($"{Reasons.Because} <REASON>")]
        [Description("Why, without the text itself; the ledger keeps it")]
        public string? Because { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var (because, by) = (Reasons.Of(Reasons.Because, settings.Because), settings.Person);
        var store = await CaseStore.KeepAsync(settings.StorePath, by, console.WriteLine, cancellationToken);
        var number = await store.CaseNumberAsync(settings.Case, cancellationToken);
        var redaction = await store.RedactAsync(
            new(number, because),
            settings.Text,
            run => IsReadableAsync(run, store, cancellationToken),
            cancellationToken
        );
        console.WriteLine(
            Said(
                "ledger.redacted-now",
                ("case", Figures.Whole(number)),
                ("texts", Figures.Whole(redaction.Texts)),
                ("files", Figures.Whole(redaction.Files))
            )
        );
        if (redaction.NotSearched.Count > 0)
            console.WriteLine(Said("ledger.not-searched", ("files", string.Join(", ", redaction.NotSearched))));
        console.WriteLine(Said("ledger.photographs-stay", ("photographs", Figures.Whole(redaction.Photographs))));
        return CommandLine.Done;
    }

    // As its sheet and the page for marks read it.
    private async Task<bool> IsReadableAsync(KeptRun run, ICaseStore store, CancellationToken stop)
    {
        try
        {
            var kept = KeptMapping.Case(run, KeptDocument.Of(run));
            if (kept is { Pieces: [var piece, ..] })
                await ReadAgain.FolderAsync(kept, piece, store, facts, stop);
            return true;
        }
        catch (InputRefusedException)
        {
            return false;
        }
    }
}
