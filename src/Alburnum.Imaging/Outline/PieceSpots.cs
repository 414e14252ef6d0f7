using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Roughly where one of several pieces lies.</summary>
/// <param name="Left">Its box, upright pixels.</param>
/// <param name="Top">See <paramref name="Left"/>.</param>
/// <param name="Right">See <paramref name="Left"/>.</param>
/// <param name="Bottom">See <paramref name="Left"/>.</param>
/// <param name="AreaPx2">How much of the picture it covers, square pixels.</param>
/// <param name="IsCut">Whether it reaches the picture's edge.</param>
internal sealed record PieceSpot(double Left, double Top, double Right, double Bottom, double AreaPx2, bool IsCut)
{
    /// <summary>Middle of its box.</summary>
    public PointPx Middle => new((Left + Right) / 2, (Top + Bottom) / 2);

    /// <summary>Whether its box holds a point.</summary>
    public bool Holds(PointPx at) => at.X >= Left && at.X <= Right && at.Y >= Top && at.Y <= Bottom;
}

/// <summary>Finds what lies on a ground: all that is unlike what the picture shows along its edges.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class PieceSpots
{
    /// <summary>Longer side of the picture that is searched, px.</summary>
    private const int SearchedPx = 480;

    /// <summary>What lies along the picture's edges is ground: a frame of this share of the shorter side.</summary>
    private const double FrameShare = 0.04;

    /// <summary>How far colours are taken to be alike, look by look, as a distance of the palette's features.</summary>
    private static readonly float[] Looks = [0.3f, 0.2f, 0.13f];

    /// <summary>A colour is ground from this share of what the ground's own colours are on the mean.</summary>
    private const double GroundFrom = 0.12;

    /// <summary>Pixels taken off all round, so that neither unrest at an edge nor a fine line joins two pieces.</summary>
    private const int TakenOffPx = 2;

    /// <summary>What covers less than this share of the picture is no piece.</summary>
    private const double LeastShare = 0.002;

    /// <summary>What lies on the ground, look by look.</summary>
    public static IEnumerable<IReadOnlyList<PieceSpot>> LooksAt(Photograph photo)
    {
        var picture = SmallPicture.Of(photo, SearchedPx);
        var palette = Palette.Of(picture);
        foreach (var reach in Looks)
        {
            var isGround = Ground(palette, palette.Likeness(reach));
            var isPiece = Worn([.. palette.Group.Select(group => !isGround[group])], palette.Width, palette.Height);
            yield return Parts(isPiece, palette.Width, palette.Height, picture.UprightPerPx);
        }
    }

    // Which groups of colours are those of the ground.
    private static bool[] Ground(Palette palette, float[] likeness)
    {
        var (w, h) = (palette.Width, palette.Height);
        var frame = Math.Max(2, (int)(FrameShare * Math.Min(w, h)));
        var along = new double[Palette.Groups];
        for (var y = 0; y < h; y++)
        for (var x = 0; x < w; x++)
            if (x < frame || y < frame || x >= w - frame || y >= h - frame)
                along[palette.Group[(y * w) + x]]++;
        var all = along.Sum();
        var like = new double[Palette.Groups];
        for (var k = 0; k < Palette.Groups; k++)
        for (var j = 0; j < Palette.Groups; j++)
            like[k] += likeness[(Palette.Groups * k) + j] * along[j] / all;
        var mean = Enumerable.Range(0, Palette.Groups).Sum(k => along[k] / all * like[k]);
        return [.. like.Select(each => each >= GroundFrom * mean)];
    }

    // A pixel stays where all within a few pixels of it are of a piece; beyond the picture's edge nothing takes any off.
    private static bool[] Worn(bool[] isPiece, int w, int h)
    {
        bool[] Along(bool[] from, int step, Func<int, int> place, int length)
        {
            var to = new bool[from.Length];
            for (var i = 0; i < from.Length; i++)
            {
                var at = place(i);
                var stays = from[i];
                for (var k = Math.Max(-TakenOffPx, -at); stays && k <= Math.Min(TakenOffPx, length - 1 - at); k++)
                    stays = from[i + (k * step)];
                to[i] = stays;
            }
            return to;
        }
        return Along(Along(isPiece, 1, i => i % w, w), w, i => i / w, h);
    }

    // Pixels that touch at a side, from any one of them to all.
    private static List<PieceSpot> Parts(bool[] isPiece, int w, int h, double scale)
    {
        var parts = new List<PieceSpot>();
        var seen = new bool[isPiece.Length];
        var next = new Stack<int>();
        for (var start = 0; start < isPiece.Length; start++)
        {
            if (!isPiece[start] || seen[start])
                continue;
            var (left, top, right, bottom, count) = (w, h, 0, 0, 0);
            seen[start] = true;
            next.Push(start);
            while (next.TryPop(out var at))
            {
                var (x, y) = (at % w, at / w);
                (left, right, top, bottom, count) = (
                    Math.Min(left, x),
                    Math.Max(right, x),
                    Math.Min(top, y),
                    Math.Max(bottom, y),
                    count + 1
                );
                foreach (var (to, isInside) in Beside(at, x, y, w, h))
                {
                    if (!isInside || !isPiece[to] || seen[to])
                        continue;
                    seen[to] = true;
                    next.Push(to);
                }
            }
            if (count >= LeastShare * isPiece.Length)
                parts.Add(
                    new(
                        Math.Max(0, left - TakenOffPx) * scale,
                        Math.Max(0, top - TakenOffPx) * scale,
                        Math.Min(w, right + 1 + TakenOffPx) * scale,
                        Math.Min(h, bottom + 1 + TakenOffPx) * scale,
                        count * scale * scale,
                        left == 0 || top == 0 || right == w - 1 || bottom == h - 1
                    )
                );
        }
        return parts;
    }

    private static (int To, bool IsInside)[] Beside(int at, int x, int y, int w, int h) =>
        [(at - 1, x > 0), (at + 1, x + 1 < w), (at - w, y > 0), (at + w, y + 1 < h)];
}
