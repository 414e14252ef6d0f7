using System.ComponentModel;
using Alburnum.Records;
using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;
using Table = Alburnum.Records.Tables.Table;

namespace Alburnum.Cli.Requirements;

/// <summary>Lists what of a rulebook is still to be read in the code, to be filled in from a printed copy.</summary>
internal sealed class RulebookWorksheetCommand(IAnsiConsole console, FactLibrary facts)
    : AsyncCommand<RulebookWorksheetCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<FILE|NAME>")]
        [Description("A rulebook file of your own, or the name of one supplied")]
        public required string Rulebook { get; init; }

        [CommandOption("--out <FILE>")]
        [Description("Also write the worksheet as a table (CSV), with columns to fill in")]
        public string? Out { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var document = WorksheetDocument.From(ListUnread.Run(settings.Rulebook, facts));
        if (settings.Out is { } file)
            await WholeFile.WriteAsync(file, WorksheetText.Csv(document), cancellationToken);
        return console.Show(document, settings.Json, WorksheetText.Lines(document, "--out"));
    }
}

/// <summary>Reads a worksheet that was filled in into a rulebook of the user's.</summary>
internal sealed class RulebookFillCommand(IAnsiConsole console, FactLibrary facts)
    : AsyncCommand<RulebookFillCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<NAME>")]
        [Description("Name of the rulebook supplied that the worksheet was made from")]
        public required string Rulebook { get; init; }

        [CommandOption("--worksheet <FILE>")]
        [Description("The worksheet, filled in: a table in CSV, or a workbook (.xlsx)")]
        public string? Worksheet { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }

        [CommandOption("--out <FILE>")]
        [Description("File to write your rulebook to (.yaml)")]
        public string? Out { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var worksheet = settings.Worksheet ?? throw Options.Refused("--worksheet", "nothing", Table.Expected);
        var file = settings.Out ?? throw Options.Refused("--out", "nothing", "a file to write, such as my.yaml");
        var filled = FillRulebook.Run(
            settings.Rulebook,
            Table.Open(worksheet, settings.Sheet),
            facts,
            facts.Today,
            RequirementWords.Current.Rows.Now
        );
        await WholeFile.WriteAsync(file, filled.Text, cancellationToken);
        console.WriteLine(
            Said(
                "rulebooks.filled",
                ("file", file),
                ("confirmed", $"{filled.Confirmed}"),
                ("written", $"{filled.Written}")
            )
        );
        return CommandLine.Done;
    }
}
