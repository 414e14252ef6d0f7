namespace Alburnum.Imaging.Outline;

/// <summary>What speaks for an outline.</summary>
/// <param name="Support">Share of it along which a plain edge lies, 0 to 1.</param>
/// <param name="LeastSupport">The same for the side, or the sixth of a rim, that has least.</param>
/// <param name="Colours">How it lies in the picture's colours.</param>
/// <param name="Misfit">Half the squared misfit to such a section seen by a camera, in standard deviations.</param>
/// <param name="LogSize">Logarithm of its area as a share of the rough one's.</param>
internal readonly record struct OutlineLook(
    double Support,
    double LeastSupport,
    ColourLook Colours,
    double Misfit,
    double LogSize
)
{
    /// <summary>The numbers that are weighed.</summary>
    public double[] Terms =>
        [
            Support,
            LeastSupport,
            Colours.Contrast,
            Colours.InsideAlike,
            Colours.OutsideAlike,
            Misfit,
            LogSize,
            Math.Abs(LogSize),
        ];
}
