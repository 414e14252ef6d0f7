using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>One depth found in a plant's own charge, as the permeability that explains it.</summary>
/// <param name="Charge">The charge: wood treated together counts as one batch.</param>
/// <param name="Piece">The piece within the charge.</param>
/// <param name="LeastM2">Permeability that the depth needs at least, m²; 0 where the depth was too small to read.</param>
/// <param name="MostM2">Permeability at most, m²; infinite where the way was filled. The same as the least where the depth was read.</param>
public sealed record FitPoint(string Charge, string Piece, double LeastM2, double MostM2);

/// <summary>A permeability law narrowed by a plant's own charges.</summary>
public sealed record PermeabilityFit
{
    /// <summary>The law it started from.</summary>
    public required PermeabilityLaw Before { get; init; }

    /// <summary>The law after.</summary>
    public required PermeabilityLaw After { get; init; }

    /// <summary>Charges used.</summary>
    public required int Charges { get; init; }

    /// <summary>Pieces used.</summary>
    public required int Pieces { get; init; }

    /// <summary>Depths used.</summary>
    public required int Depths { get; init; }

    /// <summary>What was read of whole charges and used.</summary>
    public required IReadOnlyList<ChargeEvidence> Evidence { get; init; }

    /// <summary>Charges of which one kind of reading was used.</summary>
    /// <param name="kind">The kind.</param>
    public int Read(PlantEvidenceKind kind) => Evidence.Count(read => read.Kind == kind);

    /// <summary>Logarithm of the median permeability, m².</summary>
    public required Estimate LnMedian { get; init; }

    /// <summary>Plants drawn from what is known after: the median and the factor on uptakes hang together.</summary>
    public required IReadOnlyList<DrawnPlant> Plants { get; init; }

    /// <summary>What the plant's uptakes are over those expected of its wood, and its standard uncertainty; null where nothing was read of whole charges.</summary>
    public Estimate? UptakeFactor
    {
        get
        {
            if (Evidence.Count == 0)
                return null;
            var factors = Plants.Select(plant => Math.Exp(plant.LnUptakeFactor)).ToList();
            var mean = factors.Average();
            return new(mean, Math.Sqrt(factors.Average(factor => (factor - mean) * (factor - mean))));
        }
    }

    /// <summary>Logarithm of the farthest factor on uptakes that goes with the laws of flow: two standard uncertainties, of those laws and of the factor together.</summary>
    public double MostLnUptakeFactor =>
        2
        * double.Hypot(
            UptakeCurve.AssumedLaws,
            UptakeFactor is { } factor ? factor.StandardUncertainty / factor.Value : 0
        );

    /// <summary>Whether the plant's uptakes lie farther from those expected than the laws of flow leave open: something else is not as it is believed.</summary>
    public bool IsUptakeFactorFar =>
        UptakeFactor is { } factor && Math.Abs(Math.Log(factor.Value)) > MostLnUptakeFactor;

    /// <summary>How likely each law of the walls is after; empty where nothing tells them apart.</summary>
    public IReadOnlyList<double> WallShares =>
        Evidence.Select(read => read.Walls).DefaultIfEmpty(1).Max() is > 1 and var laws
            ?
            [
                .. Enumerable
                    .Range(0, laws)
                    .Select(law => (double)Plants.Count(plant => plant.Walls == law) / Plants.Count),
            ]
            : [];

    /// <summary>Fits a log-normal law of three levels (charge, piece, place) to depths and to what was read of whole charges, from what was believed before.</summary>
    /// <param name="before">The law believed so far.</param>
    /// <param name="points">Depths as permeabilities.</param>
    /// <param name="seed">Seed of the draws: the same seed gives the same answer.</param>
    /// <param name="rounds">Rounds of drawing, 100 to 100 000; the first quarter is thrown away.</param>
    /// <param name="evidence">What was read of whole charges. With the depths, one or more.</param>
    /// <param name="cancellation">Stops between rounds.</param>
    /// <exception cref="InputRefusedException">The depths lie so far from what was believed that no timber spreads so wide: one or the other is wrong.</exception>
    /// <remarks>
    /// Bayes' rule by Gibbs sampling: each unknown is drawn in turn from its distribution given the rest; a depth that filled its
    /// way or was too small to read is drawn from its side of the normal curve (Tanner and Wong 1987; Gelman and others,
    /// Bayesian Data Analysis; remembered). What stays unknown of the median is counted into the spread between batches. What was read of
    /// a whole charge speaks of its median; one factor on all that a plant's wood takes up, known to <see cref="UptakeCurve.AssumedLaws"/>, and one law of what
    /// the walls take, each as likely before, are found along with it.
    /// </remarks>
    public static PermeabilityFit Of(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        int seed,
        int rounds = 4000,
        IReadOnlyList<ChargeEvidence>? evidence = null,
        CancellationToken cancellation = default
    )
    {
        evidence ??= [];
        Require.InRange(points.Count + evidence.Count, 1, int.MaxValue, "readings");
        Require.InRange(rounds, 100, 100_000, "rounds");
        foreach (var point in points)
        {
            Require.InRange(point.LeastM2, 0, 1, "m²", nameof(points));
            Require.InRange(point.MostM2, point.LeastM2, double.PositiveInfinity, "m²", nameof(points));
        }
        var chain = Drawn(before, points, evidence, seed, rounds, cancellation);
        return new()
        {
            Before = before,
            After = chain.Law(),
            Charges = chain.Charges,
            Pieces = chain.Pieces,
            Depths = points.Count,
            Evidence = evidence,
            LnMedian = chain.LnMedian,
            Plants = chain.Plants,
        };
    }

    /// <summary>Logarithm of the median permeability, m², by what was read of whole charges alone, and how wide its logarithm spreads between them, however wide that is.</summary>
    internal static (Estimate LnMedian, double BatchLnSpread) ByCharges(
        PermeabilityLaw before,
        IReadOnlyList<ChargeEvidence> evidence,
        int seed,
        int rounds,
        CancellationToken cancellation
    )
    {
        var chain = Drawn(before, [], evidence, seed, rounds, cancellation);
        return (chain.LnMedian, chain.Plants.Average(plant => plant.BatchLnSpread));
    }

    private static PermeabilityChain Drawn(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        IReadOnlyList<ChargeEvidence> evidence,
        int seed,
        int rounds,
        CancellationToken cancellation
    )
    {
        var chain = new PermeabilityChain(before, points, evidence, new SeededRandom(seed));
        for (var round = 0; round < rounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            chain.Round(isKept: round >= rounds / 4);
        }
        return chain;
    }
}

/// <summary>One plant as it may be.</summary>
/// <param name="LnMedianM2">Logarithm of the median permeability, m².</param>
/// <param name="BatchLnSpread">Standard deviation of the logarithm between charges, our not knowing the median left out.</param>
/// <param name="LnUptakeFactor">Logarithm of its uptakes over those expected of their wood.</param>
/// <param name="Walls">Number of the law that the walls follow.</param>
public readonly record struct DrawnPlant(double LnMedianM2, double BatchLnSpread, double LnUptakeFactor, int Walls);
