using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Outline;

/// <summary>How strongly the picture changes across a line, at even steps along it and across it.</summary>
internal sealed class EdgeProfile
{
    /// <summary>Strength from which an edge counts as plain. Our own choice.</summary>
    public const double Plain = 0.25;

    /// <summary>Finest step across an edge, pixels as stored: nearly as fine as they are, since finer says nothing new. Our own choice.</summary>
    private const double FinestStoredPx = 0.8;

    /// <summary>Left out at either end of a side, where the corner's other side begins, as a share of it. Our own choice.</summary>
    private const double CornerShare = 0.04;

    /// <summary>Samples on either side of a step that are compared, and what the farther ones count. Our own choice.</summary>
    private const int Half = 2;

    private const float FartherWeight = 0.5f;

    /// <summary>Each sample is averaged along the edge over itself and so many to either side, against grain and noise. Our own choice.</summary>
    private const int Aside = 1;

    private const int Along = (2 * Aside) + 1;

    /// <summary>White, in each of three channels.</summary>
    private const int White = 255;

    /// <summary>Light, 0 to 1, that is added to a line's own before its changes are taken as shares of it: black must not count as all edge. Our own choice.</summary>
    private const float LightAdded = 0.4f;

    /// <summary>A peak whose second difference is nearer to 0 than this is flat: it stands at its step. Above rounding; our own choice.</summary>
    private const double FlatBend = -1e-6;

    private readonly float[] _strength;

    private EdgeProfile(int stations, int steps, double stepPx)
    {
        (Stations, Steps, StepPx) = (stations, steps, stepPx);
        _strength = new float[stations * steps];
    }

    public int Stations { get; }

    /// <summary>Steps across; step k lies (k − (Steps − 1) ⁄ 2)·StepPx outward.</summary>
    public int Steps { get; }

    public double StepPx { get; }

    /// <summary>Edge strength at a station and step, 0 to about 1.</summary>
    public float this[int station, int step] => _strength[(station * Steps) + step];

    /// <summary>Strength between steps.</summary>
    public float At(int station, double step)
    {
        var k = (int)step;
        if (k < 0 || step < 0 || k + 1 >= Steps)
            return 0;
        var f = (float)(step - k);
        return ((1 - f) * this[station, k]) + (f * this[station, k + 1]);
    }

    /// <summary>How far the true peak lies from a step that is greater than its neighbours, in steps.</summary>
    public double SubStep(int station, int k)
    {
        var (p, q, r) = (this[station, k - 1], this[station, k], this[station, k + 1]);
        var bend = p - (2 * q) + r;
        return bend < FlatBend ? Math.Clamp((p - r) / (2 * bend), -0.5, 0.5) : 0;
    }

    public double OffsetPx(double step) => (step - ((Steps - 1) / 2.0)) * StepPx;

    /// <summary>The finest step at which edges are looked for in a photograph, upright pixels.</summary>
    public static double FinestStepPx(Photograph photo) => Math.Max(1, FinestStoredPx / photo.StoredPerUpright);

    /// <summary>Stations at even steps along a straight side, away from its ends; the wood lies on the right of the walk.</summary>
    public static (PointPx At, double Nx, double Ny)[] AlongSide(PointPx from, PointPx to, int count)
    {
        var length = from.DistanceTo(to);
        var (dx, dy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        var stations = new (PointPx At, double Nx, double Ny)[count];
        for (var i = 0; i < count; i++)
        {
            var along = length * (CornerShare + ((1 - (2 * CornerShare)) * i / (count - 1)));
            stations[i] = (new(from.X + (along * dx), from.Y + (along * dy)), dy, -dx);
        }
        return stations;
    }

    /// <summary>Measures across given stations.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="stations">Place and outward unit normal of each station, upright pixels.</param>
    /// <param name="reachPx">How far inward and outward.</param>
    /// <param name="stepPx">Step, and half the width over which the sides are averaged.</param>
    public static EdgeProfile Across(
        Photograph photo,
        IReadOnlyList<(PointPx At, double Nx, double Ny)> stations,
        double reachPx,
        double stepPx
    )
    {
        var steps = (2 * (int)Math.Ceiling(reachPx / stepPx)) + 1;
        var profile = new EdgeProfile(stations.Count, steps, stepPx);
        var map = photo.UprightToStored;
        var stored = new StoredPixels(photo.Pixels, photo.StoredWidthPx, photo.StoredHeightPx, photo.StoredStride);
        var line = new (float R, float G, float B)[steps + (2 * Half)];
        for (var n = 0; n < stations.Count; n++)
        {
            var (at, nx, ny) = stations[n];
            for (var k = 0; k < line.Length; k++)
            {
                // Half steps, so that step k falls between two samples.
                var o = (k - Half + 0.5 - ((steps - 1) / 2.0)) * stepPx;
                float r = 0,
                    g = 0,
                    b = 0;
                for (var a = -Aside; a <= Aside; a++)
                {
                    var p = map.Map(at.X + (o * nx) - (a * stepPx * ny), at.Y + (o * ny) + (a * stepPx * nx));
                    var (sr, sg, sb) = RectifyRow.Sample(stored, p);
                    (r, g, b) = (r + sr, g + sg, b + sb);
                }
                line[k] = (
                    r / (Along * RectifyRow.Whole),
                    g / (Along * RectifyRow.Whole),
                    b / (Along * RectifyRow.Whole)
                );
            }
            // An edge in shade, or in a dark photograph, is as much an edge as one in light. One measure for the whole line: the peak stays where it is.
            var light = LightAdded + (line.Sum(s => s.R + s.G + s.B) / (3 * White * line.Length));
            for (var k = 0; k < steps; k++)
            {
                // Samples k, k+1 inward and k+2, k+3 outward of the step.
                var (a, b, c, d) = (line[k], line[k + 1], line[k + 2], line[k + 3]);
                var dr = c.R + (FartherWeight * d.R) - b.R - (FartherWeight * a.R);
                var dg = c.G + (FartherWeight * d.G) - b.G - (FartherWeight * a.G);
                var db = c.B + (FartherWeight * d.B) - b.B - (FartherWeight * a.B);
                profile._strength[(n * steps) + k] = MathF.Sqrt((dr * dr) + (dg * dg) + (db * db)) / White / light;
            }
        }
        return profile;
    }
}
