using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Outline;

namespace Alburnum.Imaging.Stages;

/// <summary>Why the pieces on a photograph are not those that were said.</summary>
internal abstract record NoPieces
{
    /// <summary>As a person is told.</summary>
    /// <param name="fileName">The photograph.</param>
    /// <param name="count">How many pieces there are, as was said.</param>
    public InputProblem At(string fileName, int count) =>
        this switch
        {
            OtherCount(var found, true) => new(
                fileName,
                0,
                "",
                "pieces",
                $"{found} things as large as a piece, one of which may be two that touch",
                $"{count}, each lying by itself"
            ),
            OtherCount(var found, _) => new(
                fileName,
                0,
                "",
                "pieces",
                $"{found} things as large as a piece",
                $"{count}, each whole and by itself on a plain ground, and nothing else as large"
            ),
            _ => new(
                fileName,
                0,
                "",
                "pieces",
                "pieces neither side by side nor one row below the other",
                "rows that are told apart, the camera held level with them"
            ),
        };
}

/// <summary>Another number of things as large as one another lies there.</summary>
/// <param name="Found">So many.</param>
/// <param name="IsJoined">Whether one of them is as large as two of the others.</param>
internal sealed record OtherCount(int Found, bool IsJoined) : NoPieces;

/// <summary>Rows run into each other, so that nobody could say which piece is which.</summary>
internal sealed record NoRows : NoPieces;

/// <summary>One of several pieces.</summary>
/// <param name="Middle">About where it lies, upright pixels.</param>
/// <param name="Outline">Its outline; null where none is sure.</param>
internal sealed record FoundPiece(PointPx Middle, FoundOutline? Outline);

/// <summary>Finds every one of several pieces on one photograph, or none.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class PiecesStage
{
    /// <summary>A thing is as large as the others from this share of their median area; where the picture's edge cuts it, from the second.</summary>
    private const double AlikeShare = 0.4;

    private const double CutShare = 0.15;

    /// <summary>A thing this many times as large as the median is two.</summary>
    private const double JoinedShare = 1.6;

    /// <summary>The longer side of a thing's box is that of the others, but for so much of its logarithm: a rule among sections is none of them.</summary>
    private const double SideSpread = 0.45;

    /// <summary>A row ends where the next piece lies lower than the one before it by more than this share of their height.</summary>
    private const double RowShare = 0.45;

    /// <summary>Two of one row lie side by side by at least this share of their width.</summary>
    private const double AsideShare = 0.5;

    /// <summary>The pieces in reading order, left to right and row by row.</summary>
    /// <param name="scene">The photograph.</param>
    /// <param name="count">How many there are, as somebody counted who saw them.</param>
    /// <param name="ct">Stops the search.</param>
    public static Outcome<IReadOnlyList<FoundPiece>, NoPieces> Find(Scene scene, int count, CancellationToken ct)
    {
        var looks = PieceSpots.LooksAt(scene.Photo).Select(look => Alike(look, count, scene.Card?.MiddlePx)).ToList();
        ct.ThrowIfCancellationRequested();
        if (looks.Find(look => look.Count == count) is not { } pieces)
            return Other(looks[0], count);
        var side = pieces.Select(LongerSide).Order().ElementAt(count / 2);
        if (pieces.Any(piece => !piece.IsCut && Math.Abs(Math.Log(LongerSide(piece) / side)) > SideSpread))
            return Other(
                [.. pieces.Where(piece => piece.IsCut || Math.Abs(Math.Log(LongerSide(piece) / side)) <= SideSpread)],
                count
            );
        // What one look takes for ground another may see: a piece that is as pale as the bench, while a tool stands in for it.
        List<PieceSpot> missed =
        [
            .. looks.SelectMany(look =>
                look.Where(spot =>
                    spot.AreaPx2 < JoinedShare * Median(pieces, count)
                    && !pieces.Any(piece => piece.Holds(spot.Middle) || spot.Holds(piece.Middle))
                )
            ),
        ];
        return missed.Count > 0
            ? Other([.. pieces, missed[0]], count)
            : InOrder(pieces).Then(ordered => Outlined(scene, ordered, ct));
    }

    private static double LongerSide(PieceSpot spot) => Math.Max(spot.Right - spot.Left, spot.Bottom - spot.Top);

    private static OtherCount Other(IReadOnlyList<PieceSpot> found, int count) =>
        new(found.Count, found.Count < count && found.Any(spot => spot.AreaPx2 > JoinedShare * Median(found, count)));

    // What is as large as a piece, going by the largest of them, the card left out.
    private static IReadOnlyList<PieceSpot> Alike(IReadOnlyList<PieceSpot> look, int count, PointPx? card)
    {
        List<PieceSpot> besides = [.. look.Where(spot => !(card is { } at && spot.Holds(at)))];
        var median = Median(besides, count);
        return [.. besides.Where(spot => spot.AreaPx2 >= (spot.IsCut ? CutShare : AlikeShare) * median)];
    }

    private static double Median(IReadOnlyList<PieceSpot> spots, int count)
    {
        double[] areas = [.. spots.Select(spot => spot.AreaPx2).OrderDescending().Take(count)];
        return areas.Length == 0 ? 0 : areas[areas.Length / 2];
    }

    private static Outcome<IReadOnlyList<PieceSpot>, NoPieces> InOrder(IReadOnlyList<PieceSpot> spots)
    {
        var rows = new List<List<PieceSpot>>();
        var height = spots.Average(spot => spot.Bottom - spot.Top);
        foreach (var spot in spots.OrderBy(spot => spot.Middle.Y))
        {
            if (rows.Count == 0 || spot.Middle.Y - rows[^1][^1].Middle.Y > RowShare * height)
                rows.Add([]);
            rows[^1].Add(spot);
        }
        var width = spots.Average(spot => spot.Right - spot.Left);
        foreach (var row in rows)
        {
            row.Sort((a, b) => a.Middle.X.CompareTo(b.Middle.X));
            if (row.Zip(row.Skip(1)).Any(two => two.Second.Middle.X - two.First.Middle.X < AsideShare * width))
                return new NoRows();
        }
        return (List<PieceSpot>)[.. rows.SelectMany(row => row)];
    }

    private static Outcome<IReadOnlyList<FoundPiece>, NoPieces> Outlined(
        Scene scene,
        IReadOnlyList<PieceSpot> spots,
        CancellationToken ct
    )
    {
        var outlines = PieceOutlines.Of(scene.Photo, spots, scene.Request.Section, ct);
        return (List<FoundPiece>)[.. spots.Zip(outlines, (spot, outline) => new FoundPiece(spot.Middle, outline))];
    }
}
