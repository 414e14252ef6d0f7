using Alburnum.Facts;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

/// <summary>What is to be predicted, and how carefully.</summary>
public sealed record PredictionRequest
{
    /// <summary>The wood, the schedule and the depth.</summary>
    public required TreatingRequest Treating { get; init; }

    /// <summary>Pieces to draw, 100 to 1 000 000.</summary>
    public required int Pieces { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required int Seed { get; init; }

    /// <summary>Cells across the section for the flow solver, 4 to 2000; null leaves it out.</summary>
    public int? Cells { get; init; }

    /// <summary>What the plant measured of its own charges, which calibrates the permeability first; null where nothing is known of it.</summary>
    public PlantRecord? Plant { get; init; }
}

/// <summary>What the vessel can achieve in a timber.</summary>
public sealed record TreatingPrediction
{
    /// <summary>What was asked; its permeabilities are those fitted, where there were depths to fit them to.</summary>
    public required TreatingQuestion Asked { get; init; }

    /// <summary>Each wood that the plant's own charges speak of, sapwood first; empty where no plant was given.</summary>
    public required IReadOnlyList<PlantWood> Plant { get; init; }

    /// <summary>What is expected of many pieces.</summary>
    public required QuickPrediction Quick { get; init; }

    /// <summary>Depth from a cut end, mm: of heartwood where there is any, otherwise of sapwood.</summary>
    public required Spread EndDepthMm { get; init; }

    /// <summary>Pressure period for the depth, min: of the fast twentieth of pieces, the middle and the slow twentieth; null where two days are not enough, the wood is incised or no single depth is required.</summary>
    public required Spread? MinutesToDepth { get; init; }

    /// <summary>Product in the analytical zone, kg/m³; null where no strength was given.</summary>
    public required Spread? RetentionKgPerM3 { get; init; }

    /// <summary>Where the product stays: with walls that take nothing, and with what is known of them or bounds. Empty where no strength was given.</summary>
    public required IReadOnlyList<ExpectedProduct> Product { get; init; }

    /// <summary>Product in a litre of the working solution, kg; null where no strength was given.</summary>
    public double? KgPerL => Asked.StrengthPercent / 100 * Asked.Prediction.Liquid.DensityKgPerM3 / 1000;

    /// <summary>Chance that a batch passes the sampling plan; null where none was given.</summary>
    public required double? ChanceToPass { get; init; }

    /// <summary>What design codes take off for the cuts; null where the wood is not incised.</summary>
    public required IncisingPenalty? Penalty { get; init; }

    /// <summary>What the flow solver found for the median piece; null where it was not run.</summary>
    public required SolvedPiece? Solved { get; init; }

    /// <summary>Why the flow solver was not run although cells were asked for; null where it was run, or not asked for.</summary>
    public TooCoarse? TooCoarse { get; init; }

    /// <summary>What is expected of the median piece beside what the flow solver found; null where it was not run, stopped short, or the wood is incised.</summary>
    public SolverGap? Gap =>
        Solved is { Section: { Run.Ending: Completed } section } && Asked.Prediction.Incising is null
            ? SolverGap.Of(Quick, section, UptakeFactor ?? 1)
            : null;

    /// <summary>What the plant's uptakes are over those expected of its wood, by which uptake and retention are multiplied; null where no uptake of it is known.</summary>
    public double? UptakeFactor => Plant.UptakeFactor();

    /// <summary>Whether the demand is usually met in such timber, by treatability and incising alone; null where no depth is required.</summary>
    public required UsualOutcome? Usual { get; init; }

    /// <summary>The wood that the shares are of, sapwood or exposed heartwood, where more is asked than of it: fewer pieces meet this part, or the other is not predicted. At most so many meet the demand. Null where they are of the whole demand.</summary>
    public WoodZone? LesserPart { get; init; }

    /// <summary>The same where no heartwood reaches a face; null where it is known whether any does, and where nothing is asked of it.</summary>
    public TreatingPrediction? WithoutHeartwoodAtFace { get; init; }

    /// <summary>True where what is usual and what is predicted point different ways: usually reached, yet by fewer than half of the pieces, or the other way round.</summary>
    public bool DiffersFromUsual => Usual?.DiffersFrom(Quick) == true;

    /// <summary>Weakest standing of what the prediction rests on.</summary>
    public Standing Standing =>
        Provenance.Weakest(
            new[]
            {
                Asked.Prediction.Sapwood.Provenance,
                Asked.Prediction.Heartwood.Provenance,
                Asked.Schedule.Provenance,
                Penalty?.Source,
            }
                .OfType<Provenance>()
                .Select(source => source.Standing)
        );
}

/// <summary>What is usual in such timber.</summary>
/// <param name="Verdict">Whether the demand is usually met.</param>
/// <param name="Sources">Where the rows of the table come from. Never empty.</param>
public sealed record UsualOutcome(ReachVerdict Verdict, IReadOnlyList<Provenance> Sources)
{
    /// <summary>What is usual; null where no depth is required.</summary>
    /// <param name="rule">Required depth.</param>
    /// <param name="species">The timber; null where only its permeability is known.</param>
    /// <param name="isIncised">Whether the faces are incised.</param>
    /// <param name="quick">What is predicted of the same pieces: whether heartwood reaches a face.</param>
    /// <param name="facts">What is usual.</param>
    internal static UsualOutcome? Of(
        DepthRule rule,
        Species? species,
        bool isIncised,
        QuickPrediction quick,
        FactLibrary facts
    ) =>
        rule is NoDepth
            ? null
            : new(
                facts.UsualReach.Judge(
                    InItsWood(rule, quick.Places),
                    species,
                    isIncised,
                    quick.Places.Any(place => place.SapwoodMm <= 0)
                ),
                [.. facts.UsualReach.Rows.Select(row => row.Provenance)]
            );

    // Where sapwood lies that deep below every face, a depth from the faces is one of sapwood.
    private static DepthRule InItsWood(DepthRule rule, IReadOnlyList<SectionPosition> places) =>
        rule switch
        {
            AllOf all => new AllOf([.. all.Parts.Select(part => InItsWood(part, places))]),
            AnyOf any => new AnyOf([.. any.Parts.Select(part => InItsWood(part, places))]),
            LeastDepth { Zone: WoodZone.Lateral } depth when places.All(place => place.SapwoodMm >= depth.DepthMm) =>
                new LeastDepth(WoodZone.Sapwood, depth.DepthMm, depth.Coverage),
            _ => rule,
        };

    /// <summary>True where the prediction points the other way: usually reached, yet by fewer than half of the pieces, or the other way round.</summary>
    /// <param name="quick">What is predicted.</param>
    public bool DiffersFrom(QuickPrediction quick) =>
        Verdict switch
        {
            ReachVerdict.Likely => quick.PieceShare.Value < 0.5,
            ReachVerdict.Unlikely => quick.PieceShare.Value > 0.5,
            _ => false,
        };
}

/// <summary>What is expected of the median piece beside what the flow solver found for its whole section.</summary>
/// <param name="DepthMm">Depth in the middle half of the faces, mm.</param>
/// <param name="UptakeLPerM3">Net uptake, L/m³.</param>
public sealed record SolverGap(TwoAnswers DepthMm, TwoAnswers UptakeLPerM3)
{
    // What cannot be told apart in practice. Our own choice.
    private const double LeastMm = 0.2;
    private const double LeastLPerM3 = 5;

    /// <summary>True where they lie apart by more than a tenth, and by more than can be told apart.</summary>
    public bool IsLarge => DepthMm.AreApart(LeastMm) || UptakeLPerM3.AreApart(LeastLPerM3);

    /// <summary>The two beside each other.</summary>
    /// <param name="quick">What is expected.</param>
    /// <param name="section">What the solver found.</param>
    /// <param name="uptakeFactor">What the expected uptake was multiplied by; the solver's was not.</param>
    public static SolverGap Of(QuickPrediction quick, SectionRun section, double uptakeFactor = 1)
    {
        ArgumentNullException.ThrowIfNull(quick);
        ArgumentNullException.ThrowIfNull(section);
        var solvedMm = section.MeanDepthMm();
        // Both fill the piece: where a way ends is then a matter of counting, half-way to the other front or at the other face.
        var isFilled =
            section.ReachedShare >= LayeredWay.FullShare
            && quick.Places.Zip(quick.DepthMm, (place, depth) => depth.Middle >= place.Own.EndMm).All(filled => filled);
        return new(
            new(isFilled ? solvedMm : quick.FaceMiddleMm(), solvedMm, section.SolverError(run => run.MeanDepthMm())),
            new(quick.UptakeLPerM3.Middle / uptakeFactor, section.NetLPerM3, section.SolverError(run => run.NetLPerM3))
        );
    }
}

/// <summary>One number as expected from single ways and as solved on the whole section.</summary>
/// <param name="Expected">As expected.</param>
/// <param name="Solved">As solved.</param>
/// <param name="SolverError">How far the section's cells and the time steps may put the second off.</param>
public sealed record TwoAnswers(double Expected, double Solved, double SolverError)
{
    private const double LargeShare = 0.1;

    internal bool AreApart(double least) =>
        Math.Abs(Expected - Solved) - SolverError
        > Math.Max(least, LargeShare * Math.Max(Math.Abs(Expected), Math.Abs(Solved)));
}

/// <summary>Even cells too wide for a shallow front: the flow solver would tell more of them than of the wood.</summary>
/// <param name="Cells">Cells across that were asked for.</param>
/// <param name="CellMm">How wide they would be, mm.</param>
/// <param name="FrontMm">How deep the front is expected, mm.</param>
/// <param name="Wanted">Cells across that would do; null where more than may be asked for.</param>
public sealed record TooCoarse(int Cells, double CellMm, double FrontMm, int? Wanted)
{
    /// <summary>Whether a number of cells is too small; null where it does.</summary>
    internal static TooCoarse? Of(PredictionQuestion question, int cells)
    {
        var (least, frontMm) = SectionRun.LeastCells(question);
        var (width, height) = SectionBox.Of(question.Section);
        return cells >= least
            ? null
            : new(
                cells,
                Math.Max(width, height) / cells,
                frontMm,
                least <= Ranges.SectionCells.High ? (int)least : null
            );
    }
}

/// <summary>The median piece by the flow solver.</summary>
/// <param name="Section">The section's run.</param>
/// <param name="End">The run of a cut end.</param>
public sealed record SolvedPiece(SectionRun Section, EndRun End);

/// <summary>Predicts what the vessel can achieve in a timber: depth, uptake, retention, and the share of pieces that will conform.</summary>
public static class Predict
{
    /// <summary>Predicts.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="progress">Told the share of the flow solver's run that is done; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">Something asked cannot be, or is not known of the species.</exception>
    public static TreatingPrediction Run(
        PredictionRequest request,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(facts);
        var asked = TreatingQuestion.OfPieces(request.Treating, facts);
        IReadOnlyList<PlantWood> plant = [];
        if (request.Plant is { } record)
            (asked, plant) = PlantFit.Of(asked, request.Treating, record, facts, request.Seed, stop);
        var question = asked.Prediction;
        var front = WayRun.Table(question);
        var quick = plant.Applied(
            QuickPrediction.Draw(question, front, request.Seed, request.Pieces, cancellation: stop),
            question.VoidFraction
        );
        var end = EndReach.Of(question, front, question.Log.HeartwoodRadiusMm > 0);
        var tooCoarse = request.Cells is { } asCells ? TooCoarse.Of(question, asCells) : null;
        return new()
        {
            Asked = asked,
            Plant = plant,
            Quick = quick,
            EndDepthMm = end,
            MinutesToDepth = asked.DepthMm is { } depth && question.Incising is null ? Minutes(question, depth) : null,
            RetentionKgPerM3 = asked.StrengthPercent is { } strength
                ? Retention(quick.ZoneLPerM3, strength, question.Liquid.DensityKgPerM3)
                : null,
            Product = asked.StrengthPercent is { } percent
                ? ExpectedProduct.Of(
                    asked,
                    quick,
                    request.Treating.Sorption,
                    percent / 100 * question.Liquid.DensityKgPerM3,
                    request.Seed,
                    stop
                )
                : [],
            ChanceToPass = asked.Plan is { } plan ? quick.ChanceToPass(plan) : null,
            Usual = UsualOutcome.Of(
                question.Rule,
                request.Treating.Species,
                question.Incising is not null,
                quick,
                facts
            ),
            Penalty = question.Incising is null ? null : facts.Impregnation.Penalty,
            TooCoarse = tooCoarse,
            Solved =
                request.Cells is { } cells && tooCoarse is null
                    ? Solve(question, cells, end.Middle, ShareDone.To(progress), stop)
                    : null,
        };
    }

    private static SolvedPiece Solve(
        PredictionQuestion question,
        int cells,
        double endMm,
        IProgress<double>? progress,
        CancellationToken stop
    ) =>
        new(
            SectionRun.WithCoarser(question, cells, progress, stop),
            EndRun.Of(question, question.Log.HeartwoodRadiusMm > 0, endMm, stop)
        );

    /// <summary>True where enough is known of the timber to predict, without asking for more: permeability, density, width of the sapwood.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="facts">Permeabilities.</param>
    internal static bool Knows(TreatingRequest request, FactLibrary facts) =>
        request.Species is { Density: not null, SapwoodWidth: not null } species
        && facts.Impregnation.Knows(species, isHeartwood: false)
        && facts.Impregnation.Knows(species, isHeartwood: true);

    // The slow and the fast twentieth of pieces, batches included.
    private static Spread? Minutes(PredictionQuestion question, double depthMm)
    {
        var places = SectionPositions.Around(question.Section, question.Log, 4);
        var sapwood = places.Min(place => place.SapwoodMm);
        var law = sapwood > 0 ? question.Sapwood : question.Heartwood;
        // Where least sapwood lies, and there where the rings let least through straight in.
        var inwards = places
            .Where(place => place.SapwoodMm == sapwood)
            .Min(place => law.InwardsTimes(place.RadialShare));
        var spread = law.TwentiethFactor;
        return At(spread) is { } fast && At(1) is { } middle && At(1 / spread) is { } slow
            ? new Spread(fast, middle, slow)
            : null;

        double? At(double factor) => TimeToDepth.Minutes(question, depthMm, sapwood, inwards * factor);
    }

    private static Spread Retention(Spread litres, double strengthPercent, double densityKgPerM3)
    {
        var perLitre = densityKgPerM3 / 1000 * strengthPercent / 100;
        return new(litres.Low * perLitre, litres.Middle * perLitre, litres.High * perLitre);
    }
}
