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

    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    [InlineData(Stratum.Hard)]
    public void The_outline_is_found_or_asked_for(Stratum stratum)
    {
        Assert.True(
            run[stratum].ByItself.OutlineShare >= AccuracyLimits.Of(stratum).OutlineShare,
            Said(run[stratum].ByItself.OutlineShare)
        );
        Assert.True(run[stratum].ByItself.GuessedShare <= 0, Said(run[stratum].ByItself.GuessedShare));
    }

    [Fact]
    public void Stated_intervals_hold_the_truth_as_often_as_they_say()
    {
        var all = Enum.GetValues<Stratum>().SelectMany(stratum => run[stratum].Given.Scores).ToList();
        var overall = new StratumResult(Stratum.Ordinary, all);
        Assert.InRange(overall.MeanCoverage, 0.90, 0.98);
        Assert.InRange(overall.MinimumCoverage, 0.90, 0.98);
    }

    private static string Said(double value) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value:0.000}");
}
