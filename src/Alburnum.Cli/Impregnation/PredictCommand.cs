using System.ComponentModel;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>Predicts what the vessel can achieve in a timber: depth, uptake, retention, and the share of pieces that will conform.</summary>
internal sealed class PredictCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<PredictCommand.Settings>
{
    internal sealed class Settings : PredictSettings
    {
        [CommandOption("--cells <N>")]
        [Description("Cells across the section for the flow solver; 0 leaves it out")]
        [DefaultValue(60)]
        public int Cells { get; init; }

        [CommandOption("--fit <FILE>")]
        [Description("Depths from the plant's own charges (CSV); narrows the permeability before predicting")]
        public string? Fit { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var library = facts.Impregnation;
        CheckRun(settings);
        var request = settings.Request(facts);
        var input = TreatingQuestion.Of(request, facts);
        var (question, fits) = settings.Fit is { } records
            ? PlantFit.Apply(input, records, name => ScheduleOf(request, name, facts), settings.Seed, cancellationToken)
            : (input.Prediction, []);
        var quick = QuickPrediction.Draw(question, settings.Seed, settings.Pieces, cancellation: cancellationToken);
        var section =
            settings.Cells == 0
                ? null
                : await Progress.OfAsync(
                    console,
                    "Treating the median piece",
                    progress =>
                        SectionRun.Of(question, settings.Cells, progress: progress, cancellation: cancellationToken),
                    cancellationToken
                );
        double? endDepthMm = section is null
            ? null
            : EndRun.DepthMm(question, question.Log.HeartwoodRadiusMm > 0, cancellationToken);
        var document = PredictionMapping.From(
            input.Species.Name,
            question,
            quick,
            section,
            endDepthMm,
            library.Penalty,
            input.Schedule.Provenance,
            settings.StrengthPercent,
            input.Plan,
            input.DepthMm,
            TreatingWords.English.Say(input.Assumptions),
            fits
        );
        if (settings.Out is { } folder)
            await WriteAsync(folder, document, section, quick, input.DepthMm, cancellationToken);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(document.ToJson());
        else
            PredictionSummary.Print(console, document, settings.Out);
        return CommandLine.Done;
    }

    private static void CheckRun(Settings settings)
    {
        Options.Whole("--pieces", settings.Pieces, 100, 1_000_000, "pieces");
        if (settings.Cells != 0)
            Options.Whole("--cells", settings.Cells, 4, 2000, "cells");
    }

    private static Alburnum.Impregnation.Schedule ScheduleOf(TreatingRequest request, string name, FactLibrary facts) =>
        TreatingQuestion
            .ScheduleOf(request with { Schedule = name, PeakKPa = null, PressureMinutes = null }, facts.Impregnation)
            .Value;

    private static async Task WriteAsync(
        string folder,
        PredictionDocument document,
        SectionRun? section,
        QuickPrediction quick,
        double? demandMm,
        CancellationToken stop
    )
    {
        OutFolder.Make(folder);
        await TextFile.WriteAsync(Path.Combine(folder, "prediction.json"), document.ToJson(), stop);
        if (section is null)
            return;
        await TextFile.WriteAsync(
            Path.Combine(folder, "section.svg"),
            Svg.Write(PredictionDrawing.Section(section, quick, demandMm)),
            stop
        );
        await TextFile.WriteAsync(
            Path.Combine(folder, "uptake.svg"),
            Svg.Write(PredictionDrawing.Uptake(section)),
            stop
        );
    }
}
