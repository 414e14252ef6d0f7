using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>One depth found in a plant's own charge, as the permeability that explains it.</summary>
/// <param name="Charge">The charge: wood treated together counts as one batch.</param>
/// <param name="Piece">The piece within the charge.</param>
/// <param name="LeastM2">Permeability that the depth needs at least, m²; 0 where the depth was too small to read.</param>
/// <param name="MostM2">Permeability at most, m²; infinite where the way was filled. The same as the least where the depth was read.</param>
public sealed record FitPoint(string Charge, string Piece, double LeastM2, double MostM2);

/// <summary>A permeability law narrowed by a plant's own depths.</summary>
/// <param name="Before">The law it started from.</param>
/// <param name="After">The law after.</param>
/// <param name="Charges">Charges used.</param>
/// <param name="Pieces">Pieces used.</param>
/// <param name="Depths">Depths used.</param>
public sealed record PermeabilityFit(PermeabilityLaw Before, PermeabilityLaw After, int Charges, int Pieces, int Depths)
{
    /// <summary>Fits a log-normal law of three levels (charge, piece, place) to depths, from what was believed before.</summary>
    /// <param name="before">The law believed so far.</param>
    /// <param name="points">Depths as permeabilities, one or more.</param>
    /// <param name="seed">Seed of the draws: the same seed gives the same answer.</param>
    /// <param name="rounds">Rounds of drawing, 100 to 100 000; the first quarter is thrown away.</param>
    /// <param name="cancellation">Stops between rounds.</param>
    /// <exception cref="InputRefusedException">The depths lie so far from what was believed that no timber spreads so wide: one or the other is wrong.</exception>
    /// <remarks>
    /// Bayes' rule by Gibbs sampling: each unknown is drawn in turn from its distribution given the rest; a depth that filled its
    /// way or was too small to read is drawn from its side of the normal curve (Tanner and Wong 1987; Gelman and others,
    /// Bayesian Data Analysis; remembered). What stays unknown of the median is counted into the spread between batches.
    /// </remarks>
    public static PermeabilityFit Of(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        int seed,
        int rounds = 4000,
        CancellationToken cancellation = default
    )
    {
        Require.InRange(points.Count, 1, int.MaxValue, "depths");
        Require.InRange(rounds, 100, 100_000, "rounds");
        foreach (var point in points)
        {
            Require.InRange(point.LeastM2, 0, 1, "m²", nameof(points));
            Require.InRange(point.MostM2, point.LeastM2, double.PositiveInfinity, "m²", nameof(points));
        }
        var chain = new PermeabilityChain(before, points, new SeededRandom(seed));
        for (var round = 0; round < rounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            chain.Round(isKept: round >= rounds / 4);
        }
        return new PermeabilityFit(before, chain.Law(), chain.Charges, chain.Pieces, points.Count);
    }
}
