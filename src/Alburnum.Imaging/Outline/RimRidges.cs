using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Rounds along which the picture changes, near a rough one: the rim itself, the piece's far rim, the treated zone.</summary>
internal static class RimRidges
{
    private const int Stations = 96;

    private const int StepsEachWay = 48;

    /// <summary>The best supported first, at most a number of them.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="rough">A rough rim.</param>
    /// <param name="reachPx">How far a rim may lie from it.</param>
    /// <param name="most">How many at most.</param>
    public static IReadOnlyList<Ellipse> Near(Photograph photo, Ellipse rough, double reachPx, int most)
    {
        var step = Math.Max(Math.Max(1, 0.8 / photo.StoredPerUpright), reachPx / StepsEachWay);
        var profile = EdgeProfile.Across(photo, rough.Stations(Stations), reachPx, step);
        var middle = (profile.Steps - 1) / 2;
        // Offset along the rim: out + right·cos + down·sin, in steps.
        var scored = new List<(int Out, int Right, int Down, double Score)>();
        var aside = 6 * middle / 10;
        for (var o = -middle + 2; o <= middle - 2; o++)
        for (var right = -aside; right <= aside; right += 2)
        for (var down = -aside; down <= aside; down += 2)
            scored.Add((o, right, down, Score(profile, middle, o, right, down)));
        scored.Sort((a, b) => b.Score.CompareTo(a.Score));
        var ridges = new List<(int Out, int Right, int Down)>();
        var apart = Math.Max(3, profile.Steps / 24);
        foreach (var (o, right, down, _) in scored)
        {
            if (ridges.All(r => Math.Abs(r.Out - o) + double.Hypot(r.Right - right, r.Down - down) > 1.2 * apart))
                ridges.Add((o, right, down));
            if (ridges.Count == most)
                break;
        }
        return [.. ridges.Select(r => Moved(rough, r.Out * step, r.Right * step, r.Down * step))];
    }

    private static double Score(EdgeProfile profile, int middle, int o, int right, int down)
    {
        double score = 0;
        for (var i = 0; i < Stations; i++)
            score += Math.Min(SideLine.Plain, profile.At(i, middle + o + (right * Cos[i]) + (down * Sin[i])));
        return score;
    }

    private static readonly double[] Cos = [.. Enumerable.Range(0, Stations).Select(i => Math.Cos(2 * Math.PI * i / Stations))];
    private static readonly double[] Sin = [.. Enumerable.Range(0, Stations).Select(i => Math.Sin(2 * Math.PI * i / Stations))];

    // Stations run from the longer axis, so the shift does too.
    private static Ellipse Moved(Ellipse rough, double outPx, double alongPx, double acrossPx)
    {
        var (sin, cos) = Math.SinCos(rough.Angle);
        return rough with
        {
            Centre = new(
                rough.Centre.X + (alongPx * cos) - (acrossPx * sin),
                rough.Centre.Y + (alongPx * sin) + (acrossPx * cos)
            ),
            Major = rough.Major + outPx,
            Minor = rough.Minor + outPx,
        };
    }
}
