using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Impregnation.Sorbing;
using Alburnum.Records;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Json;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Impregnation;

/// <summary>Predicts what the vessel can achieve in a timber: depth, uptake, retention, and the share of pieces that will conform.</summary>
internal sealed class PredictCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<PredictCommand.Settings>
{
    internal sealed class Settings : PredictSettings
    {
        [CommandOption("--strength <PERCENT>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Strength))]
        public double? StrengthPercent { get; init; }

        [CommandOption("--sorption <L_PER_KG>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Sorption))]
        public double? SorptionLPerKg { get; init; }

        [CommandOption("--sorption-most <G_PER_KG>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.SorptionMost))]
        public double? SorptionMostGPerKg { get; init; }

        [CommandOption("--plan <N,C>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Plan))]
        public string? Plan { get; init; }

        [CommandOption("--cells <N>")]
        [Description("Cells across the section for the flow solver; 0 skips the solver")]
        [DefaultValue(60)]
        public int Cells { get; init; }

        [CommandOption("--plant <HISTORY>")]
        [Description(
            "What the plant measured of its own charges (CSV or .xlsx), oldest first: depths, measured sections, uptakes, the tank's "
                + "readings or assays of zones; calibrates the prediction, and tells how well the charges were foretold"
        )]
        public string? Plant { get; init; }

        public override TreatingRequest Request(FactLibrary facts)
        {
            var sorption = Sorption.Known(
                TreatmentFields.Sorption.InRange(SorptionLPerKg, file: null),
                TreatmentFields.SorptionMost.InRange(SorptionMostGPerKg, file: null)
            );
            if (sorption is not null && StrengthPercent is null)
                throw TreatmentFields.Strength.Refused(
                    file: null,
                    "nothing",
                    "the strength of the solution, which what walls take up depends on"
                );
            return base.Request(facts) with
            {
                StrengthPercent = StrengthPercent,
                Sorption = sorption,
                Plan = TreatingOptions.Plan(Plan),
            };
        }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var request = new PredictionRequest
        {
            Treating = settings.Request(facts),
            Pieces = Options.Whole("--pieces", settings.Pieces, Ranges.DrawnPieces),
            Seed = settings.Seed,
            Cells = settings.Cells == 0 ? null : Options.Whole("--cells", settings.Cells, Ranges.SectionCells),
            Plant = settings.Plant is { } file ? PlantTable.Read(file) : null,
        };
        if (settings.Out is { } place)
            OutFolder.Examine(place);
        var prediction = await Progress.RunAsync(
            console,
            Said("terminal.treating-piece"),
            progress => Predict.Run(request, facts, progress, cancellationToken),
            cancellationToken
        );
        var document = PredictionMapping.Of(prediction);
        if (settings.Out is { } folder)
            await WriteAsync(folder, document, prediction, cancellationToken);
        return console.Show(document, settings.Json, () => PredictionPrint.Print(console, document, settings.Out));
    }

    private static async Task WriteAsync(
        string folder,
        PredictionDocument document,
        TreatingPrediction prediction,
        CancellationToken stop
    )
    {
        OutFolder.Make(folder);
        await WholeFile.WriteAsync(Path.Combine(folder, "prediction.json"), DocumentJson.Write(document), stop);
        if (prediction.Solved is not { Section: var section })
            return;
        await WholeFile.WriteAsync(
            Path.Combine(folder, "section.svg"),
            Svg.Write(PredictionDrawing.Section(section, prediction.Quick, prediction.Asked.DepthMm)),
            stop
        );
        await WholeFile.WriteAsync(
            Path.Combine(folder, "uptake.svg"),
            Svg.Write(PredictionDrawing.Uptake(section)),
            stop
        );
    }
}
