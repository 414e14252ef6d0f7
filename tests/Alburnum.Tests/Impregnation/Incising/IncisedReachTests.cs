using Alburnum.Impregnation.Incising;

namespace Alburnum.Tests.Impregnation.Incising;

public class IncisedReachTests
{
    private static readonly double[] Fronts = [0.3, 0.5, 1, 2, 4];
    private static readonly double[] Rows = [12, 8, 6, 4, 3];

    [Fact]
    public void A_denser_pattern_never_reaches_less()
    {
        foreach (var across in new[] { 0.5, 1, 1.5, 2, 3 })
        {
            var reach = Rows.Select(rows =>
                    new IncisedReach(new IncisingPattern(10, 9, 1.2, 27, rows), 6000).UnbrokenMm(across)
                )
                .ToArray();
            Assert.Equal(reach.Order(), reach);
        }
    }

    [Fact]
    public void Deeper_cuts_never_reach_less_on_average() =>
        Assert.All(
            Fronts,
            across =>
            {
                var means = new[] { 4.0, 8, 12, 19 }.Select(depth => Mean(new(depth, 9, 1.2, 27, 6), across)).ToArray();
                Assert.Equal(means.Order(), means);
            }
        );

    [Fact]
    public void A_core_is_never_shallower_than_the_border_between_the_cuts_and_their_mean_is_that_of_the_face()
    {
        var reach = new IncisedReach(new IncisingPattern(10, 9, 1.2, 27, 6), 6000);
        foreach (var across in Fronts)
        {
            var cores = Enumerable.Range(0, 1000).Select(i => reach.CoreMm(across, (i + 0.5) / 1000)).ToList();
            Assert.InRange(cores.Min(), across, reach.UnbrokenMm(across) + 0.1);
            Assert.Equal(cores.Average(), reach.MeanMm(across, double.PositiveInfinity), 0.05 * cores.Average());
        }
    }

    [Fact]
    public void No_more_of_a_depth_counts_than_lies_above_the_limit()
    {
        var reach = new IncisedReach(new IncisingPattern(10, 9, 1.2, 27, 6), 6000);

        Assert.Equal(1, reach.MeanMm(2, withinMm: 1), 1e-9);
        Assert.InRange(reach.MeanMm(2, withinMm: 5), 2, 5);
        Assert.True(reach.MeanMm(2, withinMm: 5) < reach.MeanMm(2, double.PositiveInfinity));
    }

    [Fact]
    public void Cuts_far_from_one_another_leave_the_border_between_them_as_on_a_plain_face() =>
        Assert.Equal(2, new IncisedReach(new IncisingPattern(10, 9, 1.2, 27, 30), 6000).UnbrokenMm(2), 0.01);

    private static double Mean(IncisingPattern pattern, double across) =>
        new IncisedReach(pattern, 6000).MeanMm(across, double.PositiveInfinity);
}
