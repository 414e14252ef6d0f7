using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>An outline that may be the right one, and what speaks for it.</summary>
/// <param name="Outline">The outline; its confidence is not yet known.</param>
/// <param name="Look">What speaks for it.</param>
internal readonly record struct OutlineCandidate(FoundOutline Outline, OutlineLook Look);

/// <summary>All outlines that edges near a rough place make.</summary>
internal static class OutlineCandidates
{
    /// <summary>Edges looked at along each side: the true one, the piece's far edge, the treated zone, shadows.</summary>
    private const int LinesPerSide = 7;

    // All figures are our own choice.

    /// <summary>Sides that fit such a section worse than this are not looked at, in halves of a squared standard deviation.</summary>
    private const double MostMisfit = 12;

    /// <summary>A section with a shorter side, or a round with a shorter half axis, than this is too small to find, px.</summary>
    private const double LeastSidePx = 20;

    private const double LeastHalfAxisPx = 10;

    /// <summary>How far edges are looked for from the rough place, as a share of the shorter side.</summary>
    private const double SideReachShare = 0.14;

    /// <summary>How far rims are looked for from the rough one, and how far one is then drawn to its edge, as shares of the longer half axis.</summary>
    private const double RimReachShare = 0.25;

    private const double RimSnapShare = 0.03;

    /// <summary>A disc seen from some 25 degrees aside is shorter one way by this; what is flatter misfits, this much for one standard deviation.</summary>
    private const double LeastAxisRatio = 0.92;

    private const double AxisRatioSpread = 0.02;

    /// <summary>An area that is a smaller share of the rough one than this counts as this.</summary>
    private const double LeastAreaShare = 1e-3;

    /// <summary>Places along a side, and along a rim, where the colours on both sides are looked at.</summary>
    private const int PlacesPerSide = 16;

    private const int PlacesPerRim = 64;

    /// <summary>Four straight sides about a rough place.</summary>
    public static IEnumerable<OutlineCandidate> Sides(
        Photograph photo,
        RoughPose rough,
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
        if (size < LeastSidePx)
            yield break;
        var lines = Enumerable
            .Range(0, 4)
            .Select(k => SideLine.Near(photo, corners[k], corners[(k + 1) % 4], SideReachShare * size, LinesPerSide))
            .ToArray();
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
                Math.Log(Math.Max(LeastAreaShare, Polygon.Area(outline) / (4 * rough.HalfWidth * rough.HalfHeight)))
            );
            yield return new(new(outline, null, 0, 0), look);
        }
    }

    /// <summary>Rims about a rough place.</summary>
    public static IEnumerable<OutlineCandidate> Rims(Photograph photo, RoughPose rough, Surroundings surroundings)
    {
        var ellipse = rough.Ellipse;
        if (ellipse.Minor < LeastHalfAxisPx)
            yield break;
        foreach (var near in RimRidges.Near(photo, ellipse, RimReachShare * ellipse.Major))
        {
            if (
                !OutlineSnap.Rim(photo, near, RimSnapShare * near.Major).Has(out var found, out _)
                || found.Rim is not { } rim
            )
                continue;
            var (major, minor) = (rim.Ellipse.Major, rim.Ellipse.Minor);
            var flat = Math.Max(0, LeastAxisRatio - (minor / major)) / AxisRatioSpread;
            var look = new OutlineLook(
                found.Confidence,
                found.LeastSupport,
                surroundings.Along(rim.Stations(PlacesPerRim)),
                flat * flat,
                Math.Log(major * minor / (rough.HalfWidth * rough.HalfHeight))
            );
            yield return new(found, look);
        }
    }

    private static (PointPx At, double Nx, double Ny)[] Stations(PointPx[] corners)
    {
        var stations = new (PointPx, double, double)[PlacesPerSide * corners.Length];
        for (var k = 0; k < corners.Length; k++)
        {
            var (p, q) = (corners[k], corners[(k + 1) % corners.Length]);
            var length = p.DistanceTo(q);
            var (nx, ny) = ((q.Y - p.Y) / length, (p.X - q.X) / length);
            for (var i = 0; i < PlacesPerSide; i++)
            {
                var t = (i + 0.5) / PlacesPerSide;
                stations[(PlacesPerSide * k) + i] = (new(p.X + (t * (q.X - p.X)), p.Y + (t * (q.Y - p.Y))), nx, ny);
            }
        }
        return stations;
    }
}
