using System.ComponentModel;
using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Reports.Acceptance;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;
using Table = Alburnum.Records.Tables.Table;

namespace Alburnum.Cli.Acceptance;

/// <summary>Judges a batch from a table of pieces: judged already, or with their depths.</summary>
internal sealed class JudgeTableCommand(IAnsiConsole console, FactLibrary facts) : Command<JudgeTableCommand.Settings>
{
    internal sealed class Settings : CountingSettings
    {
        [CommandArgument(0, "<RESULTS>")]
        [Description(
            "Table (CSV or .xlsx): piece and result; or piece, face, position_mm, depth_mm, u_mm and sapwood_mm where known"
        )]
        public required string Results { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }

        [CommandOption("--rule <RULE>")]
        [Description(
            "Required depth: a class (NP3), or for example \"6 mm sapwood and 6 mm exposed heartwood over 75 %\""
        )]
        public string? Rule { get; init; }

        [CommandOption("--reading <READING>")]
        [Description("Depth that represents a whole zone: minimum (default), or percentile (the 5th)")]
        public string Reading { get; init; } = "minimum";

        [CommandOption("--section <SIZE>")]
        [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Section), Note = "for a table of depths")]
        public string? Section { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var table = Table.Open(settings.Results, settings.Sheet);
        if (ValueTable.IsOne(table))
            throw Options.Refused(
                settings.Results,
                "a table of values",
                "a table of pieces; for values, use alburnum judge values"
            );
        var judged = ResultTable.Read(table, Section(settings)) switch
        {
            JudgedPieces pieces => JudgeBatch.ByVerdicts(
                pieces,
                settings.Request(facts, pieces.Pieces.Count, settings.Results)
            ),
            MeasuredPieces pieces => JudgeBatch.ByDepths(
                pieces,
                Depth(settings),
                Reading(settings),
                settings.Request(facts, pieces.Pieces.Count, settings.Results)
            ),
            var other => throw new ArgumentOutOfRangeException(nameof(settings), other, "Not results."),
        };
        var document = JudgeMapping.Of(judged);
        return console.Show(document, settings.Json, () => JudgePrint.Print(console, document));
    }

    private static Section? Section(Settings settings)
    {
        Section? section = null;
        if (settings.Section is { } text && !SectionText.TryParse(text, out section))
            throw EnquiryFields.Section.Refused(file: null, text, SectionText.Expected);
        return section;
    }

    private DepthRule Depth(Settings settings)
    {
        var text = settings.Rule ?? throw Options.Refused("--rule", "nothing", DepthRuleText.Expected);
        return DepthRuleText.Read(text, facts.PenetrationClasses)
            ?? throw Options.Refused("--rule", text, DepthRuleText.Expected);
    }

    private static DepthReading Reading(Settings settings) =>
        settings.Reading switch
        {
            "minimum" => DepthReading.Minimum,
            "percentile" => DepthReading.FifthPercentile,
            var text => throw Options.Refused("--reading", text, "minimum or percentile"),
        };
}
