using DrawSections;

namespace Alburnum.Imaging.Tests.Accuracy;

public sealed class AccuracyTests(AccuracyRun run) : IClassFixture<AccuracyRun>
{
    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    [InlineData(Stratum.Hard)]
    public void Local_depth_is_as_near_as_it_must_be(Stratum stratum) =>
        Assert.True(run[stratum].Given.LocalMm <= AccuracyLimits.Of(stratum).LocalMm, Said(run[stratum].Given.LocalMm));

    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    [InlineData(Stratum.Hard)]
    public void Mean_depth_is_as_near_as_it_must_be(Stratum stratum) =>
        Assert.True(run[stratum].Given.MeanMm <= AccuracyLimits.Of(stratum).MeanMm, Said(run[stratum].Given.MeanMm));

    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    [InlineData(Stratum.Hard)]
    public void Minimum_depth_is_as_near_as_it_must_be(Stratum stratum) =>
        Assert.True(
            run[stratum].Given.MinimumMm <= AccuracyLimits.Of(stratum).MinimumMm,
            Said(run[stratum].Given.MinimumMm)
        );

    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    [InlineData(Stratum.Hard)]
    public void Treated_share_is_as_near_as_it_must_be(Stratum stratum) =>
        Assert.True(
            run[stratum].Given.TreatedSharePoints <= AccuracyLimits.Of(stratum).TreatedSharePoints,
            Said(run[stratum].Given.TreatedSharePoints)
        );

    // What is wanted is AccuracyLimits.OutlineShare with nothing guessed, and intervals that hold the truth 90 to 98 % of the time.
    // Neither is reached yet; docs/science/accuracy.md says how far off. These two tests keep what has been reached, the lower of
    // the runs with textures of real wood and with procedural ones.
    [Theory]
    [InlineData(Stratum.Easy, 0.90, 0.02)]
    [InlineData(Stratum.Ordinary, 0.76, 0.07)]
    [InlineData(Stratum.Hard, 0.38, 0.065)]
    public void The_outline_is_found_as_often_and_guessed_as_seldom_as_it_has_been(
        Stratum stratum,
        double foundShare,
        double guessedShare
    )
    {
        Assert.InRange(run[stratum].ByItself.OutlineShare, foundShare, 1);
        Assert.InRange(run[stratum].ByItself.GuessedShare, 0, guessedShare);
    }

    [Theory]
    [InlineData(Stratum.Easy, 0.96, 0.94)]
    [InlineData(Stratum.Ordinary, 0.93, 0.78)]
    [InlineData(Stratum.Hard, 0.53, 0.60)]
    public void Stated_intervals_hold_the_truth_as_often_as_they_have(
        Stratum stratum,
        double meanCoverage,
        double minimumCoverage
    )
    {
        Assert.InRange(run[stratum].Given.MeanCoverage, meanCoverage, 1);
        Assert.InRange(run[stratum].Given.MinimumCoverage, minimumCoverage, 1);
    }

    private static string Said(double value) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value:0.000}");
}
