using System.Globalization;
using Alburnum.Facts;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation.Heating;
using Alburnum.Impregnation.Prediction;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>Which models answered a prediction and what its numbers rest on, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class PredictionWords(Wording wording)
{
    private readonly TreatingWords _treating = new(wording);

    /// <summary>In the language chosen.</summary>
    public static PredictionWords Current => new(Wording.Current);

    /// <summary>Heading of the models.</summary>
    public string ModelsUsed => wording.Say("prediction.models-used");

    /// <summary>The two woods of a piece.</summary>
    /// <param name="sapwood">Name of the sapwood's permeability row.</param>
    /// <param name="heartwood">Name of the heartwood's.</param>
    public string Woods(string sapwood, string heartwood) =>
        wording.Say("prediction.woods", ("sapwood", sapwood), ("heartwood", heartwood));

    /// <summary>How the piece is incised.</summary>
    /// <param name="cuts">The cuts, in words.</param>
    public string Incised(string cuts) => wording.Say("prediction.incised", ("cuts", cuts));

    /// <summary>Least depth of a piece, mm: name, slowest, middle and fastest.</summary>
    public IReadOnlyList<string> LeastDepth(Spread mm) => Row(wording.Say("prediction.least-depth"), mm, 1);

    /// <summary>Mean depth of a piece, mm, likewise.</summary>
    public IReadOnlyList<string> MeanDepth(Spread mm) => Row(wording.Say("prediction.mean-depth"), mm, 1);

    /// <summary>The row of the border between the cuts.</summary>
    public IReadOnlyList<string> BorderDepth(Spread mm) => Row(wording.Say("prediction.border-depth"), mm, 1);

    /// <summary>Depth from a cut end, mm, likewise.</summary>
    public IReadOnlyList<string> EndDepth(Spread mm) => Row(wording.Say("prediction.end-depth"), mm, 0);

    /// <summary>Net uptake, L/m³, likewise.</summary>
    public IReadOnlyList<string> Uptake(Spread litresPerM3) => Row(wording.Say("prediction.uptake"), litresPerM3, 0);

    /// <summary>Product in the zone, kg/m³, likewise.</summary>
    public IReadOnlyList<string> Retention(Spread kgPerM3) => Row(wording.Say("prediction.retention"), kgPerM3, 2);

    /// <summary>Pressure period for the depth, min, likewise: the slowest wood takes the longest.</summary>
    public IReadOnlyList<string> PressurePeriod(Spread minutes) =>
        Row(wording.Say("prediction.pressure-period"), new(minutes.High, minutes.Middle, minutes.Low), 0);

    private string PiecesMeet(Estimate share, WoodZone? part)
    {
        var what = part is { } wood
            ? wording.Say("prediction.asked-of-part", ("part", RequirementWords.Current.Routes.Part(wood)))
            : wording.Say("prediction.requirement");
        return Figures.IsNearlyAllOrNothing(share.Value)
            ? wording.Say("prediction.pieces-meet-alone", ("what", what), Share(share)[0])
            : wording.Say("prediction.pieces-meet", [("what", what), .. Share(share)]);
    }

    /// <summary>How many pieces and cores meet the demand, one sentence each; that there is none to meet where no depth is asked for.</summary>
    /// <param name="pieces">Share of pieces, 0 to 1; null where no depth is asked for.</param>
    /// <param name="cores">Share of cores, 0 to 1; null likewise.</param>
    /// <param name="part">The wood that the share of pieces is of, where more must be met; null where it is of the whole demand.</param>
    public IEnumerable<string> Meet(Estimate? pieces, Estimate? cores, WoodZone? part = null) =>
        pieces is { } ofPieces && cores is { } ofCores
            ? [PiecesMeet(ofPieces, part), CoresMeet(ofCores)]
            : [wording.Say("prediction.no-depth-asked")];

    private string CoresMeet(Estimate share) =>
        Figures.IsNearlyAllOrNothing(share.Value)
            ? wording.Say("prediction.cores-meet-alone", Share(share)[0])
            : wording.Say("prediction.cores-meet", Share(share));

    /// <summary>How likely a batch passes its sampling plan.</summary>
    /// <param name="chance">0 to 1.</param>
    public string ChanceToPass(double chance) =>
        wording.Say("prediction.chance-to-pass", ("chance", Figures.Certainty(chance, wording)));

    /// <summary>What the flow solver found for the median piece.</summary>
    /// <param name="meanDepthMm">Mean depth, mm.</param>
    /// <param name="reachedShare">Share of the section reached, 0 to 1.</param>
    /// <param name="grossLPerM3">Most solution held, L/m³.</param>
    /// <param name="netLPerM3">Solution kept, L/m³.</param>
    /// <param name="endDepthMm">Depth from a cut end, mm; null where that run stopped short.</param>
    public string SolvedPiece(
        double meanDepthMm,
        double reachedShare,
        double grossLPerM3,
        double netLPerM3,
        double? endDepthMm
    )
    {
        (string, string) depth = ("depth", Figures.Number(meanDepthMm, 1)),
            reached = ("reached", Figures.WholePercent(reachedShare, wording)),
            gross = ("gross", Figures.Number(grossLPerM3, 0)),
            net = ("net", Figures.Number(netLPerM3, 0));
        return endDepthMm is { } end
            ? wording.Say(
                "prediction.solved-piece-and-end",
                depth,
                reached,
                gross,
                net,
                ("end", Figures.Number(end, 0))
            )
            : wording.Say("prediction.solved-piece", depth, reached, gross, net);
    }

    /// <summary>The same of incised wood: the solver knows nothing of its cuts.</summary>
    /// <param name="solved">What it says.</param>
    public string WithoutCuts(string solved) => wording.Say("prediction.without-cuts", ("says", solved));

    /// <summary>About how far the section's cells and the time steps put that off: mean depth, mm, and solution kept, L/m³; rounded up, as an estimate is never nothing.</summary>
    public string SolverError((double Mm, double LPerM3) cells, (double Mm, double LPerM3) steps) =>
        wording.Say(
            "prediction.solver-error",
            ("depth", Figures.NumberUp(cells.Mm, 1)),
            ("net", Figures.NumberUp(cells.LPerM3, 0)),
            ("stepDepth", Figures.NumberUp(steps.Mm, 2)),
            ("stepNet", Figures.NumberUp(steps.LPerM3, 1))
        );

    /// <summary>That the flow solver's piece lies apart from what is expected.</summary>
    public string Differ(SolverGap gap)
    {
        ArgumentNullException.ThrowIfNull(gap);
        return wording.Say(
            "prediction.differ",
            ("expectedDepth", Figures.Number(gap.DepthMm.Expected, 1)),
            ("solvedDepth", Figures.Number(gap.DepthMm.Solved, 1)),
            ("expectedUptake", Figures.Number(gap.UptakeLPerM3.Expected, 0)),
            ("solvedUptake", Figures.Number(gap.UptakeLPerM3.Solved, 0))
        );
    }

    /// <summary>Heading of what the numbers rest on.</summary>
    /// <param name="weakest">Weakest standing among it.</param>
    public string RestsOn(Standing weakest) => wording.Say("prediction.rests-on", ("standing", wording.Say(weakest)));

    /// <summary>How a run of the flow solver ended.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An ending of a kind that no sentence is known for.</exception>
    public string Say(FlowEnding ending) =>
        ending switch
        {
            Completed completed => wording.Say("prediction.solved", ("steps", Figures.Whole(completed.Steps))),
            StepTooSmall small => wording.Say(
                "prediction.step-too-small",
                ("minutes", Figures.Digits(small.Minutes)),
                ("stage", small.Stage),
                ("cell", Figures.Whole(small.Cell)),
                ("share", Tiny(small.ResidualShare))
            ),
            StepLimit limit => wording.Say(
                "prediction.step-limit",
                ("minutes", Figures.Digits(limit.Minutes)),
                ("stage", limit.Stage),
                ("steps", Figures.Whole(limit.Steps)),
                ("cell", Figures.Whole(limit.Cell)),
                ("share", Tiny(limit.ResidualShare))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "Not an ending."),
        };

    /// <summary>Which model answered what, one sentence each.</summary>
    public IEnumerable<string> Models(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var question = prediction.Asked.Prediction;
        yield return wording.Say(
            "prediction.ways",
            ("pieces", Figures.Whole(prediction.Quick.Pieces)),
            ("places", Figures.Whole(prediction.Quick.Places.Count))
        );
        if (question.Section is HalfRoundSection)
            yield return wording.Say("prediction.fronts-meet");
        yield return question.Log.HeartwoodRadiusMm > 0
            ? wording.Say("prediction.end-of-heartwood")
            : wording.Say("prediction.end-of-sapwood");
        if (prediction.Solved is not { Section: var section })
        {
            yield return prediction.TooCoarse is { } coarse ? Say(coarse) : wording.Say("prediction.solver-not-run");
            yield break;
        }
        yield return wording.Say(
            question.Incising is null ? "prediction.solver" : "prediction.solver-without-cuts",
            ("columns", Figures.Whole(section.Mesh.Columns)),
            ("rows", Figures.Whole(section.Mesh.Rows)),
            ("ending", Say(section.Run.Ending))
        );
    }

    private string Say(TooCoarse coarse) =>
        coarse.Wanted is { } wanted
            ? wording.Say(
                "prediction.solver-too-coarse",
                ("cells", Figures.Whole(coarse.Cells)),
                ("mm", Figures.Digits(coarse.CellMm, 2)),
                ("front", Figures.Digits(coarse.FrontMm, 2)),
                ("wanted", Figures.Whole(wanted))
            )
            : wording.Say(
                "prediction.solver-never-fine",
                ("most", Figures.Number(Ranges.SectionCells.High, 0)),
                ("front", Figures.Digits(coarse.FrontMm, 2))
            );

    /// <summary>What a prediction says of a requirement, and what is usual, one sentence each.</summary>
    public IEnumerable<string> Outlook(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var question = prediction.Asked.Prediction;
        yield return question.Incising is { } cuts
            ? wording.Say(
                "prediction.for-schedule-incised",
                ("schedule", question.Schedule.Name),
                ("cuts", _treating.Say(cuts))
            )
            : wording.Say("prediction.for-schedule", ("schedule", question.Schedule.Name));
        foreach (var sentence in WhatSharesAreOf(prediction))
            yield return sentence;
        var isAsked = question.IsDepthAsked;
        foreach (
            var sentence in Meet(
                isAsked ? prediction.Quick.PieceShare : null,
                isAsked ? prediction.Quick.CoreShare : null,
                prediction.LesserPart
            )
        )
            yield return sentence;
        foreach (var sentence in Usual(prediction))
            yield return sentence;
    }

    // What the figures leave out, and what they would be if no heartwood showed.
    private IEnumerable<string> WhatSharesAreOf(TreatingPrediction prediction)
    {
        var (rule, routes) = (prediction.Asked.Prediction.Rule, RequirementWords.Current.Routes);
        if (DepthOrder.LimitsUntreatedHeartwood(rule))
            yield return wording.Say("prediction.limit-not-predicted");
        if (prediction.WithoutHeartwoodAtFace is { Usual: { } usual } without)
            yield return wording.Say(
                "prediction.heartwood-not-known",
                ("share", Figures.Certainty(without.Quick.PieceShare.Value, wording)),
                ("reach", routes.Say(usual.Verdict))
            );
        if (prediction.LesserPart is { } part && DepthOrder.AsksOfHeartwoodAtFace(rule))
            yield return wording.Say("prediction.lesser-part", ("part", routes.Part(part)));
    }

    /// <summary>What is usual in such timber, and that it differs from the prediction where it does; empty where no depth is required.</summary>
    public IEnumerable<string> Usual(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        if (prediction.Usual is not { } usual)
            yield break;
        yield return Usual(usual);
        if (prediction.DiffersFromUsual)
            yield return UsualDiffers;
    }

    /// <summary>What is usual, by treatability and incising alone.</summary>
    /// <param name="usual">What is usual.</param>
    /// <param name="key">The sentence, with places for what is reached, its sources and their standing.</param>
    internal string Usual(UsualOutcome usual, string key = "prediction.usual") =>
        wording.Say(
            key,
            ("reach", RequirementWords.Current.Routes.Say(usual.Verdict)),
            (
                "sources",
                string.Join("; ", usual.Sources.Select(source => source.Document).Distinct(StringComparer.Ordinal))
            ),
            ("standing", wording.Say(Provenance.Weakest(usual.Sources.Select(source => source.Standing))))
        );

    /// <summary>That what is usual and what is predicted differ, so that it is not known whether the demand is reached.</summary>
    internal string UsualDiffers => wording.Say("prediction.usual-differs");

    /// <summary>What the numbers rest on, one sentence each.</summary>
    public IEnumerable<string> RestsOn(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var (question, source) = (prediction.Asked.Prediction, prediction.Asked.Schedule.Provenance);
        yield return wording.Say("prediction.sapwood", ("law", Law(question.Sapwood)));
        yield return wording.Say("prediction.heartwood", ("law", Law(question.Heartwood)));
        foreach (var sentence in new PlantWords(wording).RestsOn(prediction))
            yield return sentence;
        yield return wording.Say(
            "prediction.schedule",
            ("name", question.Schedule.Name),
            ("source", source.Citation),
            ("standing", wording.Say(source.Standing))
        );
        yield return wording.Say(
            "prediction.voids",
            ("percent", Figures.Number(question.VoidFraction * 100, 0)),
            ("liquid", question.Liquid.Name),
            ("viscosity", Figures.Number(question.Liquid.ViscosityMPaS, 2))
        );
        if (question.Warming is { } warming)
            yield return Warmed(warming, question);
        yield return wording.Say("prediction.assumed-laws");
    }

    private string Warmed(Warming warming, PredictionQuestion question)
    {
        var water = question.VoidFraction * question.WaterShare;
        return wording.Say(
            "prediction.warming",
            ("wood", Figures.Number(warming.WoodCelsius, 0)),
            ("solution", Figures.Number(warming.SolutionCelsius, 0)),
            ("conductivity", Figures.Number(warming.Wood.ConductivityWPerMK(1000 * water), 2)),
            ("capacity", Figures.Number((warming.Wood.WallsJPerM3K + WoodHeat.LiquidJPerM3K * water) / 1e6, 2))
        );
    }

    /// <summary>How warm it is in the middle of the section at the end.</summary>
    public string MiddleCelsius(double celsius) =>
        wording.Say("prediction.middle-celsius", ("celsius", Figures.Number(celsius, 0)));

    private static IReadOnlyList<string> Row(string name, Spread spread, int decimals) =>
        [
            name,
            Figures.Number(spread.Low, decimals),
            Figures.Number(spread.Middle, decimals),
            Figures.Number(spread.High, decimals),
        ];

    private (string, string)[] Share(Estimate share) =>
        [
            ("share", Figures.Certainty(share.Value, wording)),
            ("spread", Figures.Certainty(share.StandardUncertainty, wording)),
        ];

    private string Law(PermeabilityLaw law) =>
        wording.Say(
            law.IsInference ? "prediction.law-inferred" : "prediction.law",
            ("name", _treating.Name(law)),
            ("median", Nm2(law)),
            ("factor", Factor(law)),
            ("source", law.Provenance.Citation),
            ("standing", wording.Say(law.Provenance.Standing)),
            ("directions", Directions(law.Directions))
        );

    private string Directions(FlowDirections directions) =>
        wording.Say(
            "prediction.directions",
            ("along", Figures.Whole((int)directions.LongitudinalToLateral)),
            ("tangential", Figures.Digits(directions.TangentialToRadial, 2)),
            ("name", directions.Name),
            ("source", directions.Provenance.Citation),
            ("standing", wording.Say(directions.Provenance.Standing))
        );

    // Three digits are more than is known.
    internal static string Nm2(PermeabilityLaw law) => Nm2(law.LateralMedianM2);

    internal static string Nm2(double m2)
    {
        var nm2 = m2 * 1e18;
        var unit = Math.Pow(10, Math.Floor(Math.Log10(nm2)) - 2);
        return Figures.Digits(Math.Round(nm2 / unit) * unit, 4);
    }

    internal static string Factor(PermeabilityLaw law) => Figures.Digits(law.TwentiethFactor, 1);

    private static string Tiny(double share) => share.ToString("0.0e0", CultureInfo.InvariantCulture);
}
