using System.ComponentModel;
using Alburnum.Records.Store;
using Alburnum.Reports.Ledger;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Ledger;

/// <summary>Shows the entries of a case; verifies nothing.</summary>
internal sealed class LedgerShowCommand(IAnsiConsole console) : AsyncCommand<LedgerShowCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandArgument(0, "<CASE>")]
        [Description("Number of the case in the store, or its reference where no other case has it")]
        public required string Case { get; init; }

        [CommandOption(Options.Json)]
        [Description("Print the result as JSON and nothing else")]
        public bool Json { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var store = await CaseStore.LookAsync(settings.StorePath, console.WriteLine, cancellationToken);
        var number = await store.CaseNumberAsync(settings.Case, cancellationToken);
        var entries = await store.LedgerAsync(number, cancellationToken);
        return console.Show(
            LedgerDocument.From(number, entries),
            settings.Json,
            LedgerWords.Current.Lines(number, entries, LedgerCommands.Verify)
        );
    }
}
