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

    /// <summary>Uptakes used.</summary>
    public required int Uptakes { get; init; }

    /// <summary>Logarithm of the median permeability, m².</summary>
    public required Estimate LnMedian { get; init; }

    /// <summary>Plants drawn from what is known after: the median and the factor on uptakes hang together.</summary>
    public required IReadOnlyList<DrawnPlant> Plants { get; init; }

    /// <summary>What the plant's uptakes are over those expected of its wood, and its standard uncertainty; null where no uptake was used.</summary>
    public Estimate? UptakeFactor
    {
        get
        {
            if (Uptakes == 0)
                return null;
            var factors = Plants.Select(plant => Math.Exp(plant.LnUptakeFactor)).ToList();
            var mean = factors.Average();
            return new(mean, Math.Sqrt(factors.Average(factor => (factor - mean) * (factor - mean))));
        }
    }

    /// <summary>Fits a log-normal law of three levels (charge, piece, place) to depths and uptakes, from what was believed before.</summary>
    /// <param name="before">The law believed so far.</param>
    /// <param name="points">Depths as permeabilities.</param>
    /// <param name="seed">Seed of the draws: the same seed gives the same answer.</param>
    /// <param name="rounds">Rounds of drawing, 100 to 100 000; the first quarter is thrown away.</param>
    /// <param name="uptakes">Uptakes, one of a charge at most. With the depths, one or more.</param>
    /// <param name="cancellation">Stops between rounds.</param>
    /// <exception cref="InputRefusedException">The depths lie so far from what was believed that no timber spreads so wide: one or the other is wrong.</exception>
    /// <remarks>
    /// Bayes' rule by Gibbs sampling: each unknown is drawn in turn from its distribution given the rest; a depth that filled its
    /// way or was too small to read is drawn from its side of the normal curve (Tanner and Wong 1987; Gelman and others,
    /// Bayesian Data Analysis; remembered). What stays unknown of the median is counted into the spread between batches. An uptake speaks of
    /// its charge's median; one factor on all of a plant's uptakes, known to <see cref="UptakeCurve.AssumedLaws"/>, is found along with it.
    /// </remarks>
    public static PermeabilityFit Of(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        int seed,
        int rounds = 4000,
        IReadOnlyList<PlantUptake>? uptakes = null,
        CancellationToken cancellation = default
    )
    {
        uptakes ??= [];
        Require.InRange(points.Count + uptakes.Count, 1, int.MaxValue, "depths and uptakes");
        Require.InRange(rounds, 100, 100_000, "rounds");
        foreach (var point in points)
        {
            Require.InRange(point.LeastM2, 0, 1, "m²", nameof(points));
            Require.InRange(point.MostM2, point.LeastM2, double.PositiveInfinity, "m²", nameof(points));
        }
        var chain = new PermeabilityChain(before, points, uptakes, new SeededRandom(seed));
        for (var round = 0; round < rounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            chain.Round(isKept: round >= rounds / 4);
        }
        return new()
        {
            Before = before,
            After = chain.Law(),
            Charges = chain.Charges,
            Pieces = chain.Pieces,
            Depths = points.Count,
            Uptakes = uptakes.Count,
            LnMedian = chain.LnMedian,
            Plants = chain.Plants,
        };
    }
}

/// <summary>One plant as it may be.</summary>
/// <param name="LnMedianM2">Logarithm of the median permeability, m².</param>
/// <param name="BatchLnSpread">Standard deviation of the logarithm between charges, our not knowing the median left out.</param>
/// <param name="LnUptakeFactor">Logarithm of its uptakes over those expected of their wood.</param>
public readonly record struct DrawnPlant(double LnMedianM2, double BatchLnSpread, double LnUptakeFactor);
