using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Outline;

/// <summary>How an outline lies in the picture's colours.</summary>
/// <param name="Contrast">How much more the picture belongs to the section just inside than just outside; 1 where it changes wholly.</param>
/// <param name="InsideAlike">How alike the strips just inside the sides are, 0 to 1.</param>
/// <param name="OutsideAlike">How alike the strips just outside the sides are, 0 to 1.</param>
internal readonly record struct ColourLook(double Contrast, double InsideAlike, double OutsideAlike);

/// <summary>Judges outlines by the colours on both sides of them.</summary>
/// <param name="palette">The picture's colours.</param>
/// <param name="likeness">How alike its groups are taken to be.</param>
/// <param name="separation">What is known of where its colours lie.</param>
/// <param name="rough">Where the section roughly lies, in the palette's pixels.</param>
/// <param name="uprightPerPx">Upright pixels per pixel of the picture.</param>
internal sealed class Surroundings(
    Palette palette,
    float[] likeness,
    Separation separation,
    RoughPose rough,
    double uprightPerPx
)
{
    // How likely each group belongs to the section.
    private readonly float[] _belonging = separation.Belonging(rough.Scaled(1.0 / separation.Every).Points());

    // Far enough from the line to miss the blur of the edge, near enough to miss what lies behind a side face. Our own choice.
    private static readonly double[] AsidePx = [1.7, 2.7];

    /// <summary>No colour is proof: no share is taken to be nearer to 0 or 1 than this. Our own choice.</summary>
    private const float LeastShare = 0.05f;

    private const int Sides = 4;

    /// <summary>Pairs of different sides.</summary>
    private const int Pairs = Sides * (Sides - 1) / 2;

    /// <summary>Looks along an outline.</summary>
    /// <param name="stations">Places on the outline, the same number for each of four sides, and outward unit normals, upright pixels.</param>
    public ColourLook Along(IReadOnlyList<(PointPx At, double Nx, double Ny)> stations)
    {
        var n = stations.Count * AsidePx.Length;
        Span<byte> inside = stackalloc byte[n];
        Span<byte> outside = stackalloc byte[n];
        double sum = 0;
        var at = 0;
        foreach (var (p, nx, ny) in stations)
        {
            var (x, y) = (p.X / uprightPerPx, p.Y / uprightPerPx);
            foreach (var a in AsidePx)
            {
                inside[at] = Group(x - (a * nx), y - (a * ny));
                outside[at] = Group(x + (a * nx), y + (a * ny));
                sum += _belonging[inside[at]] - _belonging[outside[at]];
                at++;
            }
        }
        return new(sum / n, Alike(inside, n / Sides), Alike(outside, n / Sides));
    }

    // The sides' likeness to each other, as a share of their likeness to themselves.
    private double Alike(ReadOnlySpan<byte> groups, int perSide)
    {
        Span<float> like = stackalloc float[Sides * Sides];
        Span<float> toAll = stackalloc float[Palette.Groups];
        for (var a = 0; a < Sides; a++)
        {
            // How alike one side is to each group, summed once for all it is compared with.
            toAll.Clear();
            foreach (var g in groups.Slice(a * perSide, perSide))
                GroupSums.Add(toAll, likeness.AsSpan(Palette.Groups * g, Palette.Groups));
            for (var b = 0; b <= a; b++)
            {
                float sum = 0;
                foreach (var h in groups.Slice(b * perSide, perSide))
                    sum += toAll[h];
                like[(Sides * a) + b] = sum;
            }
        }
        double alike = 0;
        for (var a = 1; a < Sides; a++)
        for (var b = 0; b < a; b++)
            alike += like[(Sides * a) + b] / Math.Sqrt(like[(Sides * a) + a] * like[(Sides * b) + b]);
        return alike / Pairs;
    }

    /// <summary>How much more likely than not a place belongs to the section: the logarithm of odds.</summary>
    /// <param name="at">The place, upright pixels.</param>
    public float Evidence(PointPx at)
    {
        var belonging = Math.Clamp(
            _belonging[Group(at.X / uprightPerPx, at.Y / uprightPerPx)],
            LeastShare,
            1 - LeastShare
        );
        return MathF.Log(belonging / (1 - belonging));
    }

    private byte Group(double x, double y) =>
        palette.Group[
            (Math.Clamp((int)y, 0, palette.Height - 1) * palette.Width) + Math.Clamp((int)x, 0, palette.Width - 1)
        ];
}
