using Alburnum.Measures;

namespace Alburnum.Penetration;

/// <summary>Statistics of depth over all positions that are not left out.</summary>
/// <remarks>
/// A position that is treated right through has no depth of its own, only one that is reached at least: it takes no part, which can only make a statistic
/// less. Where there is no other position, the depths that are reached at least stand for them.
/// Standard uncertainties follow JCGM 100 (GUM), clause 5: one part is common to all positions (scale, outline, drawn-in colour) and does not
/// average out; the rest is each position's own, alike over about <see cref="AlikeMm"/> of face. The least of many uncertain depths tends to be too
/// small, so minimum and maximum are corrected by the shift that the positions' own uncertainty is expected to cause, found by drawing it repeatedly (JCGM 101).
/// The correction stops at the neighbouring statistic, so that least, 5th percentile, median and greatest stand in that order as they do in the wood.
/// </remarks>
public static class SectionDepth
{
    /// <summary>Length of face over which the reading errors are much alike, mm.</summary>
    public const double AlikeMm = 2;

    // The standard deviation of so many draws is known to about 4 % of itself (1/√(2n)).
    private const int Draws = 400;

    private const int Seed = 20250;

    /// <summary>The statistics; null where every position is left out, and none is treated right through.</summary>
    /// <param name="faces">Faces of one section.</param>
    /// <param name="commonMm">Standard uncertainty common to all depths, contained in each position's own figure, mm. 0 or more.</param>
    public static DepthStatistics? Of(IReadOnlyList<FaceProfile> faces, double commonMm)
    {
        ArgumentNullException.ThrowIfNull(faces);
        Require.InRange(commonMm, 0, 1000, "mm");
        var depths = new List<double>();
        var own = new List<double>();
        double length = 0;
        var isSeen = faces.Any(face => face.Excluded.Contains(false));
        foreach (var face in faces)
        {
            for (var i = 0; i < face.DepthMm.Count; i++)
            {
                if (face.KnownMm(i) is not { } depthMm || face.Excluded[i] == isSeen)
                    continue;
                depths.Add(depthMm);
                var u = face.StandardUncertaintyMm[i];
                own.Add(Math.Sqrt(Math.Max(0, (u * u) - (commonMm * commonMm))));
                length += face.StepMm;
            }
        }
        if (depths.Count == 0)
            return null;
        var independent = Math.Max(1, Math.Min(depths.Count, length / AlikeMm));
        var mean = depths.Average();
        var uMean = Math.Sqrt(own.Sum(u => u * u) / depths.Count / independent);
        var sorted = depths.Order().ToArray();
        double[] plain = [sorted[0], Quantiles.Of(sorted, 0.05), Quantiles.Of(sorted, 0.5), sorted[^1]];
        var (drawnMean, drawnSd) = Draw(depths, own, length / depths.Count);
        Estimate AsRead(int k) => new(plain[k], UncertaintyBudget.Combine(commonMm, drawnSd[k]));
        Estimate Corrected(int k, double fromMm, double toMm)
        {
            // Part of the shift is already in the reading, which was smoothed along the face: half is the middle of what is possible.
            var shift = (drawnMean[k] - plain[k]) / 2;
            // The whole shift stays in the uncertainty where the order of the statistics allows less of it.
            return new(
                Math.Clamp(plain[k] - shift, fromMm, toMm),
                UncertaintyBudget.Combine(commonMm, drawnSd[k], shift)
            );
        }
        return new(
            Corrected(0, 0, Math.Min(plain[1], mean)),
            AsRead(1),
            AsRead(2),
            new(mean, UncertaintyBudget.Combine(commonMm, uMean)),
            Corrected(3, Math.Max(plain[2], mean), double.PositiveInfinity)
        );
    }

    private static (double[] Mean, double[] Sd) Draw(List<double> depths, List<double> own, double stepMm)
    {
        var random = new SeededRandom(Seed);
        var sum = new double[4];
        var square = new double[4];
        var tried = new double[depths.Count];
        // Neighbouring errors are alike: a first-order autoregression with that length.
        var keep = Math.Exp(-stepMm / AlikeMm);
        var fresh = Math.Sqrt(1 - (keep * keep));
        for (var n = 0; n < Draws; n++)
        {
            var e = random.NextNormal();
            for (var i = 0; i < tried.Length; i++)
            {
                tried[i] = depths[i] + (own[i] * e);
                e = (keep * e) + (fresh * random.NextNormal());
            }
            Array.Sort(tried);
            double[] values = [tried[0], Quantiles.Of(tried, 0.05), Quantiles.Of(tried, 0.5), tried[^1]];
            for (var k = 0; k < 4; k++)
            {
                sum[k] += values[k];
                square[k] += values[k] * values[k];
            }
        }
        var mean = sum.Select(s => s / Draws).ToArray();
        return (mean, [.. square.Select((q, k) => Math.Sqrt(Math.Max(0, (q / Draws) - (mean[k] * mean[k]))))]);
    }
}
