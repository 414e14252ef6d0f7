using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Front;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Zones;

/// <summary>Colours of the wood that no preservative has reached, on an even lattice, the light evened.</summary>
/// <param name="CellMm">Side of a cell.</param>
/// <param name="At">Middle of each cell.</param>
/// <param name="Colour">Mean colour of each.</param>
internal sealed record BareWood(double CellMm, IReadOnlyList<PointMm> At, IReadOnlyList<LogColour> Colour)
{
    /// <summary>Nearer to outline or front than this, colours are mixed, mm. Our own choice.</summary>
    private const double ClearMm = 1.5;

    /// <summary>About so many cells over the whole section, of a side within these bounds, mm. Our own choice.</summary>
    private const double Cells = 2500;

    private static readonly (double Least, double Most) SideMm = (0.8, 3);

    public static BareWood Of(
        RectifiedSection drawn,
        SectionPlan plan,
        IReadOnlyList<FaceFront> fronts,
        Illumination light
    )
    {
        var cell = Math.Clamp(Math.Sqrt(plan.WidthMm * plan.HeightMm / Cells), SideMm.Least, SideMm.Most);
        var places = new List<PointMm>();
        var colours = new List<LogColour>();
        for (var y = cell / 2; y < plan.HeightMm; y += cell)
        for (var x = cell / 2; x < plan.WidthMm; x += cell)
        {
            var place = new PointMm(x, y);
            if (plan.InwardMm(place) < ClearMm || IsNearTreated(place, fronts))
                continue;
            var colour = Mean(drawn, place, cell / 2);
            places.Add(place);
            var even = light.At((float)((2 * x / plan.WidthMm) - 1), (float)((2 * y / plan.HeightMm) - 1));
            colours.Add(colour with { L = colour.L - even });
        }
        return new(cell, places, colours);
    }

    /// <summary>Treated, or so near to it that its colour reaches there.</summary>
    public static bool IsNearTreated(PointMm place, IReadOnlyList<FaceFront> fronts)
    {
        foreach (var front in fronts)
            if (front.Covers(place, ClearMm))
                return true;
        return false;
    }

    private static LogColour Mean(RectifiedSection drawn, PointMm place, double halfMm)
    {
        var (fx, fy) = drawn.Index(place);
        var half = halfMm * drawn.PxPerMm;
        var (left, right) = (Math.Max(0, (int)(fx - half)), Math.Min(drawn.Width - 1, (int)(fx + half)));
        var (top, bottom) = (Math.Max(0, (int)(fy - half)), Math.Min(drawn.Height - 1, (int)(fy + half)));
        float r = 0,
            g = 0,
            b = 0;
        for (var y = top; y <= bottom; y++)
        for (var p = 3 * ((y * drawn.Width) + left); p <= 3 * ((y * drawn.Width) + right); p += 3)
        {
            r += LogColour.LnLinear[drawn.Rgb[p]];
            g += LogColour.LnLinear[drawn.Rgb[p + 1]];
            b += LogColour.LnLinear[drawn.Rgb[p + 2]];
        }
        float area = (right - left + 1) * (bottom - top + 1);
        return new((r + g + b) / (3 * area), (r - g) / area, (b - g) / area);
    }
}
