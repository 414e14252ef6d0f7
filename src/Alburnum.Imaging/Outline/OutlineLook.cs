namespace Alburnum.Imaging.Outline;

/// <summary>What speaks for an outline.</summary>
/// <param name="Support">Share of it along which a plain edge lies, 0 to 1.</param>
/// <param name="LeastSupport">The same for the side that has least.</param>
/// <param name="Colours">How it lies in the picture's colours.</param>
/// <param name="Misfit">Half the squared misfit to such a section seen by a camera, in standard deviations.</param>
/// <param name="LogSize">Logarithm of its area as a share of the rough one's.</param>
internal readonly record struct OutlineLook(
    double Support,
    double LeastSupport,
    ColourLook Colours,
    double Misfit,
    double LogSize
);

/// <summary>
/// How much each of an outline's looks counts: a conditional logit (McFadden, 1974) fitted to drawn photographs of known truth.
/// </summary>
/// <param name="Support">Weight of <see cref="OutlineLook.Support"/>.</param>
/// <param name="LeastSupport">Weight of <see cref="OutlineLook.LeastSupport"/>.</param>
/// <param name="Contrast">Weight of <see cref="ColourLook.Contrast"/>.</param>
/// <param name="InsideAlike">Weight of <see cref="ColourLook.InsideAlike"/>.</param>
/// <param name="OutsideAlike">Weight of <see cref="ColourLook.OutsideAlike"/>.</param>
/// <param name="Misfit">Weight of <see cref="OutlineLook.Misfit"/>.</param>
/// <param name="LogSize">Weight of <see cref="OutlineLook.LogSize"/>.</param>
/// <param name="AbsLogSize">Weight of its absolute value.</param>
/// <param name="None">Score of the truth's being none of the outlines looked at.</param>
internal sealed record OutlineWeights(
    double Support,
    double LeastSupport,
    double Contrast,
    double InsideAlike,
    double OutsideAlike,
    double Misfit,
    double LogSize,
    double AbsLogSize,
    double None
)
{
    /// <summary>For four straight sides.</summary>
    public static OutlineWeights Sides { get; } = new(23.5, 5.5, 11, 17.5, -6, -3, 6, -2, 29.5);

    /// <summary>For a rim.</summary>
    public static OutlineWeights Rim { get; } = new(17.5, 0, 7, 6, 8, -1.8, -1, -6, 28);

    /// <summary>Logarithm of how likely an outline is, but for a constant.</summary>
    public double Score(OutlineLook look) =>
        (Support * look.Support)
        + (LeastSupport * look.LeastSupport)
        + (Contrast * look.Colours.Contrast)
        + (InsideAlike * look.Colours.InsideAlike)
        + (OutsideAlike * look.Colours.OutsideAlike)
        + (Misfit * look.Misfit)
        + (LogSize * look.LogSize)
        + (AbsLogSize * Math.Abs(look.LogSize));
}
