namespace Alburnum.Imaging.Outline;

/// <summary>Pattern search (compass search): climbing to a better place, one measure after the other, in ever smaller steps.</summary>
/// <remarks>T. G. Kolda, R. M. Lewis and V. Torczon, Optimization by direct search, SIAM Review 45 (2003), section 1.1. From memory.</remarks>
internal static class PatternSearch
{
    /// <summary>Tries each measure both ways and goes wherever the score rises; halves the step where it no longer does.</summary>
    /// <param name="start">Where to begin.</param>
    /// <param name="score">What is to be great; negative infinity where one may not go.</param>
    /// <param name="moved">A place with one of its measures changed by an amount.</param>
    /// <param name="measures">Number of measures.</param>
    /// <param name="firstStep">First amount. Above 0.</param>
    /// <param name="lastStep">No amount is less than this. Above 0.</param>
    /// <returns>The place reached, and its score: never less than the start's.</returns>
    public static (T Place, double Score) Climb<T>(
        T start,
        Func<T, double> score,
        Func<T, int, double, T> moved,
        int measures,
        double firstStep,
        double lastStep
    )
    {
        const int RoundsPerStep = 4;
        var (place, reached) = (start, score(start));
        for (var step = firstStep; step >= lastStep; step /= 2)
        {
            for (var round = 0; round < RoundsPerStep; round++)
            {
                var before = reached;
                for (var k = 0; k < 2 * measures; k++)
                {
                    var tried = moved(place, k / 2, k % 2 == 0 ? step : -step);
                    var of = score(tried);
                    if (of > reached)
                        (place, reached) = (tried, of);
                }
                if (reached <= before)
                    break;
            }
        }
        return (place, reached);
    }
}
