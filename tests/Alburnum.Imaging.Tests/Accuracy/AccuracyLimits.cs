using Alburnum.DrawnSections;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>How well the reader must do in a stratum.</summary>
/// <param name="LocalMm">Mean absolute error of local depth, outline given, mean over photographs.</param>
/// <param name="MeanMm">Absolute error of the mean depth, mean over photographs.</param>
/// <param name="MinimumMm">Absolute error of the minimum depth, median over photographs.</param>
/// <param name="TreatedSharePoints">Absolute error of the treated share, percentage points.</param>
/// <param name="OutlineShare">Share of photographs whose outline the reader finds by itself within 1 mm.</param>
internal sealed record AccuracyLimits(
    double LocalMm,
    double MeanMm,
    double MinimumMm,
    double TreatedSharePoints,
    double OutlineShare
)
{
    public static AccuracyLimits Of(Stratum stratum) =>
        stratum switch
        {
            Stratum.Easy => new(0.2, 0.1, 0.2, 0.4, 1.0),
            Stratum.Ordinary => new(0.35, 0.2, 0.25, 0.7, 0.95),
            Stratum.Hard => new(0.8, 0.5, 1.2, 3, 0.75),
            _ => throw new ArgumentOutOfRangeException(nameof(stratum), stratum, "No such stratum."),
        };
}
