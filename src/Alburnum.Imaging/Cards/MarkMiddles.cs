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

    /// <summary>A mark's middle is no farther from the first look than this, stored pixels. Our own choice.</summary>
    private const double WanderPx = 3;

    /// <summary>Levels of ink and of paper: these shares of the pixels are darker. Our own choice.</summary>
    private const double InkShare = 0.1;

    private const double PaperShare = 0.85;

    /// <summary>Less ink than this share of the way from paper to full ink is noise. Our own choice.</summary>
    private const double LeastInk = 0.2;

    private const double HalfInk = 0.5;

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
        var apart = 0.0;
        foreach (var (at, mm) in rough.Zip(ScaleCard.Marks))
        {
            if (Middle(photo, at, LookMm * map.ScaleAt(mm.X, mm.Y)) is not var (middle, byFullInk))
                return null;
            marks.Add(middle);
            apart = Math.Max(apart, middle.DistanceTo(byFullInk));
        }
        return new(marks, double.Hypot(apart, double.Hypot(StoredPx / photo.StoredPerUpright, PlaceMm * scale)));
    }

    // Weighed by ink, and by its darker half alone: where a shadow or a stain lies over a mark, the two differ.
    private static (PointPx ByInk, PointPx ByFullInk)? Middle(Photograph photo, PointPx rough, double radiusPx)
    {
        var toStored = photo.UprightToStored;
        var at = toStored.Map(rough);
        var radius = radiusPx * photo.StoredPerUpright;
        var around = Around(photo, at, radius + WanderPx);
        if (Levels(around) is not { } levels)
            return null;
        for (var k = 0; k < Looks; k++)
        {
            if (Gravity(around, at, radius, levels, LeastInk) is not { } nearer)
                return null;
            at = nearer;
        }
        if (Gravity(around, at, radius, levels, HalfInk) is not { } byFullInk)
            return null;
        var toUpright = toStored.Inverse();
        return (toUpright.Map(at), toUpright.Map(byFullInk));
    }

    private static PointPx? Gravity(
        List<(double X, double Y, byte Light)> around,
        PointPx at,
        double radius,
        (int Ink, int Paper) levels,
        double leastInk
    )
    {
        double x = 0,
            y = 0,
            all = 0;
        foreach (var (px, py, light) in around)
        {
            var (dx, dy) = (px - at.X, py - at.Y);
            var ink = Math.Min(1, (levels.Paper - light) / (double)(levels.Paper - levels.Ink));
            if (ink < leastInk || (dx * dx) + (dy * dy) > radius * radius)
                continue;
            (x, y, all) = (x + (ink * px), y + (ink * py), all + ink);
        }
        return all > 0 ? new(x / all, y / all) : null;
    }

    private static (int Ink, int Paper)? Levels(List<(double X, double Y, byte Light)> around)
    {
        var counts = new int[byte.MaxValue + 1];
        foreach (var each in around)
            counts[each.Light]++;
        var (ink, paper) = (Level(InkShare), Level(PaperShare));
        return paper - ink >= LeastContrast ? (ink, paper) : null;

        int Level(double share)
        {
            var below = 0;
            var level = 0;
            while (level < byte.MaxValue && (below += counts[level]) < share * around.Count)
                level++;
            return level;
        }
    }

    // The green of every stored pixel within a circle, with the pixel's middle.
    private static List<(double X, double Y, byte Light)> Around(Photograph photo, PointPx at, double radius)
    {
        var (left, right) = Range(at.X, photo.StoredWidthPx);
        var (top, bottom) = Range(at.Y, photo.StoredHeightPx);
        var pixels = photo.Pixels;
        var around = new List<(double, double, byte)>();
        for (var y = top; y <= bottom; y++)
        {
            for (var x = left; x <= right; x++)
            {
                var (dx, dy) = (x + 0.5 - at.X, y + 0.5 - at.Y);
                if ((dx * dx) + (dy * dy) <= radius * radius)
                    around.Add((x + 0.5, y + 0.5, pixels[(y * photo.StoredStride) + (4 * x) + 1]));
            }
        }
        return around;

        (int, int) Range(double middle, int size) =>
            ((int)Math.Max(0, middle - radius), (int)Math.Min(size - 1, middle + radius));
    }
}
