using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Timber;

namespace Alburnum.Imaging.Outline;

/// <summary>Outlines pieces one by one, each in a cutting of the photograph that shows it alone.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class PieceOutlines
{
    /// <summary>A cutting shows so much of the ground beyond a piece's box, as a share of the box's longer side.</summary>
    private const double BeyondShare = 0.35;

    /// <summary>How far an outline found in a cutting may move where it is drawn to its edge in the whole photograph, as a share of its size.</summary>
    private const double SnapShare = 0.008;

    /// <summary>An outline less sure than this is none. A probability.</summary>
    private const double SureEnough = 0.9;

    /// <summary>An outline surer than this at the first look needs no other. A probability.</summary>
    private const double FirstLook = 0.95;

    /// <summary>What a piece covers of the ground, sides and shadow included, as a share of its outline's area: beyond these it is another thing, or two.</summary>
    private static readonly (double Least, double Most) Covered = (0.5, 1.7);

    /// <summary>The outline of each piece, in the order of the spots; null where none is found that covers what lies there and suits the others'.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="spots">Roughly where each piece lies.</param>
    /// <param name="section">What each of them is: sawn or round.</param>
    /// <param name="ct">Stops the search between pieces.</param>
    public static IReadOnlyList<FoundOutline?> Of(
        Photograph photo,
        IReadOnlyList<PieceSpot> spots,
        Section section,
        CancellationToken ct
    )
    {
        var weights = section is RoundSection ? OutlineWeights.Rim : OutlineWeights.Sides;
        var pieces = new IReadOnlyList<PieceCandidate>[spots.Count];
        Parallel.For(
            0,
            spots.Count,
            new ParallelOptions { CancellationToken = ct },
            k => pieces[k] = spots[k].IsCut ? [] : [.. Candidates(photo, spots, k, section, weights)]
        );
        var camera = Camera.Usual(photo.WidthPx, photo.HeightPx);
        if (CommonPlane.Of(pieces, weights, camera) is not { } plane)
            return [.. spots.Select(_ => (FoundOutline?)null)];
        var likeliest = pieces.Select((piece, k) => Likeliest(photo, spots[k], piece, (plane, weights))).ToList();
        var agree = CommonPlane.Agreeing(
            [.. likeliest.Select(outline => outline is null ? null : Seen(outline, default, section))],
            camera
        );
        return [.. likeliest.Select((outline, k) => agree[k] ? outline : null)];
    }

    // All that may be the outline of a piece, in the photograph: those of the first look, and where that is not sure, of the others as well.
    private static IEnumerable<PieceCandidate> Candidates(
        Photograph photo,
        IReadOnlyList<PieceSpot> spots,
        int k,
        Section section,
        OutlineWeights weights
    )
    {
        var (left, top, right, bottom) = Cutting(photo, spots, k);
        using var alone = photo.Cutting(left, top, right, bottom);
        var looks = section is RectangularSection sawn
            ? OutlineFinder.SideLooks(alone, sawn.WidthMm, sawn.HeightMm)
            : OutlineFinder.RimLooks(alone);
        foreach (var look in looks)
        {
            foreach (var candidate in look)
                if (Seen(Moved(candidate.Outline, left, top), candidate.Look, section) is { } piece)
                    yield return piece;
            if (OutlineFinder.Surest([look], weights).Has(out var sure, out _) && sure.Confidence > FirstLook)
                yield break;
        }
    }

    private static PieceCandidate? Seen(FoundOutline outline, OutlineLook look, Section section) =>
        (outline.Rim, section) switch
        {
            ({ } rim, RoundSection round) => new PieceCandidate(
                new(outline, look),
                rim.Centre,
                Foreshortening.Of(rim, round.DiameterMm)
            ),
            (null, RectangularSection sawn)
                when Foreshortening.Of(outline.Points, sawn.WidthMm, sawn.HeightMm) is { } seen => new PieceCandidate(
                new(outline, look),
                new(outline.Points.Average(p => p.X), outline.Points.Average(p => p.Y)),
                seen
            ),
            _ => null,
        };

    // The likeliest beside all the others, drawn to its edge.
    private static FoundOutline? Likeliest(
        Photograph photo,
        PieceSpot spot,
        IReadOnlyList<PieceCandidate> piece,
        (CommonPlane Plane, OutlineWeights Weights) among
    )
    {
        List<OutlineCandidate> weighed =
        [
            .. piece.Select(each =>
                each.Candidate with
                {
                    Look = each.Candidate.Look with { Misfit = each.Candidate.Look.Misfit + among.Plane.Misfit(each) },
                }
            ),
        ];
        if (
            !OutlineFinder.Surest([weighed], among.Weights).Has(out var found, out _)
            || found.Confidence < SureEnough
            || Snapped(photo, found) is not { } outline
        )
            return null;
        var covered = spot.AreaPx2 / Polygon.Area(outline.Points);
        return covered > Covered.Least && covered < Covered.Most && Polygon.Holds(outline.Points, spot.Middle)
            ? outline
            : null;
    }

    // A piece's box and some ground about it, as far as half-way to its neighbours.
    private static (int Left, int Top, int Right, int Bottom) Cutting(
        Photograph photo,
        IReadOnlyList<PieceSpot> spots,
        int k
    )
    {
        var own = spots[k];
        var beyond = BeyondShare * Math.Max(own.Right - own.Left, own.Bottom - own.Top);
        var (left, top, right, bottom) = (
            Math.Max(0, own.Left - beyond),
            Math.Max(0, own.Top - beyond),
            Math.Min(photo.WidthPx, own.Right + beyond),
            Math.Min(photo.HeightPx, own.Bottom + beyond)
        );
        foreach (var other in spots)
        {
            if (
                ReferenceEquals(other, own)
                || other.Left >= right
                || other.Right <= left
                || other.Top >= bottom
                || other.Bottom <= top
            )
                continue;
            double[] gaps =
            [
                own.Left - other.Right,
                other.Left - own.Right,
                own.Top - other.Bottom,
                other.Top - own.Bottom,
            ];
            var widest = gaps.Max();
            switch (Array.IndexOf(gaps, widest))
            {
                case 0:
                    left = Math.Max(left, own.Left - (widest / 2));
                    break;
                case 1:
                    right = Math.Min(right, own.Right + (widest / 2));
                    break;
                case 2:
                    top = Math.Max(top, own.Top - (widest / 2));
                    break;
                default:
                    bottom = Math.Min(bottom, own.Bottom + (widest / 2));
                    break;
            }
        }
        return ((int)left, (int)top, (int)right, (int)bottom);
    }

    private static FoundOutline Moved(FoundOutline found, int left, int top) =>
        found with
        {
            Points = [.. found.Points.Select(p => new PointPx(p.X + left, p.Y + top))],
            Rim = found.Rim is { } rim ? rim with { Centre = new(rim.Centre.X + left, rim.Centre.Y + top) } : null,
        };

    private static FoundOutline? Snapped(Photograph photo, FoundOutline found)
    {
        if (found.Rim is { } rim)
            return OutlineSnap.Rim(photo, rim, SnapShare * rim.Major).Has(out var near, out _)
                ? near with
                {
                    Confidence = found.Confidence,
                }
                : null;
        var n = found.Points.Count;
        var shortest = Enumerable.Range(0, n).Min(i => found.Points[i].DistanceTo(found.Points[(i + 1) % n]));
        return OutlineSnap.Sides(photo, found.Points, SnapShare * shortest) with { Confidence = found.Confidence };
    }
}
