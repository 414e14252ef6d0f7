using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Rings;

/// <summary>A patch of end grain whose growth rings lie one way.</summary>
/// <param name="At">Its middle.</param>
/// <param name="Nx">Unit vector across the rings: towards the pith or away from it.</param>
/// <param name="Ny">The same.</param>
/// <param name="Weight">How plainly they lie that way, 0 to 1.</param>
internal readonly record struct RingLine(PointMm At, double Nx, double Ny, double Weight);

/// <summary>Directions of growth rings all over a section, by the structure tensor of its brightness.</summary>
/// <remarks>J. Bigün and G. H. Granlund, Optimal orientation detection of linear symmetry (ICCV 1987). From memory.</remarks>
internal static class RingLines
{
    // All figures are our own choice.

    /// <summary>Side of a patch: two rings or more of usual wood, mm, and no fewer than so many pixels.</summary>
    private const double PatchMm = 6;

    private const int LeastPatchPx = 6;

    /// <summary>A patch is taken or left out in this many parts a side, of no fewer than so many pixels; half of it at least must show wood.</summary>
    private const int PartsPerSide = 4;

    private const int LeastPartPx = 2;

    /// <summary>Pixels per mm that show rings; finer is averaged.</summary>
    private const double UsefulPxPerMm = 4;

    /// <summary>Change of ln(light) per pixel that counts half: a crack weighs little more than a ring.</summary>
    private const float Plain = 0.12f;

    /// <summary>All patches.</summary>
    /// <param name="drawn">The section drawn flat.</param>
    /// <param name="isWood">False where something else than rings changes the brightness: outline, front.</param>
    public static IReadOnlyList<RingLine> Of(RectifiedSection drawn, Func<PointMm, bool> isWood)
    {
        var by = Math.Max(1, (int)Math.Round(drawn.PxPerMm / UsefulPxPerMm));
        var (light, width, height) = Light(drawn, by);
        var pxPerMm = drawn.PxPerMm / by;
        var side = Math.Max(LeastPatchPx, (int)(PatchMm * pxPerMm));
        var cell = Math.Max(LeastPartPx, side / PartsPerSide);
        var lines = new List<RingLine>();
        for (var top = 1; top + side < height; top += side)
        for (var left = 1; left + side < width; left += side)
        {
            float xx = 0,
                xy = 0,
                yy = 0;
            var (used, cells) = (0, 0);
            for (var y = top; y < top + side; y += cell)
            for (var x = left; x < left + side; x += cell)
            {
                cells++;
                if (!isWood(Place(x + (cell / 2.0), y + (cell / 2.0))))
                    continue;
                used++;
                Gather(light, width, x, y, Math.Min(cell, left + side - x), Math.Min(cell, top + side - y));
            }
            if (2 * used < cells)
                continue;
            var spread = MathF.Sqrt(((xx - yy) * (xx - yy)) + (4 * xy * xy));
            if (!(xx + yy > 0))
                continue;
            var angle = 0.5 * Math.Atan2(2 * xy, xx - yy);
            var coherence = spread / (xx + yy);
            lines.Add(
                new(
                    Place(left + (side / 2.0), top + (side / 2.0)),
                    Math.Cos(angle),
                    Math.Sin(angle),
                    coherence * used / cells
                )
            );

            void Gather(float[] l, int stride, int x0, int y0, int w, int h)
            {
                for (var j = y0; j < y0 + h; j++)
                for (var i = (j * stride) + x0; i < (j * stride) + x0 + w; i++)
                {
                    var (gx, gy) = (l[i + 1] - l[i - 1], l[i + stride] - l[i - stride]);
                    var weight = 1 / ((gx * gx) + (gy * gy) + (Plain * Plain));
                    (xx, xy, yy) = (xx + (weight * gx * gx), xy + (weight * gx * gy), yy + (weight * gy * gy));
                }
            }
        }
        return lines;

        PointMm Place(double x, double y) => new((x / pxPerMm) - drawn.MarginMm, (y / pxPerMm) - drawn.MarginMm);
    }

    // ln(light), averaged over squares of pixels.
    private static (float[] Light, int Width, int Height) Light(RectifiedSection drawn, int by)
    {
        var (width, height) = (drawn.Width / by, drawn.Height / by);
        var light = new float[width * height];
        var per = 1f / (by * by);
        var ln = LogColour.LnLinear;
        for (var y = 0; y < height * by; y++)
        {
            var row = drawn.Rgb.AsSpan(3 * y * drawn.Width, 3 * width * by);
            var into = light.AsSpan(y / by * width, width);
            // Green is the sharpest channel and stands for the light.
            for (int x = 0, p = 1; x < into.Length; x++)
            for (var k = 0; k < by; k++, p += 3)
                into[x] += per * ln[row[p]];
        }
        return (light, width, height);
    }
}
