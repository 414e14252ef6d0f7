using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Judging;

/// <summary>How blurred the photograph is, from the section's own outline: the one edge in it that is known to be sharp.</summary>
internal static class EdgeBlur
{
    private const int Stations = 160;
    private const double ReachMm = 2.5;
    private const double LeastContrast = 25;

    /// <summary>Standard deviation of the blur, mm, where the outline is sharpest; null where too little of it stands out.</summary>
    /// <remarks>A step of height h blurred by a bell of standard deviation σ has slope h ⁄ (σ·√(2π)) at its middle.</remarks>
    public static double? StandardDeviationMm(Photograph photo, SectionMap map, SectionPlan plan, double pxPerMm)
    {
        var toStored = photo.UprightToStored;
        var stored = new StoredPixels(photo.Pixels, photo.StoredWidthPx, photo.StoredHeightPx, photo.StoredStride);
        // Two samples a stored pixel; the slope is taken over two pixels, so that noise does not pass for sharpness.
        var step = 0.5 / (pxPerMm * photo.StoredPerUpright);
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
                light[i] = (r + g + b) / 768.0;
            }
            if (Width(light, step) is { } width)
                widths.Add(width);
        }
        if (widths.Count < Stations / 8)
            return null;
        widths.Sort();
        return widths[widths.Count / 4] / Math.Sqrt(2 * Math.PI);
    }

    private static double? Width(double[] light, double stepMm)
    {
        const int Over = 4;
        double steepest = 0;
        var at = 0;
        for (var i = 0; i + Over < light.Length; i++)
        {
            var slope = Math.Abs(light[i + Over] - light[i]) / (Over * stepMm);
            if (slope > steepest)
                (steepest, at) = (slope, i + (Over / 2));
        }
        // Levels a millimetre and a half to either side of the edge.
        var off = (int)(1.5 / stepMm);
        if (at - off < 0 || at + off >= light.Length || steepest <= 0)
            return null;
        var height = Math.Abs(light[at + off] - light[at - off]);
        return height < LeastContrast ? null : height / steepest;
    }
}
