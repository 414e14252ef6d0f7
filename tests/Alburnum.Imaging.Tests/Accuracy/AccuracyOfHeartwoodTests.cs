using Alburnum.DrawnSections;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>Heartwood detected by its colour on drawn photographs of known truth. Their seeds are not those that the limits were set on.</summary>
public sealed class AccuracyOfHeartwoodTests(HeartwoodRun run) : IClassFixture<HeartwoodRun>
{
    /// <summary>Coverage factor of a 95 % interval of a normal quantity.</summary>
    private const double Coverage = 1.96;

    [Fact]
    public void Where_the_border_is_in_sight_it_is_told_more_often_than_not() =>
        Assert.InRange(run[HeartwoodKind.Clear].Average(read => read.IsDetected ? 1.0 : 0), 0.6, 1);

    [Theory]
    [InlineData(HeartwoodKind.Clear)]
    [InlineData(HeartwoodKind.Faint)]
    public void A_border_that_is_told_lies_within_its_uncertainty(HeartwoodKind kind)
    {
        var detected = run[kind].Where(read => read.IsDetected).ToList();

        Assert.InRange(
            detected.Average(read => read.RootMeanSquareMm < Coverage * read.UncertaintyMm ? 1.0 : 0),
            0.9,
            1
        );
        Assert.InRange(detected.Average(read => read.UncertaintyMm!.Value), 0.3, 1.5);
    }

    [Theory]
    [InlineData(HeartwoodKind.Clear)]
    [InlineData(HeartwoodKind.Faint)]
    public void The_treated_share_of_the_sapwood_lies_within_its_uncertainty(HeartwoodKind kind)
    {
        var detected = run[kind].Where(read => read.IsDetected).ToList();

        Assert.InRange(detected.Average(read => read.IsShareHeld ? 1.0 : 0), 0.9, 1);
    }

    [Theory]
    [InlineData(HeartwoodKind.None)]
    [InlineData(HeartwoodKind.Stained)]
    public void Heartwood_is_never_invented(HeartwoodKind kind) =>
        Assert.DoesNotContain(run[kind], read => read.IsDetected);
}
