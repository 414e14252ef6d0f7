using Alburnum.DrawnSections;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>The figures of one stratum, in one way of reading.</summary>
internal sealed record StratumResult(Stratum Stratum, IReadOnlyList<PhotographScore> Scores)
{
    private IEnumerable<DepthScore> Read => Scores.Select(score => score.Depths).OfType<DepthScore>();

    /// <summary>Share of photographs for which depths were determined.</summary>
    public double DeterminedShare => Scores.Average(score => score.Depths is null ? 0.0 : 1);

    /// <summary>Mean over photographs of the mean absolute local error, mm.</summary>
    public double LocalMm => Mean(depths => depths.LocalMm);

    /// <summary>Mean over photographs of the absolute error of the mean depth, mm.</summary>
    public double MeanMm => Mean(depths => Math.Abs(depths.MeanMm));

    /// <summary>Mean over photographs of the signed error of the mean depth, mm: a lean to one side.</summary>
    public double LeanMm => Mean(depths => depths.MeanMm);

    /// <summary>Median over photographs of the absolute error of the minimum depth, mm.</summary>
    public double MinimumMm
    {
        get
        {
            var errors = Read.Select(depths => Math.Abs(depths.MinimumMm)).Order().ToList();
            return errors.Count == 0 ? double.PositiveInfinity : errors[errors.Count / 2];
        }
    }

    /// <summary>Mean over photographs of the absolute error of the treated share, percentage points.</summary>
    public double TreatedSharePoints => Mean(depths => depths.TreatedSharePoints);

    /// <summary>Mean share of truly readable positions that were read.</summary>
    public double ReadShare => Mean(depths => depths.ReadShare);

    /// <summary>Share of photographs whose stated 95 % interval for the mean depth holds the truth.</summary>
    public double MeanCoverage => Mean(depths => depths.MeanIsCovered ? 1 : 0);

    /// <summary>Share of photographs whose stated 95 % interval for the minimum depth holds the truth.</summary>
    public double MinimumCoverage => Mean(depths => depths.MinimumIsCovered ? 1 : 0);

    /// <summary>Share of all photographs whose outline is right within 1 mm.</summary>
    public double OutlineShare => Scores.Average(score => score.OutlineErrorMm <= 1 ? 1.0 : 0);

    /// <summary>Share of all photographs read with an outline more than 1 mm wrong: guessed instead of asked.</summary>
    public double GuessedShare => Scores.Average(score => score.OutlineErrorMm > 1 ? 1.0 : 0);

    private double Mean(Func<DepthScore, double> of) =>
        Read.Select(of).DefaultIfEmpty(double.PositiveInfinity).Average();
}
