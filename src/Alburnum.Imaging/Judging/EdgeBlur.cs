using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Judging;

/// <summary>How blurred the photograph is, from the section's own outline: the one edge in it that is known to be sharp.</summary>
internal static class EdgeBlur
{
    // All figures are our own choice.

    /// <summary>Places along the outline that are looked at, and how far to either side of it, mm.</summary>
    private const int Stations = 160;

    private const double ReachMm = 2.5;

    /// <summary>Difference of light across the outline, 0 to 255, below which it does not stand out.</summary>
    private const double LeastContrast = 25;

    /// <summary>The outline must stand out at one in so many of the places.</summary>
    private const int LeastPart = 8;

    /// <summary>The blur is that of the outline's sharper part: not the sharpest place, which noise makes, but the place one in so many of the way up.</summary>
    private const int SharperPart = 4;

    /// <summary>Samples a stored pixel, and samples over which a slope is taken: two pixels, so that noise does not pass for sharpness.</summary>
    private const double SamplesPerPx = 2;

    private const int SlopeSamples = 4;

    /// <summary>Distance to either side of the edge where the light is taken to be level, mm.</summary>
    private const double LevelMm = 1.5;

    /// <summary>Standard deviation of the blur, mm, where the outline is sharpest; null where too little of it stands out, which says nothing of the blur.</summary>
    /// <remarks>A step of height h blurred by a bell of standard deviation σ has slope h ⁄ (σ·√(2π)) at its middle.</remarks>
    public static double? StandardDeviationMm(Photograph photo, SectionMap map, SectionPlan plan, double pxPerMm)
    {
        var toStored = photo.UprightToStored;
        var stored = new StoredPixels(photo.Pixels, photo.StoredWidthPx, photo.StoredHeightPx, photo.StoredStride);
        var step = 1 / SamplesPerPx / (pxPerMm * photo.StoredPerUpright);
        var count = (int)(2 * ReachMm / step);
        var perimeter = plan.Faces.Sum(face => face.LengthMm);
        var widths = new List<double>();
        var light = new double[count];
        for (var n = 0; n < Stations; n++)
        {
            var s = (n + 0.5) * perimeter / Stations;
            var k = 0;
            while (k < plan.Faces.Count - 1 && s > plan.Faces[k].LengthMm)
                s -= plan.Faces[k++].LengthMm;
            for (var i = 0; i < count; i++)
            {
                var place = plan.Faces[k].At(s, (i * step) - ReachMm);
                var (r, g, b) = RectifyRow.Sample(stored, toStored.Map(map.ToPx(place)));
                light[i] = (r + g + b) / (3.0 * RectifyRow.Whole);
            }
            if (Width(light, step) is { } width)
                widths.Add(width);
        }
        if (widths.Count < Stations / LeastPart)
            return null;
        widths.Sort();
        return widths[widths.Count / SharperPart] / Math.Sqrt(2 * Math.PI);
    }

    /// <summary>Height of the edge over its steepest slope, mm; null where it does not stand out.</summary>
    private static double? Width(double[] light, double stepMm)
    {
        double steepest = 0;
        var at = 0;
        for (var i = 0; i + SlopeSamples < light.Length; i++)
        {
            var slope = Math.Abs(light[i + SlopeSamples] - light[i]) / (SlopeSamples * stepMm);
            if (slope > steepest)
                (steepest, at) = (slope, i + (SlopeSamples / 2));
        }
        var off = (int)(LevelMm / stepMm);
        if (at - off < 0 || at + off >= light.Length || steepest <= 0)
            return null;
        var height = Math.Abs(light[at + off] - light[at - off]);
        return height < LeastContrast ? null : height / steepest;
    }
}
