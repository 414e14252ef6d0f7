using System.ComponentModel;
using Alburnum.Acceptance.Variables;
using Alburnum.Facts;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Reports.Acceptance;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;
using Table = Alburnum.Records.Tables.Table;

namespace Alburnum.Cli.Acceptance;

/// <summary>Judges a batch by variables, from one value of each piece.</summary>
internal sealed class JudgeValuesCommand(IAnsiConsole console) : Command<JudgeValuesCommand.Settings>
{
    internal sealed class Settings : JudgeSettings
    {
        [CommandArgument(0, "<VALUES>")]
        [Description("Table (CSV or .xlsx): piece, and retention_kg_per_m3 or least_depth_mm")]
        public required string Values { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }

        [CommandOption("--retention <KG_PER_M3>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Retention))]
        public double? Retention { get; init; }

        [CommandOption("--depth <MM>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Depth))]
        public double? Depth { get; init; }

        [CommandOption("--conforming <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Conforming))]
        public double? Conforming { get; init; }

        [CommandOption("--population <SHAPE>")]
        [Description("normal (default for depths) or log-normal (default for retentions)")]
        public string? Population { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var valued = ValueTable.Read(Table.Open(settings.Values, settings.Sheet));
        var document = VariablesMapping.Of(JudgeBatch.ByVariables(valued, Request(settings)));
        return console.Show(document, settings.Json, () => VariablesPrint.Print(console, document));
    }

    private static ValuesRequest Request(Settings settings) =>
        new()
        {
            Lot = settings.Pieces,
            RequiredKgPerM3 = Options.OptionalNumber(TreatmentFields.Retention, settings.Retention),
            LeastDepthMm = Options.OptionalNumber(TreatmentFields.Depth, settings.Depth),
            Share =
                Options.Number(
                    AcceptanceFields.Conforming.Option,
                    settings.Conforming,
                    Ranges.ConformingByVariablesPercent
                ) / 100,
            Confidence = settings.Sure,
            Population = settings.Population switch
            {
                null => null,
                "normal" => Population.Normal,
                "log-normal" => Population.LogNormal,
                var text => throw Options.Refused("--population", text, "normal or log-normal"),
            },
        };
}
