using System.ComponentModel;
using Alburnum.Records.Store;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Storing;

/// <summary>Deletes what a case holds; its entries in the ledger stay without their texts.</summary>
internal sealed class StoreDeleteCaseCommand(IAnsiConsole console) : AsyncCommand<StoreDeleteCaseCommand.Settings>
{
    internal sealed class Settings : KeepingSettings
    {
        [CommandArgument(0, "<NUMBER>")]
        [Description("Number of the case in the store")]
        public required int Number { get; init; }

        [CommandArgument(1, "<REFERENCE>")]
        [Description("Its reference as well, so that no other case is deleted by mistake")]
        public required string Reference { get; init; }

        [CommandOption($"{Reasons.Because} <REASON>")]
        [Description("Why, without personal data; the ledger keeps it")]
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
        var cases = (await store.ListAsync(0, int.MaxValue, cancellationToken)).Entries;
        if (cases.FirstOrDefault(each => each.Number == settings.Number) is not { } named)
            throw Options.Refused("NUMBER", Figures.Whole(settings.Number), "the number of a case in the store");
        if (named.Reference != settings.Reference)
            throw Options.Refused(
                "REFERENCE",
                settings.Reference,
                $"the reference of case {Figures.Whole(named.Number)}"
            );
        var deletion = await store.DeleteCaseAsync(new(named.Number, because), cancellationToken);
        console.WriteLine(
            Said(
                "ledger.deleted-now",
                ("case", Figures.Whole(named.Number)),
                ("runs", Figures.Whole(deletion.Runs)),
                ("photographs", Figures.Whole(deletion.Photographs)),
                ("entries", Figures.Whole(deletion.Entries))
            )
        );
        return CommandLine.Done;
    }
}
