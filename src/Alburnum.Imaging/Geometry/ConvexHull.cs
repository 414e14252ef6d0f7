namespace Alburnum.Imaging.Geometry;

/// <summary>The least convex outline of some points, and the least box around it.</summary>
internal static class ConvexHull
{
    /// <summary>The hull, clockwise as displayed (Andrew's monotone chain, 1979).</summary>
    public static IReadOnlyList<PointPx> Of(IReadOnlyList<PointPx> points)
    {
        var sorted = points.OrderBy(p => p.X).ThenBy(p => p.Y).ToList();
        if (sorted.Count < 3)
            return sorted;
        var hull = new List<PointPx>();
        foreach (var way in (IEnumerable<PointPx>[])[sorted, sorted.AsEnumerable().Reverse()])
        {
            var start = hull.Count;
            foreach (var p in way)
            {
                while (hull.Count >= start + 2 && Turn(hull[^2], hull[^1], p) <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }
            hull.RemoveAt(hull.Count - 1);
        }
        return hull;
    }

    /// <summary>The box of least area around a hull: four corners, clockwise as displayed, the first nearest the top left.</summary>
    public static IReadOnlyList<PointPx> LeastBox(IReadOnlyList<PointPx> hull)
    {
        var least = double.MaxValue;
        PointPx[] best = [];
        for (var i = 0; i < hull.Count; i++)
        {
            var (a, b) = (hull[i], hull[(i + 1) % hull.Count]);
            var length = double.Hypot(b.X - a.X, b.Y - a.Y);
            if (length < 1e-9)
                continue;
            var (dx, dy) = ((b.X - a.X) / length, (b.Y - a.Y) / length);
            double u0 = double.MaxValue,
                u1 = double.MinValue,
                v0 = double.MaxValue,
                v1 = double.MinValue;
            foreach (var p in hull)
            {
                var (u, v) = ((p.X * dx) + (p.Y * dy), (p.Y * dx) - (p.X * dy));
                (u0, u1, v0, v1) = (Math.Min(u0, u), Math.Max(u1, u), Math.Min(v0, v), Math.Max(v1, v));
            }
            if ((u1 - u0) * (v1 - v0) >= least)
                continue;
            least = (u1 - u0) * (v1 - v0);
            PointPx Place(double u, double v) => new((u * dx) - (v * dy), (u * dy) + (v * dx));
            best = [Place(u0, v0), Place(u1, v0), Place(u1, v1), Place(u0, v1)];
        }
        if (best.Length == 0)
            return best;
        var first = Array.IndexOf(best, best.MinBy(p => p.X + p.Y));
        return [.. best.Skip(first), .. best.Take(first)];
    }

    private static double Turn(PointPx a, PointPx b, PointPx c) =>
        ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
}
