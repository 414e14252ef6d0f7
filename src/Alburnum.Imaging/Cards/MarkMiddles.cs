using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Cards;

/// <summary>Finds the middles of the card's marks to a fraction of a pixel, as centres of gravity of their ink.</summary>
internal static class MarkMiddles
{
    /// <summary>Radius about a mark that is looked at, mm: the ring and some paper. Our own choice.</summary>
    private const double LookMm = 6;

    /// <summary>Each look begins where the last one ended. Our own choice.</summary>
    private const int Looks = 3;

    /// <summary>Levels of ink and of paper: these shares of the pixels are darker. Our own choice.</summary>
    private const double InkShare = 0.1;

    private const double PaperShare = 0.85;

    /// <summary>Less ink than this share of the way from paper to full ink is noise. Our own choice.</summary>
    private const double LeastInk = 0.2;

    /// <summary>Paper and ink are at least so far apart, of 255. Our own choice.</summary>
    private const int LeastContrast = 30;

    /// <summary>Standard uncertainty of a mark's place: in stored pixels, and on the card, mm. Checked against drawn cards of known place.</summary>
    private const double StoredPx = 0.1;

    private const double PlaceMm = 0.02;

    /// <summary>The card with its marks' middles made fine; null where a mark is not plain ink on paper.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="rough">Middles to within a pixel or two, in the order of <see cref="ScaleCard.Marks"/>, upright pixels.</param>
    public static FoundCard? Refined(Photograph photo, IReadOnlyList<PointPx> rough)
    {
        var map = new FoundCard(rough, 0).Map(lens: null);
        var scale = map.ScaleAt(ScaleCard.WidthMm / 2, ScaleCard.HeightMm / 2);
        var marks = new List<PointPx>();
        foreach (var (at, mm) in rough.Zip(ScaleCard.Marks))
        {
            if (Middle(photo, at, LookMm * map.ScaleAt(mm.X, mm.Y)) is not { } middle)
                return null;
            marks.Add(middle);
        }
        return new(marks, double.Hypot(StoredPx / photo.StoredPerUpright, PlaceMm * scale));
    }

    private static PointPx? Middle(Photograph photo, PointPx rough, double radiusPx)
    {
        var toStored = photo.UprightToStored;
        var at = toStored.Map(rough);
        var radius = radiusPx * photo.StoredPerUpright;
        if (Levels(photo, at, radius) is not { } levels)
            return null;
        for (var k = 0; k < Looks; k++)
        {
            double x = 0,
                y = 0,
                all = 0;
            foreach (var (px, py, light) in Around(photo, at, radius))
            {
                var ink = Math.Min(1, (levels.Paper - light) / (double)(levels.Paper - levels.Ink));
                if (ink < LeastInk)
                    continue;
                (x, y, all) = (x + (ink * px), y + (ink * py), all + ink);
            }
            at = new(x / all, y / all);
        }
        return toStored.Inverse().Map(at);
    }

    private static (int Ink, int Paper)? Levels(Photograph photo, PointPx at, double radius)
    {
        var lights = Around(photo, at, radius).Select(each => each.Light).Order().ToList();
        if (lights.Count == 0)
            return null;
        var (ink, paper) = (lights[(int)(InkShare * lights.Count)], lights[(int)(PaperShare * lights.Count)]);
        return paper - ink >= LeastContrast ? (ink, paper) : null;
    }

    // The green of every stored pixel within a circle, with its middle.
    private static IEnumerable<(double X, double Y, byte Light)> Around(Photograph photo, PointPx at, double radius)
    {
        var (left, right) = Range(at.X, photo.StoredWidthPx);
        var (top, bottom) = Range(at.Y, photo.StoredHeightPx);
        for (var y = top; y <= bottom; y++)
        {
            for (var x = left; x <= right; x++)
            {
                var (px, py) = (x + 0.5, y + 0.5);
                if (double.Hypot(px - at.X, py - at.Y) <= radius)
                    yield return (px, py, photo.Pixels[(y * photo.StoredStride) + (4 * x) + 1]);
            }
        }

        (int, int) Range(double middle, int size) =>
            ((int)Math.Max(0, middle - radius), (int)Math.Min(size - 1, middle + radius));
    }
}
