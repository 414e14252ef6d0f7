using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Finds the section in the photograph by itself: roughly by its colours, then by its edges.</summary>
internal static class OutlineFinder
{
    /// <summary>Longer side of the picture that is searched, px.</summary>
    private const int SearchedPx = 320;

    private const int LinesPerSide = 5;

    /// <summary>Finds a sawn section of known proportions; null where nothing stands out.</summary>
    public static FoundOutline? Sides(Photograph photo, double widthMm, double heightMm)
    {
        var candidates = SideCandidates(photo, widthMm, heightMm);
        if (candidates.Count == 0)
            return null;
        var (best, belief) = Best(candidates, OutlineWeights.Sides);
        var shortest = Enumerable.Range(0, 4).Min(k => Distance(best[k], best[(k + 1) % 4]));
        return OutlineSnap.Sides(photo, best, 0.008 * shortest) with { Confidence = belief };
    }

    internal static List<(IReadOnlyList<PointPx> Points, OutlineLook Look)> SideCandidates(Photograph photo, double widthMm, double heightMm)
    {
        var (rough, surroundings) = Rough(photo, heightMm / widthMm, isRound: false);
        var points = rough.Points();
        var first = Array.IndexOf(points, points.MinBy(p => p.X + p.Y));
        PointPx[] corners = [.. points.Skip(first), .. points.Take(first)];
        if (first % 2 == 1)
            (widthMm, heightMm) = (heightMm, widthMm);
        var size = 2 * Math.Min(rough.HalfWidth, rough.HalfHeight);
        if (size < 20)
            return [];
        // Several lines stand out along each side: the edge itself, the piece's far edge, the treated zone, a shadow.
        var lines = Enumerable
            .Range(0, 4)
            .Select(k => SideLine.Near(photo, corners[k], corners[(k + 1) % 4], 0.14 * size, LinesPerSide))
            .ToArray();
        var candidates = new List<(IReadOnlyList<PointPx>, OutlineLook)>();
        foreach (var a in lines[0])
        foreach (var b in lines[1])
        foreach (var c in lines[2])
        foreach (var d in lines[3])
        {
            var outline = SideLine.Corners([a, b, c, d]);
            var misfit = RectangleView.Misfit(outline, widthMm, heightMm, photo.WidthPx, photo.HeightPx);
            if (misfit > MostMisfit)
                continue;
            candidates.Add(
                (
                    outline,
                    new(
                        (a.Support + b.Support + c.Support + d.Support) / 4,
                        Math.Min(Math.Min(a.Support, b.Support), Math.Min(c.Support, d.Support)),
                        surroundings.Along(Stations(outline)),
                        misfit,
                        Math.Log(Math.Max(1e-3, Area(outline) / (4 * rough.HalfWidth * rough.HalfHeight)))
                    )
                )
            );
        }
        return candidates;
    }

    private const double MostMisfit = 20;

    private static double Area(PointPx[] p)
    {
        double sum = 0;
        for (var i = 0; i < p.Length; i++)
        {
            var (a, b) = (p[i], p[(i + 1) % p.Length]);
            sum += (a.X * b.Y) - (b.X * a.Y);
        }
        return sum / 2;
    }

    // The likeliest, and how likely it is among all, those that hardly differ from it taken together.
    private static (IReadOnlyList<PointPx> Points, double Belief) Best(
        IReadOnlyList<(IReadOnlyList<PointPx> Points, OutlineLook Look)> candidates,
        OutlineWeights weights
    )
    {
        var scored = candidates.Select(c => (c.Points, Score: weights.Score(c.Look))).ToList();
        var best = scored.MaxBy(c => c.Score);
        var size = best.Points.Max(p => best.Points.Max(q => Distance(p, q)));
        double same = 0;
        var other = Math.Exp(weights.None - best.Score);
        foreach (var (points, score) in scored)
        {
            var share = Math.Exp(score - best.Score);
            if (points.Zip(best.Points, Distance).Max() < 0.008 * size)
                same += share;
            else
                other += share;
        }
        return (best.Points, same / (same + other));
    }

    /// <summary>Finds a round section; null where nothing stands out.</summary>
    public static FoundOutline? Rim(Photograph photo)
    {
        var candidates = RimCandidates(photo);
        if (candidates.Count == 0)
            return null;
        var (best, belief) = Best([.. candidates.Select(c => (c.Found.Points, c.Look))], OutlineWeights.Rim);
        return candidates.First(c => c.Found.Points == best).Found with { Confidence = belief };
    }

    internal static List<(FoundOutline Found, OutlineLook Look)> RimCandidates(Photograph photo)
    {
        var (rough, surroundings) = Rough(photo, 1, isRound: true);
        var longer = rough.HalfWidth >= rough.HalfHeight;
        var ellipse = new Ellipse(
            rough.Centre,
            Math.Max(rough.HalfWidth, rough.HalfHeight),
            Math.Min(rough.HalfWidth, rough.HalfHeight),
            rough.Angle + (longer ? 0 : Math.PI / 2)
        );
        if (ellipse.Minor < 10)
            return [];
        return [.. RimRidges
            .Near(photo, ellipse, 0.25 * ellipse.Major)
            .Select(near => OutlineSnap.Rim(photo, near, 0.03 * near.Major))
            .Where(found => found?.Rim is not null)
            .Select(found =>
            {
                var rim = found!.Rim!.Value;
                // A disc seen from 25 degrees aside is a tenth shorter one way.
                var flat = Math.Max(0, 0.92 - (rim.Minor / rim.Major)) / 0.02;
                return (found!, new OutlineLook(found!.Confidence, found!.Confidence, surroundings.Along(rim.Stations(64)), flat * flat, Math.Log(rim.Major * rim.Minor / (rough.HalfWidth * rough.HalfHeight))));
            })];
    }

    internal static (Placing Rough, Surroundings Surroundings) Rough(Photograph photo, double heightPerWidth, bool isRound)
    {
        var picture = SmallPicture.Of(photo, SearchedPx);
        var palette = Palette.Of(picture);
        var (placing, belonging) = RoughSearch.In(palette, heightPerWidth, isRound);
        return (placing.Scaled(picture.UprightPerPx), new(palette, belonging, picture.UprightPerPx));
    }

    internal static List<(PointPx At, double Nx, double Ny)> Stations(PointPx[] corners)
    {
        const int PerSide = 16;
        var stations = new List<(PointPx, double, double)>(PerSide * corners.Length);
        for (var k = 0; k < corners.Length; k++)
        {
            var (p, q) = (corners[k], corners[(k + 1) % corners.Length]);
            var length = Distance(p, q);
            for (var i = 0; i < PerSide; i++)
            {
                var t = (i + 0.5) / PerSide;
                stations.Add((new(p.X + (t * (q.X - p.X)), p.Y + (t * (q.Y - p.Y))), (q.Y - p.Y) / length, (p.X - q.X) / length));
            }
        }
        return stations;
    }

    private static double Distance(PointPx a, PointPx b) => double.Hypot(a.X - b.X, a.Y - b.Y);
}
