using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Rings;

/// <summary>Where the pith lies, with the covariance of its place, mm².</summary>
internal readonly record struct Pith(PointMm At, double Xx, double Xy, double Yy)
{
    /// <summary>Standard uncertainty along a direction, mm.</summary>
    public double Along(double dx, double dy) => Math.Sqrt((Xx * dx * dx) + (2 * Xy * dx * dy) + (Yy * dy * dy));
}

/// <summary>Finds the pith as the place that most growth rings turn about.</summary>
/// <remarks>Its figures are our own choice.</remarks>
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

    /// <summary>With a pith farther than this many sizes of the section away, rings are as good as parallel lines.</summary>
    private const double MostSizesAway = 6;

    /// <summary>To begin with, one patch in so many is enough, taken in slanting rows.</summary>
    private const int BeginEvery = 3;

    /// <summary>Steps of the least squares. None goes farther than the section's size over this.</summary>
    private const int Turns = 12;

    private const double StepPart = 4;

    /// <summary>Places tried over the section and about it: so many each way, over so many sizes.</summary>
    private const int LatticeAcross = 20;

    private const double LatticeSizes = 2;

    /// <summary>Places tried farther out: first ring of them, in sizes, each next one so much larger, so many places a ring.</summary>
    private const double FirstRingSizes = 1.2;

    private const double RingRatio = 1.35;
    private const int RingPlaces = 36;

    /// <summary>Patches nearer to the pith than this say no direction, mm.</summary>
    private const double NearMm = 1;

    /// <summary>Along a bundle of parallel normals, where the rings say nothing, the pith is held by this share of what they say across it.</summary>
    private const double Hold = 1e-3;

    /// <summary>No step is shorter than this, mm.</summary>
    private const double LeastStepMm = 1e-9;

    /// <summary>Rings are never truer than this to their circle, as a sine.</summary>
    private const double LeastSpread = 0.02;

    /// <summary>Before any ring is seen, standard deviation of the pith's place in sizes of the section.</summary>
    private const double PriorSizes = 3;

    /// <summary>The pith, where enough rings are seen and turn about one place.</summary>
    public static Outcome<Pith, HeartwoodFault> Find(IReadOnlyList<RingLine> lines, SectionPlan plan)
    {
        var total = lines.Sum(line => line.Weight);
        if (total < LeastWeight)
            return HeartwoodFault.NoRings;
        var size = Math.Max(plan.WidthMm, plan.HeightMm);
        var few = lines.Where((_, k) => k % BeginEvery == k / BeginEvery % BeginEvery).ToArray();
        var at = Candidates(plan, size).MaxBy(p => Agreement(few, p));
        for (var turn = 0; turn < Turns; turn++)
            at = Step(lines, at, size / StepPart);
        var away = double.Hypot(at.X - (plan.WidthMm / 2), at.Y - (plan.HeightMm / 2));
        if (!(away < MostSizesAway * size) || Agreement(lines, at) < LeastAgreement * total)
            return HeartwoodFault.NoRings;
        var pith = WithCovariance(lines, at, size);
        return Math.Sqrt(pith.Xx + pith.Yy) < LeastKnown * size ? pith : HeartwoodFault.NoRings;
    }

    // A lattice over the section and about it, then rings of places ever farther out.
    private static IEnumerable<PointMm> Candidates(SectionPlan plan, double size)
    {
        for (var j = 0; j <= LatticeAcross; j++)
        for (var i = 0; i <= LatticeAcross; i++)
            yield return new(
                (plan.WidthMm / 2) + (size * LatticeSizes * (i - (LatticeAcross / 2.0)) / LatticeAcross),
                (plan.HeightMm / 2) + (size * LatticeSizes * (j - (LatticeAcross / 2.0)) / LatticeAcross)
            );
        for (var far = FirstRingSizes * size; far < MostSizesAway * size; far *= RingRatio)
        for (var k = 0; k < RingPlaces; k++)
        {
            var (sin, cos) = Math.SinCos(k * Math.PI / (RingPlaces / 2));
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
        return ((line.Nx * y) - (line.Ny * x)) / Math.Max(NearMm, double.Hypot(x, y));
    }

    // Least squares of the sines, reweighted; no farther than a bound at once.
    private static PointMm Step(IReadOnlyList<RingLine> lines, PointMm pith, double mostMm)
    {
        var ((xx, xy, yy), (xr, yr), _, _) = Normal(lines, pith);
        var hold = Hold * (xx + yy);
        (xx, yy) = (xx + hold, yy + hold);
        var determinant = (xx * yy) - (xy * xy);
        if (!(determinant > 0))
            return pith;
        var (dx, dy) = (((xr * yy) - (yr * xy)) / determinant, ((yr * xx) - (xr * xy)) / determinant);
        var shorten = Math.Min(1, mostMm / Math.Max(LeastStepMm, double.Hypot(dx, dy)));
        return new(pith.X - (shorten * dx), pith.Y - (shorten * dy));
    }

    private static Pith WithCovariance(IReadOnlyList<RingLine> lines, PointMm pith, double size)
    {
        var ((xx, xy, yy), _, square, weight) = Normal(lines, pith);
        var variance = Correlated * Math.Max(square / weight, LeastSpread * LeastSpread);
        var prior = variance / (PriorSizes * PriorSizes * size * size);
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
            var far2 = Math.Max(NearMm * NearMm, (x * x) + (y * y));
            var cosine = ((line.Nx * x) + (line.Ny * y)) / Math.Sqrt(far2);
            var (gx, gy) = (-cosine * y / far2, cosine * x / far2);
            (xx, xy, yy) = (xx + (w * gx * gx), xy + (w * gx * gy), yy + (w * gy * gy));
            (xr, yr) = (xr + (w * gx * sine), yr + (w * gy * sine));
            (square, weight) = (square + (w * sine * sine), weight + w);
        }
        return ((xx, xy, yy), (xr, yr), square, weight);
    }
}
