using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Rings;

/// <summary>Where the pith lies, with the covariance of its place, mm².</summary>
internal readonly record struct Pith(PointMm At, double Xx, double Xy, double Yy)
{
    /// <summary>Standard uncertainty along a direction, mm.</summary>
    public double Along(double dx, double dy) => Math.Sqrt((Xx * dx * dx) + (2 * Xy * dx * dy) + (Yy * dy * dy));
}

/// <summary>Finds the pith as the place that most growth rings turn about.</summary>
internal static class PithFinder
{
    /// <summary>Angle between a ring's normal and the way to the pith that is still usual, as a sine: rings are not circles.</summary>
    private const double Usual = 0.15;

    /// <summary>Patches lean together over about three of them, rings being wavy over centimetres.</summary>
    private const double Correlated = 4;

    /// <summary>Fewer patches than this say nothing.</summary>
    private const double LeastWeight = 4;

    /// <summary>Share of the patches' weight that turns about the pith; by chance it is some 0.25.</summary>
    private const double LeastAgreement = 0.5;

    /// <summary>A pith known worse than this share of the section's size is not known.</summary>
    private const double LeastKnown = 0.5;

    /// <summary>A pith farther than this many sizes of the section away cannot be told from parallel lines.</summary>
    private const double MostSizesAway = 6;

    /// <summary>The pith; null where no rings are seen, or too few turn about one place.</summary>
    public static Pith? Find(IReadOnlyList<RingLine> lines, SectionPlan plan)
    {
        var total = lines.Sum(line => line.Weight);
        if (total < LeastWeight)
            return null;
        var size = Math.Max(plan.WidthMm, plan.HeightMm);
        // One patch in three, in slanting rows, tells well enough where to begin.
        var few = lines.Where((_, k) => k % 3 == k / 3 % 3).ToArray();
        var at = Candidates(plan, size).MaxBy(p => Agreement(few, p));
        for (var turn = 0; turn < 12; turn++)
            at = Step(lines, at, size / 4);
        var away = double.Hypot(at.X - (plan.WidthMm / 2), at.Y - (plan.HeightMm / 2));
        if (!(away < MostSizesAway * size) || Agreement(lines, at) < LeastAgreement * total)
            return null;
        var pith = WithCovariance(lines, at, size);
        return Math.Sqrt(pith.Xx + pith.Yy) < LeastKnown * size ? pith : null;
    }

    // A lattice over the section and about it, then rings of places ever farther out.
    private static IEnumerable<PointMm> Candidates(SectionPlan plan, double size)
    {
        const int Across = 20;
        for (var j = 0; j <= Across; j++)
        for (var i = 0; i <= Across; i++)
            yield return new(
                (plan.WidthMm / 2) + (size * 2 * (i - (Across / 2.0)) / Across),
                (plan.HeightMm / 2) + (size * 2 * (j - (Across / 2.0)) / Across)
            );
        for (var far = 1.2 * size; far < MostSizesAway * size; far *= 1.35)
        for (var k = 0; k < 36; k++)
        {
            var (sin, cos) = Math.SinCos(k * Math.PI / 18);
            yield return new((plan.WidthMm / 2) + (far * cos), (plan.HeightMm / 2) + (far * sin));
        }
    }

    private static double Agreement(IReadOnlyList<RingLine> lines, PointMm pith)
    {
        double sum = 0;
        foreach (var line in lines)
        {
            var sine = Sine(line, pith) / Usual;
            sum += line.Weight / (1 + (sine * sine));
        }
        return sum;
    }

    // Sine of the angle between the way to the pith and the rings' normal.
    private static double Sine(RingLine line, PointMm pith)
    {
        var (x, y) = (pith.X - line.At.X, pith.Y - line.At.Y);
        return ((line.Nx * y) - (line.Ny * x)) / Math.Max(1, double.Hypot(x, y));
    }

    // Least squares of the sines, reweighted; no farther than a bound at once.
    private static PointMm Step(IReadOnlyList<RingLine> lines, PointMm pith, double mostMm)
    {
        var ((xx, xy, yy), (xr, yr), _, _) = Normal(lines, pith);
        // Held a little where the rings say nothing: along a bundle of parallel normals.
        var hold = 1e-3 * (xx + yy);
        (xx, yy) = (xx + hold, yy + hold);
        var determinant = (xx * yy) - (xy * xy);
        if (!(determinant > 0))
            return pith;
        var (dx, dy) = (((xr * yy) - (yr * xy)) / determinant, ((yr * xx) - (xr * xy)) / determinant);
        var shorten = Math.Min(1, mostMm / Math.Max(1e-9, double.Hypot(dx, dy)));
        return new(pith.X - (shorten * dx), pith.Y - (shorten * dy));
    }

    private static Pith WithCovariance(IReadOnlyList<RingLine> lines, PointMm pith, double size)
    {
        var ((xx, xy, yy), _, square, weight) = Normal(lines, pith);
        var variance = Correlated * Math.Max(square / weight, 0.02 * 0.02);
        // Anywhere within a few sizes to begin with.
        var prior = variance / (9 * size * size);
        var determinant = ((xx + prior) * (yy + prior)) - (xy * xy);
        return new(
            pith,
            variance * (yy + prior) / determinant,
            -variance * xy / determinant,
            variance * (xx + prior) / determinant
        );
    }

    // Sums of the least squares: of the sines' slopes, of slopes by sines, of squared sines, of weights.
    private static (
        (double Xx, double Xy, double Yy) Slopes,
        (double X, double Y) Right,
        double Square,
        double Weight
    ) Normal(IReadOnlyList<RingLine> lines, PointMm pith)
    {
        double xx = 0,
            xy = 0,
            yy = 0,
            xr = 0,
            yr = 0,
            square = 0,
            weight = 0;
        foreach (var line in lines)
        {
            var sine = Sine(line, pith);
            var off = sine / Usual;
            var w = line.Weight / ((1 + (off * off)) * (1 + (off * off)));
            // How the sine changes with the pith: by the turn of the way to it.
            var (x, y) = (pith.X - line.At.X, pith.Y - line.At.Y);
            var far2 = Math.Max(1, (x * x) + (y * y));
            var cosine = ((line.Nx * x) + (line.Ny * y)) / Math.Sqrt(far2);
            var (gx, gy) = (-cosine * y / far2, cosine * x / far2);
            (xx, xy, yy) = (xx + (w * gx * gx), xy + (w * gx * gy), yy + (w * gy * gy));
            (xr, yr) = (xr + (w * gx * sine), yr + (w * gy * sine));
            (square, weight) = (square + (w * sine * sine), weight + w);
        }
        return ((xx, xy, yy), (xr, yr), square, weight);
    }
}
