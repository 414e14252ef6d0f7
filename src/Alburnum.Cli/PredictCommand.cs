using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Impregnation;
using Alburnum.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Predicts what the vessel can achieve in a timber: depth, uptake, retention, and the share of pieces that will conform.</summary>
internal sealed class PredictCommand(IAnsiConsole console) : AsyncCommand<PredictSettings>
{
    public override async Task<int> ExecuteAsync(
        CommandContext context,
        PredictSettings settings,
        CancellationToken cancellationToken
    )
    {
        var library = ImpregnationLibrary.Load(FactLibrary.DefaultFolder);
        CheckRun(settings);
        var input = PredictInput.From(settings.Request(), FactLibrary.Load(FactLibrary.DefaultFolder), library);
        var (asked, fits) = settings.Fit is { } records
            ? PlantFit.Apply(
                input,
                records,
                name => ScheduleOf(settings, name, library),
                settings.Seed,
                cancellationToken
            )
            : (input.Question, []);
        var trials = Trials(settings, asked, library, cancellationToken);
        var chosen = trials[^1];
        var question = asked with { Incising = chosen.Pattern };
        var section = settings.Cells == 0 ? null : await SolveAsync(question, settings.Cells, cancellationToken);
        double? endDepthMm = section is null
            ? null
            : EndReach.Solved(question, question.Log.HeartwoodRadiusMm > 0, cancellationToken);
        var document = PredictionMapping.From(
            question,
            chosen.Quick,
            section,
            endDepthMm,
            library.Penalty,
            input.Schedule.Provenance,
            settings.StrengthPercent,
            input.Plan,
            input.DemandMm,
            input.Assumptions,
            fits
        );
        if (settings.Out is { } folder)
            await WriteAsync(folder, document, section, chosen.Quick, input.DemandMm, cancellationToken);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(document.ToJson());
        else
            PredictionSummary.Print(console, document, trials, settings.Out);
        return CommandLine.Done;
    }

    private static void CheckRun(PredictSettings settings)
    {
        PredictInput.InRange("--pieces", settings.Pieces, 100, 1_000_000);
        PredictInput.InRange("--share", settings.SharePercent, 1, 100);
        if (settings.Cells != 0)
            PredictInput.InRange("--cells", settings.Cells, 4, 2000);
    }

    private static Impregnation.Schedule ScheduleOf(
        PredictSettings settings,
        string name,
        ImpregnationLibrary library
    ) =>
        PredictInput
            .ScheduleOf(
                new PredictRequest
                {
                    Species = settings.Species,
                    Section = settings.Section,
                    Schedule = name,
                    SchedulesFile = settings.SchedulesFile,
                },
                library
            )
            .Value;

    // The one pattern asked for, the design's trials, or the wood left plain.
    private static IReadOnlyList<IncisingTrial> Trials(
        PredictSettings settings,
        PredictionQuestion question,
        ImpregnationLibrary library,
        CancellationToken stop
    )
    {
        if (settings.Incise != PredictInput.Design)
        {
            var quick = QuickPrediction.Draw(question, settings.Seed, settings.Pieces, cancellation: stop);
            return [new IncisingTrial(settings.Incise ?? "none", question.Incising, quick)];
        }
        if (question.Rule is NoDepth)
            throw PredictInput.Refused(
                "--incise",
                PredictInput.Design,
                "--depth or --whole-sapwood, to know what the cuts are for"
            );
        return IncisingDesign.Lightest(
            question,
            [.. library.Patterns.Select(row => (row.Name, row.Pattern.Value))],
            settings.SharePercent / 100,
            settings.Seed,
            settings.Pieces,
            stop
        );
    }

    private async Task<SectionRun> SolveAsync(PredictionQuestion question, int cells, CancellationToken stop)
    {
        if (!console.Profile.Capabilities.Interactive || !console.Profile.Out.IsTerminal)
            return SectionRun.Of(question, cells, cancellation: stop);
        return await console
            .Progress()
            .AutoClear(true)
            .StartAsync(async progress =>
            {
                var task = progress.AddTask("Treating the median piece", maxValue: 1);
                return await Task.Run(
                    () => SectionRun.Of(question, cells, progress: new Steps(task), cancellation: stop),
                    stop
                );
            });
    }

    private static async Task WriteAsync(
        string folder,
        PredictionDocument document,
        SectionRun? section,
        QuickPrediction quick,
        double? demandMm,
        CancellationToken stop
    )
    {
        Directory.CreateDirectory(folder);
        await File.WriteAllTextAsync(Path.Combine(folder, "prediction.json"), document.ToJson(), stop);
        if (section is null)
            return;
        await File.WriteAllTextAsync(
            Path.Combine(folder, "section.svg"),
            Svg.Write(PredictionDrawing.Section(section, quick, demandMm)),
            stop
        );
        await File.WriteAllTextAsync(
            Path.Combine(folder, "uptake.svg"),
            Svg.Write(PredictionDrawing.Uptake(section)),
            stop
        );
    }

    private sealed class Steps(ProgressTask task) : IProgress<double>
    {
        public void Report(double value) => task.Value = value;
    }
}
