using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Finds the section in the photograph by itself: roughly by its colours, then by the likeliest of the edges there.</summary>
internal static class OutlineFinder
{
    /// <summary>Longer side of the picture that is searched, px.</summary>
    private const int SearchedPx = 320;

    /// <summary>Edges looked at along each side: the true one, the piece's far edge, the treated zone, shadows.</summary>
    private const int LinesPerSide = 7;

    /// <summary>Sides that fit such a section worse than this are not looked at, in halves of a squared standard deviation.</summary>
    private const double MostMisfit = 12;

    /// <summary>Outlines nearer than this are one, as a share of their size.</summary>
    private const double SameShare = 0.008;

    /// <summary>An outline surer than this is taken without a second look.</summary>
    private const double Sure = 0.95;

    /// <summary>How far colours are taken to be alike at the first look and at the second.</summary>
    private static readonly float[] Looks = [0.3f, 0.15f];

    /// <summary>Finds a sawn section of known proportions; null where nothing stands out.</summary>
    public static FoundOutline? Sides(Photograph photo, double widthMm, double heightMm) =>
        Surest(
            photo,
            heightMm / widthMm,
            isRound: false,
            OutlineWeights.Sides,
            (rough, surroundings) => SideCandidates(photo, rough, surroundings, widthMm, heightMm)
        )
            is { } found
            ? OutlineSnap.Sides(photo, found.Points, SameShare * Shortest(found.Points)) with
            {
                Confidence = found.Confidence,
            }
            : null;

    /// <summary>Finds a round section; null where nothing stands out.</summary>
    public static FoundOutline? Rim(Photograph photo) =>
        Surest(
            photo,
            1,
            isRound: true,
            OutlineWeights.Rim,
            (rough, surroundings) => RimCandidates(photo, rough, surroundings)
        );

    // The likeliest of all candidates, at the first look that is sure, or at the surer of both.
    private static FoundOutline? Surest(
        Photograph photo,
        double heightPerWidth,
        bool isRound,
        OutlineWeights weights,
        Func<Placing, Surroundings, List<OutlineCandidate>> candidates
    )
    {
        var picture = SmallPicture.Of(photo, SearchedPx);
        var palette = Palette.Of(picture);
        FoundOutline? surest = null;
        foreach (var reach in Looks)
        {
            var likeness = palette.Likeness(reach);
            var (placing, belonging) = RoughSearch.In(palette, likeness, heightPerWidth, isRound);
            var surroundings = new Surroundings(palette, likeness, belonging, picture.UprightPerPx);
            var found = Likeliest(candidates(placing.Scaled(picture.UprightPerPx), surroundings), weights);
            if (found is not null && !(found.Confidence <= surest?.Confidence))
                surest = found;
            if (surest?.Confidence > Sure)
                break;
        }
        return surest;
    }

    // How likely it is among all, those that hardly differ from it taken together.
    private static FoundOutline? Likeliest(List<OutlineCandidate> candidates, OutlineWeights weights)
    {
        if (candidates.Count == 0)
            return null;
        var scores = candidates.ConvertAll(c => weights.Score(c.Look));
        var most = scores.Max();
        var best = candidates[scores.IndexOf(most)].Outline;
        var size = best.Points.Max(p => best.Points.Max(q => p.DistanceTo(q)));
        double same = 0;
        var other = Math.Exp(weights.None - most);
        for (var i = 0; i < scores.Count; i++)
        {
            var share = Math.Exp(scores[i] - most);
            if (candidates[i].Outline.Points.Zip(best.Points, (p, q) => p.DistanceTo(q)).Max() < SameShare * size)
                same += share;
            else
                other += share;
        }
        return best with { Confidence = same / (same + other) };
    }

    private static List<OutlineCandidate> SideCandidates(
        Photograph photo,
        Placing rough,
        Surroundings surroundings,
        double widthMm,
        double heightMm
    )
    {
        var points = rough.Points();
        var first = Array.IndexOf(points, points.MinBy(p => p.X + p.Y));
        PointPx[] corners = [.. points.Skip(first), .. points.Take(first)];
        if (first % 2 == 1)
            (widthMm, heightMm) = (heightMm, widthMm);
        var size = 2 * Math.Min(rough.HalfWidth, rough.HalfHeight);
        if (size < 20)
            return [];
        var lines = Enumerable
            .Range(0, 4)
            .Select(k => SideLine.Near(photo, corners[k], corners[(k + 1) % 4], 0.14 * size, LinesPerSide))
            .ToArray();
        var candidates = new List<OutlineCandidate>();
        foreach (var a in lines[0])
        foreach (var b in lines[1])
        foreach (var c in lines[2])
        foreach (var d in lines[3])
        {
            var outline = SideLine.Corners([a, b, c, d]);
            var misfit = RectangleView.Misfit(outline, widthMm, heightMm, photo.WidthPx, photo.HeightPx);
            if (misfit > MostMisfit)
                continue;
            var look = new OutlineLook(
                (a.Support + b.Support + c.Support + d.Support) / 4,
                Math.Min(Math.Min(a.Support, b.Support), Math.Min(c.Support, d.Support)),
                surroundings.Along(Stations(outline)),
                misfit,
                Math.Log(Math.Max(1e-3, Polygon.Area(outline) / (4 * rough.HalfWidth * rough.HalfHeight)))
            );
            candidates.Add(new(new(outline, null, 0, 0), look));
        }
        return candidates;
    }

    private static List<OutlineCandidate> RimCandidates(Photograph photo, Placing rough, Surroundings surroundings)
    {
        var longer = rough.HalfWidth >= rough.HalfHeight;
        var ellipse = new Ellipse(
            rough.Centre,
            Math.Max(rough.HalfWidth, rough.HalfHeight),
            Math.Min(rough.HalfWidth, rough.HalfHeight),
            rough.Angle + (longer ? 0 : Math.PI / 2)
        );
        var candidates = new List<OutlineCandidate>();
        if (ellipse.Minor < 10)
            return candidates;
        foreach (var near in RimRidges.Near(photo, ellipse, 0.25 * ellipse.Major))
        {
            if (OutlineSnap.Rim(photo, near, 0.03 * near.Major) is not { Rim: { } rim } found)
                continue;
            // A disc seen from 25 degrees aside is a tenth shorter one way.
            var flat = Math.Max(0, 0.92 - (rim.Minor / rim.Major)) / 0.02;
            var look = new OutlineLook(
                found.Confidence,
                found.Confidence,
                surroundings.Along(rim.Stations(64)),
                flat * flat,
                Math.Log(rim.Major * rim.Minor / (rough.HalfWidth * rough.HalfHeight))
            );
            candidates.Add(new(found, look));
        }
        return candidates;
    }

    private static (PointPx At, double Nx, double Ny)[] Stations(PointPx[] corners)
    {
        const int PerSide = 16;
        var stations = new (PointPx, double, double)[PerSide * corners.Length];
        for (var k = 0; k < corners.Length; k++)
        {
            var (p, q) = (corners[k], corners[(k + 1) % corners.Length]);
            var length = p.DistanceTo(q);
            var (nx, ny) = ((q.Y - p.Y) / length, (p.X - q.X) / length);
            for (var i = 0; i < PerSide; i++)
            {
                var t = (i + 0.5) / PerSide;
                stations[(PerSide * k) + i] = (new(p.X + (t * (q.X - p.X)), p.Y + (t * (q.Y - p.Y))), nx, ny);
            }
        }
        return stations;
    }

    private static double Shortest(IReadOnlyList<PointPx> p) =>
        Enumerable.Range(0, p.Count).Min(k => p[k].DistanceTo(p[(k + 1) % p.Count]));

    /// <summary>An outline that may be the right one, and what speaks for it.</summary>
    private readonly record struct OutlineCandidate(FoundOutline Outline, OutlineLook Look);
}
