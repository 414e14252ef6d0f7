using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Finds the section in the photograph by itself.</summary>
internal static class OutlineFinder
{
    private const int LinesPerSide = 4;

    /// <summary>Finds a sawn section of known proportions; null where nothing stands out.</summary>
    public static FoundOutline? Sides(Photograph photo, double widthMm, double heightMm)
    {
        var picture = SmallPicture.Of(photo, 320);
        var ground = new Foreground(picture);
        var hull = ConvexHull.Of(Points(ground.Patch(), picture.Width));
        if (hull.Count < 4)
            return null;
        var box = ConvexHull.LeastBox(hull);
        var corners = box.Select(p => new PointPx(p.X * picture.UprightPerPx, p.Y * picture.UprightPerPx)).ToList();
        var (across, down) = (Distance(corners[0], corners[1]), Distance(corners[1], corners[2]));
        var size = Math.Min(across, down);
        if (size < 20)
            return null;
        if (across > down != widthMm > heightMm)
            (widthMm, heightMm) = (heightMm, widthMm);
        // Several lines stand out along each side: the edge itself, the piece's far edge, the treated zone, a shadow.
        var lines = Enumerable
            .Range(0, 4)
            .Select(k => SideLine.Near(photo, corners[k], corners[(k + 1) % 4], 0.12 * size, LinesPerSide))
            .ToArray();
        var chosen = Choose(lines, ground, picture, photo, widthMm, heightMm);
        var settled = OutlineSnap.Sides(photo, chosen.Corners, 0.008 * size);
        var misfit = RectangleView.Misfit(settled.Points, widthMm, heightMm, photo.WidthPx, photo.HeightPx);
        return settled with { Confidence = chosen.Belief * Math.Exp(-Math.Max(0, misfit - 2) / 4) };
    }

    // The four lines, one a side, that look most like the outline of such a piece.
    private static (PointPx[] Corners, double Belief) Choose(
        IReadOnlyList<SideLine>[] lines,
        Foreground ground,
        SmallPicture picture,
        Photograph photo,
        double widthMm,
        double heightMm
    )
    {
        var scored = new List<(PointPx[] Corners, double Score)>();
        foreach (var a in lines[0])
        {
            foreach (var b in lines[1])
            {
                foreach (var c in lines[2])
                {
                    foreach (var d in lines[3])
                    {
                        var corners = SideLine.Corners([a, b, c, d]);
                        var misfit = RectangleView.Misfit(corners, widthMm, heightMm, photo.WidthPx, photo.HeightPx);
                        var support = a.Support + b.Support + c.Support + d.Support;
                        var apart = ground.Apart(corners, picture.UprightPerPx);
                        scored.Add((corners, (6 * support) + (8 * apart) - Math.Min(40, misfit)));
                    }
                }
            }
        }
        var best = scored.MaxBy(s => s.Score);
        // Belief among all that differ from the best by more than a hundredth of the size.
        var size = Distance(best.Corners[0], best.Corners[2]);
        double rivals = 0;
        foreach (var (corners, score) in scored)
        {
            var off = corners.Zip(best.Corners, Distance).Max();
            if (off > 0.008 * size)
                rivals = Math.Max(rivals, Math.Exp(score - best.Score));
        }
        return (best.Corners, 1 / (1 + rivals));
    }

    /// <summary>Finds a round section; null where nothing stands out.</summary>
    public static FoundOutline? Rim(Photograph photo)
    {
        var picture = SmallPicture.Of(photo, 320);
        var hull = ConvexHull.Of(Points(new Foreground(picture).Patch(), picture.Width));
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
