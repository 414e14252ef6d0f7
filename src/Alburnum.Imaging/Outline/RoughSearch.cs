namespace Alburnum.Imaging.Outline;

/// <summary>Finds roughly where a section of known proportions lies, by colour and texture alone.</summary>
internal static class RoughSearch
{
    /// <summary>Of the places searched first, so many are followed up.</summary>
    private const int Followed = 4;

    /// <summary>Greatest change of the proportion by a camera held aside, as a logarithm: 25 degrees and a little.</summary>
    private const double MostForeshortened = 0.13;

    /// <summary>The placing that separates the picture's colours best, in the palette's pixels, and what it was judged by.</summary>
    /// <param name="palette">The picture's colours.</param>
    /// <param name="likeness">How alike its groups are taken to be.</param>
    /// <param name="heightPerWidth">Proportion of the section; 1 for a round one.</param>
    /// <param name="isRound">Whether the section is round.</param>
    public static (RoughPose RoughPose, Separation Separation) In(
        Palette palette,
        float[] likeness,
        double heightPerWidth,
        bool isRound
    )
    {
        var coarse = new Separation(palette, likeness, 4);
        var starts = Starts(coarse, heightPerWidth, isRound);
        var finer = new Separation(palette, likeness, 2);
        var best = starts
            .Select(start => Refined(finer, start.Scaled((double)coarse.Every / finer.Every)))
            .MaxBy(found => found.Score)
            .RoughPose;
        return (best.Scaled(finer.Every), finer);
    }

    private static List<RoughPose> Starts(Separation separation, double heightPerWidth, bool isRound)
    {
        var (w, h) = (separation.Width, separation.Height);
        var shorter = Math.Min(w, h);
        var step = shorter / 13.0;
        var turns = isRound ? 1 : 20;
        var round = isRound || Math.Abs(Math.Log(heightPerWidth)) < 0.02 ? Math.PI / 2 : Math.PI;
        var scored = new List<(RoughPose RoughPose, double Score)>();
        for (var turn = 0; turn < turns; turn++)
        for (var half = 0.12 * Math.Max(w, h); half < 0.52 * Math.Max(w, h); half *= 1.15)
        for (var y = 0.25 * h; y <= 0.75 * h; y += step)
        for (var x = 0.25 * w; x <= 0.75 * w; x += step)
        {
            var longer = Math.Max(1, heightPerWidth);
            var placing = new RoughPose(
                new(x, y),
                half / longer,
                half * heightPerWidth / longer,
                round * turn / turns,
                isRound
            );
            if (IsInside(placing, w, h))
                scored.Add((placing, separation.Of(placing.Points())));
        }
        scored.Sort((a, b) => b.Score.CompareTo(a.Score));
        var starts = new List<RoughPose>();
        foreach (var (placing, _) in scored)
        {
            if (
                starts.All(s =>
                    double.Hypot(s.Centre.X - placing.Centre.X, s.Centre.Y - placing.Centre.Y) > 1.5 * step
                    || Math.Abs(Math.Log(s.HalfWidth / placing.HalfWidth)) > 0.2
                    || Math.Abs(s.Angle - placing.Angle) > 0.3
                )
            )
                starts.Add(placing);
            if (starts.Count == Followed)
                break;
        }
        return starts;
    }

    private static bool IsInside(RoughPose placing, int width, int height)
    {
        foreach (var p in placing.Points())
            if (p.X < -0.02 * width || p.X > 1.02 * width || p.Y < -0.02 * height || p.Y > 1.02 * height)
                return false;
        return true;
    }

    private static (RoughPose RoughPose, double Score) Refined(Separation separation, RoughPose start)
    {
        var proportion = Math.Log(start.HalfHeight / start.HalfWidth);
        var size = Math.Min(start.HalfWidth, start.HalfHeight);
        return PatternSearch.Climb(
            start,
            placing =>
                Math.Abs(Math.Log(placing.HalfHeight / placing.HalfWidth) - proportion) < MostForeshortened
                    ? separation.Of(placing.Points())
                    : double.NegativeInfinity,
            (placing, measure, by) => placing.Moved(measure, by * size),
            RoughPose.Measures,
            firstStep: 0.16,
            lastStep: 0.01
        );
    }
}
