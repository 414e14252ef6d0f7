using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rings;

namespace Alburnum.Imaging.Zones;

/// <summary>The circle about the pith inside which bare wood is darkest and reddest against the wood outside it.</summary>
internal static class StepCircle
{
    /// <summary>Fewer cells than this on either side show no step.</summary>
    private const int LeastCells = 25;

    /// <summary>How far from the rings' pith the circle's middle is looked for, in standard uncertainties.</summary>
    private static readonly double[] Aside = [-1.5, -0.75, 0, 0.75, 1.5];

    /// <summary>The circle, and how much of the contrast it explains; null where there is no wood on both sides.</summary>
    public static (Circle Circle, double Gain)? Find(BareContrast contrast, Pith pith)
    {
        // Along the two axes of the pith's uncertainty.
        var angle = 0.5 * Math.Atan2(2 * pith.Xy, pith.Xx - pith.Yy);
        var (sin, cos) = Math.SinCos(angle);
        var (first, second) = (pith.Along(cos, sin), pith.Along(-sin, cos));
        (Circle Circle, double Gain)? best = null;
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
        return best;
    }

    private static (Circle Circle, double Gain)? About(BareContrast contrast, PointMm centre)
    {
        var (wood, n) = (contrast.Wood, contrast.Wood.At.Count);
        const int Terms = 6;
        var radius = new double[n];
        for (var i = 0; i < n; i++)
            radius[i] = double.Hypot(wood.At[i].X - centre.X, wood.At[i].Y - centre.Y);
        var (low, high) = (radius.Min(), radius.Max());
        var bins = (int)((high - low) / wood.CellMm) + 1;
        var width = Terms + BareContrast.Channels;
        var sums = new double[bins * width];
        for (var i = 0; i < n; i++)
        {
            var o = Math.Min(bins - 1, (int)((radius[i] - low) / wood.CellMm)) * width;
            var basis = contrast.Basis(i);
            for (var k = 0; k < Terms; k++)
                sums[o + k] += basis[k];
            for (var c = 0; c < BareContrast.Channels; c++)
                sums[o + Terms + c] += contrast.Off[c][i];
        }
        (Circle, double)? best = null;
        var most = 0.0;
        var inside = new double[width];
        for (var b = 0; b < bins - 1; b++)
        {
            for (var k = 0; k < width; k++)
                inside[k] += sums[(b * width) + k];
            if (inside[0] < LeastCells || n - inside[0] < LeastCells)
                continue;
            var freedom = contrast.Freedom(inside.AsSpan(0, Terms));
            var gain = 0.0;
            for (var c = 0; c < BareContrast.Channels; c++)
                gain += Math.Max(0, inside[Terms + c]) * inside[Terms + c] / freedom;
            if (gain <= most)
                continue;
            most = gain;
            best = (new(centre.X, centre.Y, low + ((b + 1) * wood.CellMm)), gain);
        }
        return best;
    }
}
