using MathNet.Numerics.Distributions;

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
    // Share of the variance between batches that is our not knowing the median, and the weight of what was believed
    // about each spread, in pieces. Both assumed; a few charges outweigh them.
    private const double NotKnown = 0.75;
    private const double PriorWeight = 4;
    private const double LeastSpread = 0.05;

    /// <summary>Standard deviation of the logarithm over all pieces of all batches, as predictions use it.</summary>
    public static double PieceToPiece(PermeabilityLaw law) =>
        Math.Sqrt(law.BatchLnSpread * law.BatchLnSpread + law.PieceLnSpread * law.PieceLnSpread);

    /// <summary>Fits a log-normal law of three levels (charge, piece, place) to depths, from what was believed before.</summary>
    /// <param name="before">The law believed so far.</param>
    /// <param name="points">Depths as permeabilities, one or more.</param>
    /// <param name="seed">Seed of the draws: the same seed gives the same answer.</param>
    /// <param name="rounds">Rounds of drawing, 100 to 100 000; the first quarter is thrown away.</param>
    /// <param name="cancellation">Stops between rounds.</param>
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
        var pieces = points.Select(point => (point.Charge, point.Piece)).Distinct().ToList();
        var charges = pieces.Select(piece => piece.Charge).Distinct(StringComparer.Ordinal).ToList();
        var pieceOf = Places(points.Select(point => (point.Charge, point.Piece)), pieces);
        var chargeOf = Places(pieces.Select(piece => piece.Charge), charges);
        var random = new Random(seed);
        var (low, high) = (Logs(points, point => point.LeastM2), Logs(points, point => point.MostM2));

        var median = Math.Log(before.LateralMedianM2);
        var batch = Math.Max(LeastSpread, before.BatchLnSpread);
        var medianVariance = NotKnown * batch * batch;
        double[] believed =
        [
            Squared(Math.Max(LeastSpread, before.WithinLnSpread)),
            Squared(Math.Max(LeastSpread, before.PieceLnSpread)),
            (1 - NotKnown) * batch * batch,
        ];
        var variance = believed.ToArray();
        var middle = median;
        var ofCharge = Enumerable.Repeat(median, charges.Count).ToArray();
        var ofPiece = Enumerable.Repeat(median, pieces.Count).ToArray();
        var ofDepth = new double[points.Count];
        double sum = 0,
            sumOfSquares = 0;
        var mean = new double[3];
        var kept = 0;
        for (var round = 0; round < rounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (var i = 0; i < ofDepth.Length; i++)
                ofDepth[i] =
                    low[i] == high[i]
                        ? low[i]
                        : Between(random, ofPiece[pieceOf[i]], Math.Sqrt(variance[0]), low[i], high[i]);
            Level(random, ofPiece, ofDepth, pieceOf, variance[0], j => ofCharge[chargeOf[j]], variance[1]);
            Level(random, ofCharge, ofPiece, chargeOf, variance[1], _ => middle, variance[2]);
            double[] one = [middle];
            Level(random, one, ofCharge, new int[charges.Count], variance[2], _ => median, medianVariance);
            middle = one[0];
            variance[0] = Variance(random, believed[0], ofDepth, i => ofPiece[pieceOf[i]]);
            variance[1] = Variance(random, believed[1], ofPiece, j => ofCharge[chargeOf[j]]);
            variance[2] = Variance(random, believed[2], ofCharge, _ => middle);
            if (round < rounds / 4)
                continue;
            kept++;
            sum += middle;
            sumOfSquares += middle * middle;
            for (var level = 0; level < 3; level++)
                mean[level] += variance[level];
        }
        var found = sum / kept;
        var unsure = Math.Max(0, sumOfSquares / kept - found * found);
        var after = new PermeabilityLaw(
            $"{before.Name}, fitted to {Count(charges.Count, "charge")}",
            Math.Exp(found),
            before.TangentialToRadial,
            before.LongitudinalToLateral,
            Math.Sqrt(mean[2] / kept + unsure),
            Math.Sqrt(mean[1] / kept),
            Math.Sqrt(mean[0] / kept),
            before.IsInference,
            before.Provenance
        );
        return new PermeabilityFit(before, after, charges.Count, pieces.Count, points.Count);
    }

    // Draws each value of an upper level given those below it and what lies above.
    private static void Level(
        Random random,
        double[] upper,
        double[] lower,
        int[] upperOf,
        double lowerVariance,
        Func<int, double> above,
        double upperVariance
    )
    {
        var count = new int[upper.Length];
        var total = new double[upper.Length];
        for (var i = 0; i < lower.Length; i++)
        {
            count[upperOf[i]]++;
            total[upperOf[i]] += lower[i];
        }
        for (var j = 0; j < upper.Length; j++)
        {
            var precision = count[j] / lowerVariance + 1 / upperVariance;
            var mean = (total[j] / lowerVariance + above(j) / upperVariance) / precision;
            upper[j] = Normal.Sample(random, mean, Math.Sqrt(1 / precision));
        }
    }

    private static double Variance(Random random, double believed, double[] values, Func<int, double> about)
    {
        double squares = 0;
        for (var i = 0; i < values.Length; i++)
            squares += Squared(values[i] - about(i));
        return (PriorWeight * believed + squares) / ChiSquared.Sample(random, PriorWeight + values.Length);
    }

    // A normal draw between two bounds, by the inverse of the distribution; at a bound far out in the tail, the bound.
    private static double Between(Random random, double mean, double spread, double low, double high)
    {
        var (a, b) = (Normal.CDF(mean, spread, low), Normal.CDF(mean, spread, high));
        if (b - a < 1e-12)
            return double.IsFinite(low) ? low : high;
        return Normal.InvCDF(mean, spread, Math.Clamp(a + random.NextDouble() * (b - a), 1e-15, 1 - 1e-15));
    }

    // Where each item stands in a list of different ones.
    private static int[] Places<T>(IEnumerable<T> items, List<T> different)
        where T : notnull
    {
        var at = different.Select((item, i) => (item, i)).ToDictionary(pair => pair.item, pair => pair.i);
        return [.. items.Select(item => at[item])];
    }

    private static double[] Logs(IReadOnlyList<FitPoint> points, Func<FitPoint, double> value) =>
        [.. points.Select(point => Math.Log(value(point)))];

    private static double Squared(double value) => value * value;

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
