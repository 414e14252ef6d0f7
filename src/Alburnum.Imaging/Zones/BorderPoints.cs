using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Zones;

/// <summary>Where the colour steps in one sector about the pith.</summary>
/// <param name="At">The place.</param>
/// <param name="Step">Height of the step, in standard deviations of the bare wood's colour; positive where the inside lies towards heartwood.</param>
/// <param name="InLight">The same in light alone.</param>
/// <param name="InHue">The same in hue alone.</param>
/// <param name="LengthMm">Length of the border in this sector.</param>
/// <param name="Sharpness">Share of the colour's change across the border that a step explains beyond an even slope; below 0 where a slope does as well.</param>
internal readonly record struct BorderPoint(
    PointMm At,
    double Step,
    double InLight,
    double InHue,
    double LengthMm,
    double Sharpness
);

/// <summary>Looks for the border sector by sector, each by itself.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class BorderPoints
{
    /// <summary>Length of the border in a sector, mm, and how few and how many sectors there may be.</summary>
    private const double SectorMm = 8;

    private static readonly (int Least, int Most) Sectors = (12, 240);

    /// <summary>Wood wanted in a sector, mm: so many cells, one behind another.</summary>
    private const double LeastWoodMm = 6;

    /// <summary>How far to both sides of the rough border colours are compared, mm.</summary>
    private const double BesideMm = 9;

    /// <summary>How far the border may stray from the rough circle, mm.</summary>
    private const double StrayMm = 5;

    /// <summary>Wood wanted on both sides of the border, mm.</summary>
    private const double LeastBesideMm = 3.5;

    public static IReadOnlyList<BorderPoint> Of(BareContrast contrast, Circle rough)
    {
        var count = Math.Clamp((int)(2 * Math.PI * rough.RadiusMm / SectorMm), Sectors.Least, Sectors.Most);
        var sectors = new List<(double Radius, int Cell)>?[count];
        var wood = contrast.Wood;
        for (var i = 0; i < wood.At.Count; i++)
        {
            var (x, y) = (wood.At[i].X - rough.X, wood.At[i].Y - rough.Y);
            var radius = double.Hypot(x, y);
            if (Math.Abs(radius - rough.RadiusMm) > BesideMm + StrayMm)
                continue;
            var turn = (Math.Atan2(y, x) / (2 * Math.PI)) + 1;
            var s = (int)(turn * count) % count;
            (sectors[s] ??= []).Add((radius, i));
        }
        var points = new List<BorderPoint>();
        for (var s = 0; s < count; s++)
        {
            if (sectors[s] is not { } cells)
                continue;
            var angle = 2 * Math.PI * (s + 0.5) / count;
            if (Step(contrast, cells, rough, angle, count) is { } point)
                points.Add(point);
        }
        return points;
    }

    /// <summary>The step in one sector; null where too little wood is in sight for one.</summary>
    private static BorderPoint? Step(
        BareContrast contrast,
        List<(double Radius, int Cell)> cells,
        Circle rough,
        double angle,
        int count
    )
    {
        cells.Sort();
        // Where the rough border itself is out of sight, a step nearby is another thing.
        if (cells[0].Radius > rough.RadiusMm - LeastBesideMm || cells[^1].Radius < rough.RadiusMm + LeastBesideMm)
            return null;
        var cell = contrast.Wood.CellMm;
        (double Gain, double Radius, double[] Step) best = (-1, 0, []);
        var all = new double[BareContrast.Channels];
        foreach (var (_, i) in cells)
            for (var c = 0; c < all.Length; c++)
                all[c] += contrast.Off[c][i];
        var inside = new double[BareContrast.Channels];
        for (var k = 0; k < cells.Count - 1; k++)
        {
            for (var c = 0; c < inside.Length; c++)
                inside[c] += contrast.Off[c][cells[k].Cell];
            var radius = (cells[k].Radius + cells[k + 1].Radius) / 2;
            if (
                Math.Abs(radius - rough.RadiusMm) > StrayMm
                || radius - cells[0].Radius < LeastBesideMm
                || cells[^1].Radius - radius < LeastBesideMm
            )
                continue;
            var (n, m) = (k + 1, cells.Count - k - 1);
            var step = new double[inside.Length];
            double gain = 0;
            for (var c = 0; c < step.Length; c++)
            {
                step[c] = (inside[c] / n) - ((all[c] - inside[c]) / m);
                gain += Math.Max(0, step[c]) * step[c] * n * m / (n + m);
            }
            if (gain > best.Gain)
                best = (gain, radius, step);
        }
        if (best.Gain < 0 || cells.Count < LeastWoodMm / cell)
            return null;
        var (sin, cos) = Math.SinCos(angle);
        return new(
            new(rough.X + (best.Radius * cos), rough.Y + (best.Radius * sin)),
            best.Step.Average(),
            best.Step[0],
            (best.Step[1] + best.Step[2]) / 2,
            2 * Math.PI * best.Radius / count,
            Sharpness(contrast, cells, best.Radius)
        );
    }

    // Misfit of a line through the colours over radius less that of a step, as a share of all that varies.
    private static double Sharpness(BareContrast contrast, List<(double Radius, int Cell)> cells, double radius)
    {
        double slope = 0,
            step = 0,
            total = 0;
        for (var c = 0; c < BareContrast.Channels; c++)
        {
            double n = cells.Count,
                r = 0,
                rr = 0,
                v = 0,
                vv = 0,
                rv = 0,
                inV = 0,
                inN = 0;
            foreach (var (at, i) in cells)
            {
                var x = at - radius;
                var y = contrast.Off[c][i];
                (r, rr, v, vv, rv) = (r + x, rr + (x * x), v + y, vv + (y * y), rv + (x * y));
                if (x < 0)
                    (inN, inV) = (inN + 1, inV + y);
            }
            var spread = rr - (r * r / n);
            var along = rv - (r * v / n);
            slope += spread > 0 ? along * along / spread : 0;
            var outN = n - inN;
            var apart = (inV / inN) - ((v - inV) / outN);
            step += apart * apart * inN * outN / n;
            total += vv - (v * v / n);
        }
        return total > 0 ? (step - slope) / total : 0;
    }
}
