using Alburnum.Acceptance;
using Alburnum.Impregnation.Incising;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Impregnation.Prediction;

/// <summary>What is asked of the quick model.</summary>
/// <param name="Section">Size of the pieces.</param>
/// <param name="Log">Where the pieces lay in the log.</param>
/// <param name="Sapwood">How permeable the sapwood is.</param>
/// <param name="Heartwood">How permeable the heartwood is.</param>
/// <param name="VoidFraction">Void share that air fills, above 0.</param>
/// <param name="Liquid">The solution.</param>
/// <param name="Schedule">The schedule.</param>
/// <param name="Incising">The cuts on every face; null where there are none.</param>
/// <param name="Rule">Depth asked for.</param>
/// <param name="ZoneMm">Depth of the analytical zone, mm; null for the whole sapwood, or the whole piece where there is none.</param>
public sealed record PredictionQuestion(
    Section Section,
    LogGeometry Log,
    PermeabilityLaw Sapwood,
    PermeabilityLaw Heartwood,
    double VoidFraction,
    TreatingLiquid Liquid,
    Schedule Schedule,
    IncisingPattern? Incising,
    DepthRule Rule,
    double? ZoneMm
);

/// <summary>Three points of a distribution.</summary>
/// <param name="Low">A twentieth lies below.</param>
/// <param name="Middle">Half lies below.</param>
/// <param name="High">A twentieth lies above.</param>
public readonly record struct Spread(double Low, double Middle, double High)
{
    internal static Spread Of(double[] values)
    {
        Array.Sort(values);
        return new(At(values, 0.05), At(values, 0.5), At(values, 0.95));
    }

    private static double At(double[] sorted, double share)
    {
        var at = share * (sorted.Length - 1);
        var i = Math.Min((int)at, sorted.Length - 2);
        return sorted.Length == 1 ? sorted[0] : sorted[i] + (at - i) * (sorted[i + 1] - sorted[i]);
    }
}

/// <summary>What the quick model expects.</summary>
/// <param name="Pieces">Pieces drawn.</param>
/// <param name="Places">Places around the section.</param>
/// <param name="DepthMm">Depth at each place over all pieces, mm.</param>
/// <param name="LeastMm">Least depth of a piece, mm.</param>
/// <param name="MeanMm">Mean depth of a piece, mm.</param>
/// <param name="UptakeLPerM3">Net uptake of a piece, L to the m³ of wood.</param>
/// <param name="ZoneLPerM3">Solution kept in the analytical zone, L to the m³ of zone.</param>
/// <param name="PieceShare">Share of pieces that meet the rule at every place; its uncertainty is the spread between batches.</param>
/// <param name="CoreShare">Share of cores, one taken anywhere on a piece, that meet the rule.</param>
/// <param name="BatchShares">Share of conforming cores in each batch drawn, rising.</param>
public sealed record QuickPrediction(
    int Pieces,
    IReadOnlyList<SectionPosition> Places,
    IReadOnlyList<Spread> DepthMm,
    Spread LeastMm,
    Spread MeanMm,
    Spread UptakeLPerM3,
    Spread ZoneLPerM3,
    Estimate PieceShare,
    Estimate CoreShare,
    IReadOnlyList<double> BatchShares
)
{
    private const int Batches = 100;

    /// <summary>Chance that a batch passes a sampling plan judged by one core a piece.</summary>
    /// <param name="plan">The plan.</param>
    public double ChanceToPass(SamplingPlan plan) =>
        BatchShares.Average(share => plan.Acceptance(1 - share, new SteadyProcess()));

    /// <summary>Draws pieces and treats each with the sharp front.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="seed">Seed of the draws: the same seed gives the same answer.</param>
    /// <param name="pieces">Pieces to draw, 100 to 1e6; rounded to whole batches of a hundredth.</param>
    /// <param name="placesPerFace">Places on each face, 1 to 100.</param>
    /// <param name="cancellation">Stops between batches.</param>
    public static QuickPrediction Draw(
        PredictionQuestion question,
        int seed,
        int pieces = 10_000,
        int placesPerFace = 10,
        CancellationToken cancellation = default
    ) => Draw(question, PieceTreatment.FrontOf(question), seed, pieces, placesPerFace, cancellation);

    internal static QuickPrediction Draw(
        PredictionQuestion question,
        QuickFront front,
        int seed,
        int pieces,
        int placesPerFace = 10,
        CancellationToken cancellation = default
    )
    {
        Require.InRange(pieces, Batches, 1_000_000, "pieces");
        Require.InRange(placesPerFace, 1, 100, "places");
        Require.InRange(question.VoidFraction, 0.01, 0.95, "(share)");
        var piecesInBatch = pieces / Batches;
        pieces = piecesInBatch * Batches;
        var treat = new PieceTreatment(question, front, placesPerFace);
        var places = treat.Places;
        var depths = new double[places.Count][];
        for (var i = 0; i < places.Count; i++)
            depths[i] = new double[pieces];
        var (least, mean, uptake, zone) = (
            new double[pieces],
            new double[pieces],
            new double[pieces],
            new double[pieces]
        );
        var (pieceShares, coreShares) = (new double[Batches], new double[Batches]);
        var normal = new NormalDraws(seed);
        for (var b = 0; b < Batches; b++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (batchSapwood, batchHeartwood) = (normal.Next(), normal.Next());
            int conforming = 0,
                cores = 0;
            for (var n = 0; n < piecesInBatch; n++)
            {
                var at = b * piecesInBatch + n;
                var piece = treat.Next(normal, batchSapwood, batchHeartwood);
                for (var i = 0; i < places.Count; i++)
                {
                    depths[i][at] = piece.DepthMm[i];
                    if (DepthAt.MeetsAt(question.Rule, places[i], piece.DepthMm[i]))
                        cores++;
                }
                if (DepthAt.Meets(question.Rule, places, piece.DepthMm))
                    conforming++;
                (least[at], mean[at], uptake[at], zone[at]) = (
                    piece.LeastMm,
                    piece.MeanMm,
                    piece.UptakeLPerM3,
                    piece.ZoneLPerM3
                );
            }
            pieceShares[b] = (double)conforming / piecesInBatch;
            coreShares[b] = (double)cores / piecesInBatch / places.Count;
        }
        Array.Sort(coreShares);
        return new QuickPrediction(
            pieces,
            places,
            [.. depths.Select(Spread.Of)],
            Spread.Of(least),
            Spread.Of(mean),
            Spread.Of(uptake),
            Spread.Of(zone),
            Over(pieceShares),
            Over(coreShares),
            coreShares
        );
    }

    private static Estimate Over(double[] shares)
    {
        var mean = shares.Average();
        return new(mean, Math.Sqrt(shares.Average(share => (share - mean) * (share - mean))));
    }
}
