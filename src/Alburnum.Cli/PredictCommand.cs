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
        var input = PredictInput.From(settings, FactLibrary.Load(FactLibrary.DefaultFolder), library);
        var trials = Trials(settings, input, library, cancellationToken);
        var chosen = trials[^1];
        var question = input.Question with { Incising = chosen.Pattern };
        var section = settings.Cells == 0 ? null : await SolveAsync(question, settings.Cells, cancellationToken);
        var document = PredictionMapping.From(
            question,
            chosen.Quick,
            section,
            library.Penalty,
            input.Schedule.Provenance,
            settings.StrengthPercent,
            input.Plan,
            input.DemandMm
        );
        if (settings.Out is { } folder)
            await WriteAsync(folder, document, section, chosen.Quick, input.DemandMm, cancellationToken);
        if (settings.Json)
            console.WriteLine(document.ToJson());
        else
            PredictionSummary.Print(console, document, trials, settings.Out);
        return CommandLine.Done;
    }

    // The one pattern asked for, the design's trials, or the wood left plain.
    private static IReadOnlyList<IncisingTrial> Trials(
        PredictSettings settings,
        PredictInput input,
        ImpregnationLibrary library,
        CancellationToken stop
    )
    {
        var patterns = library.Patterns.Select(row => (row.Name, Pattern: row.Pattern.Value)).ToList();
        if (settings.Incise == "design")
        {
            if (input.Question.Rule is NoDepth)
                throw PredictInput.Refused(
                    "--incise",
                    "design",
                    "--depth or --whole-sapwood, to know what the cuts are for"
                );
            return IncisingDesign.Lightest(
                input.Question,
                patterns,
                settings.SharePercent / 100,
                settings.Seed,
                settings.Pieces,
                stop
            );
        }
        IncisingPattern? pattern = null;
        if (settings.Incise is { } name)
        {
            pattern = patterns
                .FirstOrDefault(row => string.Equals(row.Name, name, StringComparison.OrdinalIgnoreCase))
                .Pattern;
            if (pattern is null)
                throw PredictInput.Refused(
                    "--incise",
                    name,
                    $"design, {string.Join(", ", patterns.Select(row => row.Name))}"
                );
        }
        var quick = QuickPrediction.Draw(
            input.Question with
            {
                Incising = pattern,
            },
            settings.Seed,
            settings.Pieces,
            cancellation: stop
        );
        return [new IncisingTrial(settings.Incise ?? "none", pattern, quick)];
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
