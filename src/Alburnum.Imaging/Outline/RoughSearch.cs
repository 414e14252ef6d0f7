namespace Alburnum.Imaging.Outline;

/// <summary>Finds roughly where a section of known proportions lies, by colour and texture alone.</summary>
internal static class RoughSearch
{
    /// <summary>Of the places searched first, so many are followed up.</summary>
    private const int Followed = 4;

    /// <summary>Greatest change of the proportion by a camera held aside, as a logarithm: 25 degrees and a little.</summary>
    private const double MostForeshortened = 0.13;

    /// <summary>The placing that separates the picture's colours best, in the palette's pixels.</summary>
    /// <param name="palette">The picture's colours.</param>
    /// <param name="likeness">How alike its groups are taken to be.</param>
    /// <param name="heightPerWidth">Proportion of the section; 1 for a round one.</param>
    /// <param name="isRound">Whether the section is round.</param>
    public static (Placing Placing, float[] Belonging) In(
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
            .Placing;
        return (best.Scaled(finer.Every), finer.Belonging(best));
    }

    private static List<Placing> Starts(Separation separation, double heightPerWidth, bool isRound)
    {
        var (w, h) = (separation.Width, separation.Height);
        var shorter = Math.Min(w, h);
        var step = shorter / 13.0;
        var turns = isRound ? 1 : 20;
        var round = isRound || Math.Abs(Math.Log(heightPerWidth)) < 0.02 ? Math.PI / 2 : Math.PI;
        var scored = new List<(Placing Placing, double Score)>();
        for (var turn = 0; turn < turns; turn++)
        for (var half = 0.12 * Math.Max(w, h); half < 0.52 * Math.Max(w, h); half *= 1.15)
        for (var y = 0.25 * h; y <= 0.75 * h; y += step)
        for (var x = 0.25 * w; x <= 0.75 * w; x += step)
        {
            var longer = Math.Max(1, heightPerWidth);
            var placing = new Placing(
                new(x, y),
                half / longer,
                half * heightPerWidth / longer,
                round * turn / turns,
                isRound
            );
            if (IsInside(placing, w, h))
                scored.Add((placing, separation.Of(placing)));
        }
        scored.Sort((a, b) => b.Score.CompareTo(a.Score));
        var starts = new List<Placing>();
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

    private static bool IsInside(Placing placing, int width, int height)
    {
        foreach (var p in placing.Points())
            if (p.X < -0.02 * width || p.X > 1.02 * width || p.Y < -0.02 * height || p.Y > 1.02 * height)
                return false;
        return true;
    }

    // One measure after the other, in ever smaller steps, as long as that separates better.
    private static (Placing Placing, double Score) Refined(Separation separation, Placing placing)
    {
        var score = separation.Of(placing);
        var proportion = Math.Log(placing.HalfHeight / placing.HalfWidth);
        var size = Math.Min(placing.HalfWidth, placing.HalfHeight);
        for (var step = 0.16; step > 0.008; step /= 2)
        {
            for (var again = 0; again < 4; again++)
            {
                var before = score;
                for (var k = 0; k < 10; k++)
                {
                    var by = (k % 2 == 0 ? 1 : -1) * step * size;
                    var turned = by / Math.Max(placing.HalfWidth, placing.HalfHeight);
                    var tried = (k / 2) switch
                    {
                        0 => placing with { Centre = new(placing.Centre.X + by, placing.Centre.Y) },
                        1 => placing with { Centre = new(placing.Centre.X, placing.Centre.Y + by) },
                        2 => placing with { HalfWidth = placing.HalfWidth + by },
                        3 => placing with { HalfHeight = placing.HalfHeight + by },
                        _ => placing with { Angle = placing.Angle + turned },
                    };
                    var of = separation.Of(tried);
                    if (
                        of > score
                        && Math.Abs(Math.Log(tried.HalfHeight / tried.HalfWidth) - proportion) < MostForeshortened
                    )
                        (placing, score) = (tried, of);
                }
                if (score <= before)
                    break;
            }
        }
        return (placing, score);
    }
}
