using System.ComponentModel;
using Alburnum.Records.Store;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Ledger;

/// <summary>Enters a correction.</summary>
internal sealed class LedgerCorrectCommand(IAnsiConsole console) : AsyncCommand<LedgerCorrectCommand.Settings>
{
    internal sealed class Settings : KeepingSettings
    {
        [CommandArgument(0, "<CASE>")]
        [Description("Number of the case in the store, or its reference where no other case has it")]
        public required string Case { get; init; }

        [CommandArgument(1, "<ENTRY>")]
        [Description("Number of the entry that is wrong")]
        public required int Entry { get; init; }

        [CommandArgument(2, "<TEXT>")]
        [Description("What is right")]
        public required string Text { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var text = Reasons.Of("TEXT", settings.Text);
        var by = settings.Person;
        var store = await CaseStore.KeepAsync(settings.StorePath, by, console.WriteLine, cancellationToken);
        var number = await store.CaseNumberAsync(settings.Case, cancellationToken);
        await store.CorrectAsync(number, settings.Entry, text, cancellationToken);
        console.WriteLine(
            Said("ledger.corrected-now", ("entry", Figures.Whole(settings.Entry)), ("case", Figures.Whole(number)))
        );
        return CommandLine.Done;
    }
}
