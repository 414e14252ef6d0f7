using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Finds the section in the photograph by itself.</summary>
internal static class OutlineFinder
{
    /// <summary>Finds a sawn section of known proportions; null where nothing stands out.</summary>
    public static FoundOutline? Sides(Photograph photo, double widthMm, double heightMm)
    {
        var picture = SmallPicture.Of(photo, 320);
        var patch = Foreground.Patch(picture);
        var hull = ConvexHull.Of(Points(patch, picture.Width));
        if (hull.Count < 4)
            return null;
        var box = ConvexHull.LeastBox(hull);
        var corners = box.Select(p => new PointPx(p.X * picture.UprightPerPx, p.Y * picture.UprightPerPx)).ToList();
        var size = Math.Min(Distance(corners[0], corners[1]), Distance(corners[1], corners[2]));
        var outline = OutlineSnap.Sides(photo, corners, 0.1 * size);
        outline = OutlineSnap.Sides(photo, outline.Points, 0.03 * size);
        var p = outline.Points;
        var across = (Distance(p[0], p[1]) + Distance(p[2], p[3])) / 2;
        var down = (Distance(p[1], p[2]) + Distance(p[3], p[0])) / 2;
        var ratio = Math.Max(across, down) / Math.Min(across, down);
        var nominal = Math.Max(widthMm, heightMm) / Math.Min(widthMm, heightMm);
        // A tilt of 25° shortens one side by a tenth.
        var off = Math.Abs(Math.Log(ratio / nominal));
        var likely = off < 0.12 ? 1 : Math.Max(0, 1 - ((off - 0.12) * 6));
        return outline with { Confidence = outline.Confidence * likely };
    }

    /// <summary>Finds a round section; null where nothing stands out.</summary>
    public static FoundOutline? Rim(Photograph photo)
    {
        var picture = SmallPicture.Of(photo, 320);
        var patch = Foreground.Patch(picture);
        var hull = ConvexHull.Of(Points(patch, picture.Width));
        if (hull.Count < 6)
            return null;
        var points = hull.Select(p => new PointPx(p.X * picture.UprightPerPx, p.Y * picture.UprightPerPx)).ToArray();
        var one = new double[points.Length];
        Array.Fill(one, 1);
        if (Ellipse.Fit(points, one) is not { } rough)
            return null;
        var outline = OutlineSnap.Rim(photo, rough, 0.1 * rough.Major);
        if (outline?.Rim is not { } rim)
            return null;
        var likely = rim.Minor / rim.Major > 0.85 ? 1 : 0.3;
        return outline with { Confidence = outline.Confidence * likely };
    }

    private static List<PointPx> Points(bool[] patch, int width)
    {
        var points = new List<PointPx>();
        for (var i = 0; i < patch.Length; i++)
            if (patch[i])
                points.Add(new((i % width) + 0.5, (i / width) + 0.5));
        return points;
    }

    private static double Distance(PointPx a, PointPx b) => double.Hypot(a.X - b.X, a.Y - b.Y);
}
