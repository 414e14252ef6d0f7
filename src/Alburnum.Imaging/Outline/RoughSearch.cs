namespace Alburnum.Imaging.Outline;

/// <summary>Finds roughly where a section of known proportions lies, by colour and texture alone.</summary>
/// <remarks>Its figures are our own choice: how finely places, sizes and turns are tried.</remarks>
internal static class RoughSearch
{
    /// <summary>Of the places searched first, so many are followed up.</summary>
    private const int Followed = 4;

    /// <summary>Greatest change of the proportion by a camera held aside, as a logarithm: 25 degrees and a little.</summary>
    private const double MostForeshortened = 0.13;

    /// <summary>Every so many-th pixel of the palette is looked at in the first search, and in the second.</summary>
    private const int CoarseEvery = 4;

    private const int FineEvery = 2;

    /// <summary>Distance between the places tried, as a part of the picture's shorter side.</summary>
    private const double StepsAcross = 13;

    /// <summary>Where the section's middle may lie, as shares of the picture.</summary>
    private static readonly (double Least, double Most) Middle = (0.25, 0.75);

    /// <summary>Half its longer side, as shares of the picture's longer one, and how much larger each size tried is than the one before.</summary>
    private static readonly (double Least, double Most) HalfSide = (0.12, 0.52);

    private const double SizeRatio = 1.15;

    /// <summary>Turns tried of a section that is not round, evenly over half a turn, or over a quarter where the section is square.</summary>
    private const int Turns = 20;

    /// <summary>A section whose proportion is nearer to 1 than this, as a logarithm, is taken for square.</summary>
    private const double Square = 0.02;

    /// <summary>Places differ by more than so many steps between their middles, by this in size, as a logarithm, or by this in turn, radians.</summary>
    private const double OtherPlaceSteps = 1.5;

    private const double OtherSize = 0.2;
    private const double OtherTurn = 0.3;

    /// <summary>How far a section may reach past the picture, as a share of it.</summary>
    private const double PastShare = 0.02;

    /// <summary>First and last step of the climb to a better place, as shares of the shorter half side.</summary>
    private const double FirstClimb = 0.16;

    private const double LastClimb = 0.01;

    /// <summary>
    /// The placing that separates the picture's colours best, in the palette's pixels, and what it was judged by; null where the picture is so long and
    /// narrow that no section large enough fits.
    /// </summary>
    /// <param name="palette">The picture's colours.</param>
    /// <param name="likeness">How alike its groups are taken to be.</param>
    /// <param name="heightPerWidth">Proportion of the section; 1 for a round one.</param>
    /// <param name="isRound">Whether the section is round.</param>
    public static (RoughPose RoughPose, Separation Separation)? In(
        Palette palette,
        float[] likeness,
        double heightPerWidth,
        bool isRound
    )
    {
        var coarse = new Separation(palette, likeness, CoarseEvery);
        var starts = Starts(coarse, heightPerWidth, isRound);
        if (starts.Count == 0)
            return null;
        var finer = new Separation(palette, likeness, FineEvery);
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
        // So narrow that not one place of it is left to look at.
        if (shorter == 0)
            return [];
        var step = shorter / StepsAcross;
        var turns = isRound ? 1 : Turns;
        var round = isRound || Math.Abs(Math.Log(heightPerWidth)) < Square ? Math.PI / 2 : Math.PI;
        var scored = new List<(RoughPose RoughPose, double Score)>();
        for (var turn = 0; turn < turns; turn++)
        for (var half = HalfSide.Least * Math.Max(w, h); half < HalfSide.Most * Math.Max(w, h); half *= SizeRatio)
        for (var y = Middle.Least * h; y <= Middle.Most * h; y += step)
        for (var x = Middle.Least * w; x <= Middle.Most * w; x += step)
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
                    double.Hypot(s.Centre.X - placing.Centre.X, s.Centre.Y - placing.Centre.Y) > OtherPlaceSteps * step
                    || Math.Abs(Math.Log(s.HalfWidth / placing.HalfWidth)) > OtherSize
                    || Math.Abs(s.Angle - placing.Angle) > OtherTurn
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
            if (
                p.X < -PastShare * width
                || p.X > (1 + PastShare) * width
                || p.Y < -PastShare * height
                || p.Y > (1 + PastShare) * height
            )
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
            FirstClimb,
            LastClimb
        );
    }
}
