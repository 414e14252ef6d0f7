using System.ComponentModel;
using System.Globalization;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>Looks for the lightest incising that makes enough of the cores reach the depth, and says what it costs in strength.</summary>
internal sealed class InciseCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<InciseCommand.Settings>
{
    internal sealed class Settings : PlacedSettings
    {
        [CommandOption("--share <PERCENT>")]
        [Description("Share of cores that must reach the depth, %")]
        [DefaultValue(90.0)]
        public double SharePercent { get; init; }

        [CommandOption("--tooth-length <MM>")]
        [Description("Length of a cut along the grain at the face, mm")]
        [DefaultValue(9.0)]
        public double ToothLengthMm { get; init; }

        [CommandOption("--boxes <N>")]
        [Description("Boxes on each side of the flow solver's cell, which checks the pattern found; 0 leaves it out")]
        [DefaultValue(20)]
        public int Boxes { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var library = facts.Impregnation;
        var input = TreatingQuestion.Of(settings.Request(facts), facts);
        if (input.Prediction.Rule is NoDepth)
            throw Options.Refused("--depth", "nothing", "--depth or --whole-sapwood, to know what the cuts are for");
        Options.Number("--share", settings.SharePercent, 1, 100, "%");
        var pieces = Options.Whole("--pieces", Math.Min(settings.Pieces, 2000), 100, 100_000, "pieces");
        var tooth = Options.Number("--tooth-length", settings.ToothLengthMm, 2, 50, "mm");
        if (settings.Boxes != 0)
            Options.Whole("--boxes", settings.Boxes, 8, 200, "boxes");
        var design = IncisingSearch.Lightest(
            input.Prediction,
            tooth,
            library.Penalty,
            settings.SharePercent / 100,
            (settings.Seed, pieces),
            cancellationToken
        );
        var check =
            settings.Boxes > 0 && design.Chosen?.Pattern is { } pattern
                ? await Progress.OfAsync(
                    console,
                    "Treating the repeating cell",
                    progress => CellCheck(input.Prediction, pattern, settings.Boxes, progress, cancellationToken),
                    cancellationToken
                )
                : null;
        var document = InciseDocument.From(input, design, check, library.Penalty, settings.SharePercent);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(document));
        else
            Print(document);
        return CommandLine.Done;
    }

    // The median wood under the pattern, sapwood where the face is sapwood.
    private static string CellCheck(
        PredictionQuestion question,
        IncisingPattern pattern,
        int boxes,
        IProgress<double>? progress,
        CancellationToken stop
    )
    {
        var law = question.Log.HeartwoodRadiusMm > 1e5 ? question.Heartwood : question.Sapwood;
        var deep = Math.Max(1.5 * pattern.DepthMm, pattern.DepthMm + 5);
        var cell = IncisedCell.Of(
            pattern,
            new WoodFlow(law.Typical(), question.VoidFraction),
            FluidPair.Of(question.Liquid),
            deep,
            (boxes, boxes, boxes)
        );
        var run = FlowSolver.Run(cell.Problem, question.Schedule, StepControl.Usual, progress, stop);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Flow solver on the repeating cell, median wood, {boxes} × {boxes} × {boxes} boxes: unbroken to {cell.UnbrokenMm(run):0.0} mm (a box is {deep / boxes:0.0} mm deep). {run.Ending.InWords}"
        );
    }

    private void Print(InciseDocument document)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]");
        console.WriteLine($"Asked for: {document.Demand}, in {document.WantedPercent} % of cores.");
        var table = new Table().Border(TableBorder.Simple);
        foreach (var heading in new[] { "", "Cut out, cm³ to the m²", "Cores that reach it", "Pattern" })
            table.AddColumn(heading);
        foreach (var row in document.Tried)
            table.AddRow(
                row.What,
                Figures.Number(row.CutOutCm3PerM2, 0),
                Figures.WholePercent(row.CoreShare),
                row.Pattern
            );
        console.Write(table);
        console.WriteLine(document.Answer);
        foreach (var line in new[] { document.StrengthPenalty, document.PenaltySource, document.Check })
            if (line.Length > 0)
                console.WriteLine(line);
        foreach (var line in document.Assumptions.Concat(document.Cautions))
            console.WriteLine("  " + line);
    }
}

/// <summary>One pattern of a search as printed.</summary>
internal sealed record InciseRow(string What, double CutOutCm3PerM2, double CoreShare, string Pattern);

/// <summary>A search for an incising pattern as printed.</summary>
internal sealed record InciseDocument(
    string Title,
    string Demand,
    double WantedPercent,
    IReadOnlyList<InciseRow> Tried,
    string Answer,
    string StrengthPenalty,
    string PenaltySource,
    string Check,
    IReadOnlyList<string> Assumptions,
    IReadOnlyList<string> Cautions
)
{
    public static InciseDocument From(
        TreatingQuestion input,
        IncisingSearch search,
        string? check,
        IncisingPenalty penalty,
        double wantedPercent
    )
    {
        var chosen = search.Chosen;
        return new(
            $"Incising of {input.Species.Name}, {input.Prediction.Section.Label}, {input.Schedule.Value.Name}",
            RequirementWords.English.Depths.Say(input.Prediction.Rule),
            wantedPercent,
            [.. search.Best.Select(trial => Row(trial, penalty))],
            chosen switch
            {
                null =>
                    "No pattern tried is enough: a longer pressure period, a higher pressure or another timber is needed.",
                { Pattern: null } => "Left plain, enough cores reach the depth: no incising is needed.",
                { Pattern: { } pattern } => $"Lightest that is enough: {pattern.InWords}.",
            },
            chosen?.Pattern is { } used ? penalty.InWords(used) : "",
            chosen?.Pattern is null
                ? ""
                : $"Strength: {penalty.Source.Citation} ({penalty.Source.Standing.InWords()}).",
            check ?? "",
            TreatingWords.English.Say(input.Assumptions),
            [
                "The quick model answered; no published law for the treated zone around a cut was found. Cut and spray incised pieces before relying on it.",
                .. PredictionDocument.UsualCautions,
            ]
        );
    }

    private static InciseRow Row(IncisingTrial trial, IncisingPenalty penalty)
    {
        if (trial.Pattern is not { } pattern)
            return new(trial.Name, 0, trial.Quick.CoreShare.Value, "left plain");
        var beyond = penalty.Beyond(pattern).Count > 0 ? " (beyond the code's factors)" : "";
        return new(trial.Name, pattern.CutOutCm3PerM2, trial.Quick.CoreShare.Value, pattern.InWords + beyond);
    }
}
