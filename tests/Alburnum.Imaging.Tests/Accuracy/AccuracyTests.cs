using Alburnum.DrawnSections;

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

    // Of the hard photographs three in four are wanted; what is held here is the lower of the runs with textures of real wood and
    // with procedural ones, a photograph or two short of it. docs/science/accuracy.md has the figures.
    [Theory]
    [InlineData(Stratum.Easy, 0.98, 0)]
    [InlineData(Stratum.Ordinary, 0.95, 0.02)]
    [InlineData(Stratum.Hard, 0.71, 0.05)]
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
    [InlineData(Stratum.Easy, 0.98, 0.96)]
    [InlineData(Stratum.Ordinary, 0.96, 0.95)]
    [InlineData(Stratum.Hard, 0.90, 0.90)]
    public void Stated_intervals_hold_the_truth_as_often_as_they_say(
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
