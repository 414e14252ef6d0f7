using System.ComponentModel;
using Alburnum.Acceptance.Variables;
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

        [CommandOption("--required <KG_PER_M3>")]
        [Description("Required retention, kg/m³")]
        public double? Required { get; init; }

        [CommandOption("--least-depth <MM>")]
        [Description("Or required depth, mm")]
        public double? LeastDepth { get; init; }

        [CommandOption("--conforming <PERCENT>")]
        [Description("Share of all pieces that must reach it")]
        public double? Conforming { get; init; }

        [CommandOption("--population <SHAPE>")]
        [Description("normal (default for depths) or log-normal (default for retentions)")]
        public string? Population { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var valued = ValueTable.Read(Table.Open(settings.Values, settings.Sheet));
        var lot = settings.PiecesBeside(valued.Pieces.Count, "measured");
        var document = VariablesMapping.Of(JudgeBatch.ByVariables(valued, Demand(settings, valued), lot));
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(document));
        else
            VariablesPrint.Print(console, document);
        return CommandLine.Done;
    }

    private static VariablesDemand Demand(Settings settings, ValuedPieces valued)
    {
        var isRetention = valued.Measure.Unit == "kg/m³";
        Options.RefuseGiven(
            $"no such option for {valued.Measure.Name}, which takes {(isRetention ? "--required" : "--least-depth")}",
            (
                isRetention ? "--least-depth" : "--required",
                (isRetention ? settings.LeastDepth : settings.Required) is not null
            )
        );
        return new(
            isRetention
                ? Options.Number("--required", settings.Required, 0.001, WrittenValue.MostKgPerM3, "kg/m³")
                : Options.Number("--least-depth", settings.LeastDepth, 0.1, 1000, "mm"),
            valued.Measure.Unit,
            Options.Number("--conforming", settings.Conforming, 50.1, 99.99, "% of all pieces") / 100,
            settings.Sure,
            settings.Population switch
            {
                null => isRetention ? Population.LogNormal : Population.Normal,
                "normal" => Population.Normal,
                "log-normal" => Population.LogNormal,
                var text => throw Options.Refused("--population", text, "normal or log-normal"),
            }
        );
    }
}
