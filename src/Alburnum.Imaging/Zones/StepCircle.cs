using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Rings;

namespace Alburnum.Imaging.Zones;

/// <summary>The circle about the pith inside which bare wood differs most from the wood outside it, towards heartwood.</summary>
/// <param name="Circle">The circle.</param>
/// <param name="Gain">Squared standard deviations of colour that the step explains, summed over the cells.</param>
/// <param name="RadiusUncertaintyMm">Its standard uncertainty from neighbouring radii that explain nearly as much: a step is drawn to the nearest growth ring.</param>
internal readonly record struct StepCircle(Circle Circle, double Gain, double RadiusUncertaintyMm)
{
    // All figures are our own choice, except where a source is named.

    /// <summary>A radius that explains this share of the most is as good.</summary>
    private const double AsGood = 0.92;

    /// <summary>Fewer cells than this on either side show no step.</summary>
    private const int LeastCells = 25;

    /// <summary>Width of a rectangular distribution in its standard deviations: √12 (JCGM 100:2008, 4.3.7).</summary>
    private static readonly double RectangularWidth = Math.Sqrt(12);

    /// <summary>How far from the rings' pith the circle's middle is looked for, in standard uncertainties.</summary>
    private static readonly double[] Aside = [-1.5, -0.75, 0, 0.75, 1.5];

    /// <summary>The circle, where there is wood on both sides of one and the step is towards heartwood.</summary>
    public static Outcome<StepCircle, HeartwoodFault> Find(BareContrast contrast, Pith pith)
    {
        // Along the two axes of the pith's uncertainty.
        var angle = 0.5 * Math.Atan2(2 * pith.Xy, pith.Xx - pith.Yy);
        var (sin, cos) = Math.SinCos(angle);
        var (first, second) = (pith.Along(cos, sin), pith.Along(-sin, cos));
        StepCircle? best = null;
        foreach (var p in Aside)
        foreach (var q in Aside)
        {
            var centre = new PointMm(
                pith.At.X + (p * first * cos) - (q * second * sin),
                pith.At.Y + (p * first * sin) + (q * second * cos)
            );
            if (About(contrast, centre) is { } found && !(found.Gain <= best?.Gain))
                best = found;
        }
        return best is { } circle ? circle : HeartwoodFault.OneColour;
    }

    /// <summary>The best circle about one centre; null where none shows a step towards heartwood.</summary>
    private static StepCircle? About(BareContrast contrast, PointMm centre)
    {
        var (wood, n) = (contrast.Wood, contrast.Wood.At.Count);
        var radius = new double[n];
        for (var i = 0; i < n; i++)
            radius[i] = double.Hypot(wood.At[i].X - centre.X, wood.At[i].Y - centre.Y);
        var (low, high) = (radius.Min(), radius.Max());
        var bins = (int)((high - low) / wood.CellMm) + 1;
        var width = BareContrast.Terms + BareContrast.Channels;
        var sums = new double[bins * width];
        for (var i = 0; i < n; i++)
        {
            var o = Math.Min(bins - 1, (int)((radius[i] - low) / wood.CellMm)) * width;
            var basis = contrast.Basis(i);
            for (var k = 0; k < BareContrast.Terms; k++)
                sums[o + k] += basis[k];
            for (var c = 0; c < BareContrast.Channels; c++)
                sums[o + BareContrast.Terms + c] += contrast.Off[c][i];
        }
        var gains = new double[bins];
        var inside = new double[width];
        for (var b = 0; b < bins - 1; b++)
        {
            for (var k = 0; k < width; k++)
                inside[k] += sums[(b * width) + k];
            if (inside[0] < LeastCells || n - inside[0] < LeastCells)
                continue;
            var freedom = contrast.Freedom(inside.AsSpan(0, BareContrast.Terms));
            for (var c = 0; c < BareContrast.Channels; c++)
                gains[b] += Math.Max(0, inside[BareContrast.Terms + c]) * inside[BareContrast.Terms + c] / freedom;
        }
        var at = Array.IndexOf(gains, gains.Max());
        if (!(gains[at] > 0))
            return null;
        var (from, to) = (at, at);
        while (from > 0 && gains[from - 1] > AsGood * gains[at])
            from--;
        while (to < bins - 1 && gains[to + 1] > AsGood * gains[at])
            to++;
        return new(
            new(centre.X, centre.Y, low + ((at + 1) * wood.CellMm)),
            gains[at],
            (to - from + 1) * wood.CellMm / RectangularWidth
        );
    }
}
