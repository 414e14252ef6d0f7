using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Rectification;

/// <summary>The section drawn flat in mm at an even scale, with a margin around it. One byte a channel, row by row.</summary>
internal sealed class RectifiedSection
{
    /// <summary>Where the photograph has more pixels a pixel of the drawing than this, four samples keep out what a single one would alias. Our own choice.</summary>
    private const double FinePxPerPx = 1.5;

    private RectifiedSection(int width, int height, double pxPerMm, double marginMm)
    {
        (Width, Height, PxPerMm, MarginMm) = (width, height, pxPerMm, marginMm);
        Rgb = new byte[3 * width * height];
    }

    public int Width { get; }

    public int Height { get; }

    public double PxPerMm { get; }

    public double MarginMm { get; }

    /// <summary>Red, green, blue of each pixel.</summary>
    public byte[] Rgb { get; }

    /// <summary>The middle of a pixel, mm.</summary>
    public PointMm Middle(int x, int y) => new(((x + 0.5) / PxPerMm) - MarginMm, ((y + 0.5) / PxPerMm) - MarginMm);

    /// <summary>Fractional pixel index of a place; whole numbers are pixel middles.</summary>
    public (double X, double Y) Index(PointMm p) =>
        (((p.X + MarginMm) * PxPerMm) - 0.5, ((p.Y + MarginMm) * PxPerMm) - 0.5);

    /// <summary>Draws the section from the photograph.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="section">From mm on the section to upright full-size pixels.</param>
    /// <param name="plan">The section's size.</param>
    /// <param name="pxPerMm">Scale of the drawing.</param>
    /// <param name="marginMm">Margin drawn around the section.</param>
    public static RectifiedSection From(
        Photograph photo,
        SectionMap section,
        SectionPlan plan,
        double pxPerMm,
        double marginMm
    )
    {
        var width = (int)Math.Ceiling((plan.WidthMm + (2 * marginMm)) * pxPerMm);
        var height = (int)Math.Ceiling((plan.HeightMm + (2 * marginMm)) * pxPerMm);
        var drawn = new RectifiedSection(width, height, pxPerMm, marginMm);
        // Pixel index → mm → upright pixel → stored pixel, in one map.
        var toMm = new Homography(
            1 / pxPerMm,
            0,
            (0.5 / pxPerMm) - marginMm,
            0,
            1 / pxPerMm,
            (0.5 / pxPerMm) - marginMm,
            0,
            0,
            1
        );
        var map = photo.UprightToStored.After(section.Flat).After(toMm);
        var stored = new StoredPixels(photo.Pixels, photo.StoredWidthPx, photo.StoredHeightPx, photo.StoredStride);
        var fine = map.ScaleAt(width / 2.0, height / 2.0) > FinePxPerPx;
        var bent = section.Lens is null ? null : new BentRow(section, toMm, photo.UprightToStored);
        for (var y = 0; y < height; y++)
        {
            var row = drawn.Rgb.AsSpan(3 * y * width, 3 * width);
            if (bent is not null)
                bent.Draw(stored, y, fine, row);
            else if (fine)
                RectifyRow.DrawFine(stored, map, y, row);
            else
                RectifyRow.Draw(stored, map, y, row);
        }
        return drawn;
    }
}
