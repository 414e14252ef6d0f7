using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Outline;

/// <summary>An outline that one of several pieces may have.</summary>
/// <param name="Candidate">The outline, and what speaks for it alone.</param>
/// <param name="At">Its middle, upright pixels.</param>
/// <param name="Seen">How large and foreshortened a section of the size said is seen, if this is its outline.</param>
internal readonly record struct PieceCandidate(OutlineCandidate Candidate, PointPx At, Foreshortening Seen);

/// <summary>The one plane in which pieces of one size lie before the camera: how large and foreshortened each is seen follows from it.</summary>
/// <param name="Camera">The camera.</param>
/// <param name="LogPxPerMm">Logarithm of the scale where the camera's axis meets the plane, pixels per mm.</param>
/// <param name="TiltX">How the plane tilts to the right, as a share of its distance for each focal length.</param>
/// <param name="TiltY">The same downward.</param>
/// <remarks>Its figures are our own choice.</remarks>
internal sealed record CommonPlane(Camera Camera, double LogPxPerMm, double TiltX, double TiltY)
{
    /// <summary>Standard deviation of a piece's size, as a share: sawing, and rounds that are not as thick as their name.</summary>
    private const double SizeSpread = 0.015;

    /// <summary>Standard deviation of half the logarithm of the ratio of two sides or axes.</summary>
    private const double RatioSpread = 0.008;

    /// <summary>Standard deviation of the tilt: who photographs a row looks about straight down.</summary>
    private const double TiltSpread = 0.15;

    /// <summary>An outline is of another plane, or of something of another size, from so many halves of a squared standard deviation.</summary>
    private const double MostMisfit = 0.5;

    /// <summary>Outlines are believed where at least this share of all pieces' suit one another: two of three are enough, five of eight are not.</summary>
    private const double LeastAgreeing = 0.66;

    /// <summary>A candidate this much less likely than the likeliest, as a logarithm, has no say.</summary>
    private const double NoSay = 25;

    /// <summary>First and last step of the search for the plane.</summary>
    private const double FirstStep = 0.04;

    private const double LastStep = 0.001;

    /// <summary>The plane that makes the outlines of all pieces together the likeliest; null where no piece has a candidate.</summary>
    /// <param name="pieces">The candidates of each piece.</param>
    /// <param name="weights">How each is weighed alone.</param>
    /// <param name="camera">The camera.</param>
    public static CommonPlane? Of(
        IReadOnlyList<IReadOnlyList<PieceCandidate>> pieces,
        OutlineWeights weights,
        Camera camera
    )
    {
        var known = pieces.Where(piece => piece.Count > 0).Select(piece => Heard(piece, weights)).ToList();
        if (known.Count == 0)
            return null;
        double[] scales = [.. known.Select(piece => piece[0].Of.Seen.LogPxPerMm).Order()];
        return PatternSearch
            .Climb(
                new CommonPlane(camera, scales[scales.Length / 2], 0, 0),
                plane => plane.LogLikelihood(known, weights),
                (plane, measure, by) =>
                    measure switch
                    {
                        0 => plane with { LogPxPerMm = plane.LogPxPerMm + by },
                        1 => plane with { TiltX = plane.TiltX + by },
                        _ => plane with { TiltY = plane.TiltY + by },
                    },
                measures: 3,
                FirstStep,
                LastStep
            )
            .Place;
    }

    /// <summary>How ill an outline suits this plane, in halves of a squared standard deviation.</summary>
    public double Misfit(PieceCandidate piece)
    {
        if (SeenAt(piece.At) is not { } due)
            return double.PositiveInfinity;
        var size = (piece.Seen.LogPxPerMm - due.LogPxPerMm) / SizeSpread;
        var (along, aslant) = (
            (piece.Seen.Along - due.Along) / RatioSpread,
            (piece.Seen.Aslant - due.Aslant) / RatioSpread
        );
        return ((size * size) + (along * along) + (aslant * aslant)) / 2;
    }

    /// <summary>
    /// Which outlines may be those of pieces of one size in one plane: the one that suits the others least is left out, until all that are left suit one another.
    /// </summary>
    /// <param name="outlines">One outline of each piece; null where none is known.</param>
    /// <param name="camera">The camera.</param>
    /// <returns>For each piece whether its outline is among those; where fewer than two in three pieces' are, nobody can say which are right, and none is.</returns>
    public static IReadOnlyList<bool> Agreeing(IReadOnlyList<PieceCandidate?> outlines, Camera camera)
    {
        var agrees = Suiting(outlines, camera);
        return agrees.Count(each => each) >= LeastAgreeing * outlines.Count ? agrees : new bool[outlines.Count];
    }

    private static bool[] Suiting(IReadOnlyList<PieceCandidate?> outlines, Camera camera)
    {
        bool[] agrees = [.. outlines.Select(outline => outline is not null)];
        while (true)
        {
            var left = outlines.Where((_, k) => agrees[k]).Select(outline => outline!.Value).ToList();
            if (
                Of([.. left.Select(outline => (IReadOnlyList<PieceCandidate>)[outline])], Plain, camera)
                is not { } plane
            )
                return agrees;
            var worst = left.Max(plane.Misfit);
            if (worst < MostMisfit)
                return agrees;
            agrees[
                Enumerable.Range(0, agrees.Length).First(k => agrees[k] && plane.Misfit(outlines[k]!.Value) >= worst)
            ] = false;
        }
    }

    // Every outline counts alike, and one that suits no other has little say in where the plane is.
    private static OutlineWeights Plain { get; } = new([0, 0, 0, 0, 0, -1, 0, 0], -4);

    // The likeliest first, without those that have no say.
    private static List<(PieceCandidate Of, double Score)> Heard(
        IReadOnlyList<PieceCandidate> piece,
        OutlineWeights weights
    )
    {
        var scored = piece
            .Select(each => (Of: each, Score: weights.Score(each.Candidate.Look)))
            .OrderByDescending(each => each.Score)
            .ToList();
        return [.. scored.TakeWhile(each => each.Score > scored[0].Score - NoSay)];
    }

    private double LogLikelihood(
        IReadOnlyList<IReadOnlyList<(PieceCandidate Of, double Score)>> pieces,
        OutlineWeights weights
    )
    {
        var tilt = ((TiltX * TiltX) + (TiltY * TiltY)) / (TiltSpread * TiltSpread) / 2;
        return pieces.Sum(piece =>
                Math.Log(
                    Math.Exp(weights.None - piece[0].Score)
                        + piece.Sum(each =>
                            Math.Exp(each.Score + (weights.OfMisfit * Misfit(each.Of)) - piece[0].Score)
                        )
                )
            ) - tilt;
    }

    // By the plane's metric in the picture: a place p of it lies λ·r away, with r the ray through the pixel and λ = 1 ⁄ (1 + tilt·r).
    private Foreshortening? SeenAt(PointPx at)
    {
        var (u, v) = ((at.X - Camera.Axis.X) / Camera.FocalPx, (at.Y - Camera.Axis.Y) / Camera.FocalPx);
        var away = 1 + (TiltX * u) + (TiltY * v);
        if (away <= 0)
            return null;
        double[] ray = [u, v, 1];
        double[] Moved(int axis, double tilt) =>
            [.. ray.Select((part, k) => ((k == axis ? 1 : 0) / away) - (part * tilt / (away * away)))];
        var (du, dv) = (Moved(0, TiltX), Moved(1, TiltY));
        double Dot(double[] a, double[] b) => (a[0] * b[0]) + (a[1] * b[1]) + (a[2] * b[2]);
        var (xx, xy, yy) = (Dot(du, du), Dot(du, dv), Dot(dv, dv));
        var determinant = (xx * yy) - (xy * xy);
        return Foreshortening.Of(yy / determinant, -xy / determinant, xx / determinant) is { } shape
            ? shape with
            {
                LogPxPerMm = shape.LogPxPerMm + LogPxPerMm,
            }
            : null;
    }
}
