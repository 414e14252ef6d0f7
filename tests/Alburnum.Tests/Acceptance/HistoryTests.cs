using Alburnum.Acceptance.History;
using CsCheck;

namespace Alburnum.Tests.Acceptance;

public class HistoryTests
{
    private static List<(WatchState State, Signals Signals)> Follow(
        IEnumerable<double> values,
        WatchRules? rules = null
    )
    {
        List<(WatchState, Signals)> followed = [];
        var state = default(WatchState);
        foreach (var value in values)
        {
            (state, var signals) = Watch.Next(state, value, rules ?? WatchRules.Usual);
            followed.Add((state, signals));
        }
        return followed;
    }

    /// <summary>A level series that wanders by one either way: mean 10, mean step 2.</summary>
    private static IEnumerable<double> Level(int charges) =>
        Enumerable.Range(0, charges).Select(i => i % 2 == 0 ? 9.0 : 11);

    [Fact]
    public void A_level_plant_signals_nothing() =>
        Assert.All(Follow(Level(500)), step => Assert.Equal(Signals.None, step.Signals));

    [Fact]
    public void Six_falling_charges_are_a_drift()
    {
        var steps = Follow([10, 10.4, 10.1, 9.8, 9.2, 9.0, 8.8]);

        Assert.Equal(Signals.DriftDown, steps[^1].Signals);
        Assert.Equal(1.6, steps[^1].State.DriftFrom - steps[^1].State.Latest, 1e-9);
    }

    [Fact]
    public void A_charge_far_out_is_signalled_at_once()
    {
        var steps = Follow([.. Level(25), 4.0]);

        Assert.True(steps[^1].Signals.HasFlag(Signals.FarOut));
    }

    [Fact]
    public void A_lasting_shift_of_one_spread_is_found_by_both_charts()
    {
        var shifted = Level(60).Select(value => value - 1.8);
        var signals = Follow([.. Level(26), .. shifted]).Aggregate(Signals.None, (all, step) => all | step.Signals);

        Assert.True(signals.HasFlag(Signals.ShiftDown));
        Assert.True(signals.HasFlag(Signals.AverageLow));
        Assert.False(signals.HasFlag(Signals.ShiftUp));
    }

    [Fact]
    public void Nine_charges_on_one_side_are_a_run()
    {
        var steps = Follow([.. Level(27), .. Enumerable.Repeat(10.4, 9)]);

        Assert.True(steps[^1].Signals.HasFlag(Signals.OneSided));
        Assert.False(steps[^2].Signals.HasFlag(Signals.OneSided));
    }

    [Fact]
    public void Charges_below_the_limit_are_counted_and_said()
    {
        var steps = Follow([7, 5, 8], WatchRules.Usual with { LowerLimit = 6 });

        Assert.Equal(Signals.BelowLimit, steps[1].Signals);
        Assert.Equal(1, steps[2].State.BelowLimit);
    }

    [Fact]
    public void Streaming_mean_and_spread_are_those_of_the_whole_series() =>
        Gen.Double[-50, 50]
            .Array[2, 100]
            .Sample(
                values =>
                {
                    var state = Follow(values)[^1].State;
                    var mean = values.Average();

                    Assert.Equal(mean, state.Mean, 1e-9);
                    Assert.Equal(
                        Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1)),
                        state.StandardDeviation,
                        1e-9
                    );
                    Assert.Equal(values.Min(), state.Least);
                    Assert.Equal(values.Max(), state.Greatest);
                },
                iter: 300
            );

    [Fact]
    public void False_signals_come_as_rarely_as_stated()
    {
        // Normal charges whose mean and spread are known: the EWMA alone must signal about once in 500.
        var random = new Random(11);
        double Gauss() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var chart = EwmaChart.Usual;
        const int charges = 1_000_000;
        var (average, signals) = (0.0, 0);
        for (var i = 0; i < charges; i++)
        {
            average = chart.Next(average, Gauss());
            if (Math.Abs(average) > chart.Limit)
                (average, signals) = (0, signals + 1);
        }

        // About 2000 signals, so about 2 % either way is one standard deviation.
        Assert.Equal(AverageRunLength.Of(chart, 0), (double)charges / signals, 40.0);
    }

    [Fact]
    public void Capability_against_a_limit_is_the_distance_in_threes()
    {
        var capability = Capability.Of(50, 9, 1, 6);

        Assert.Equal(1, capability.Index, 1e-12);
        Assert.InRange(capability.LowerBound, 0.78, 0.86);
        Assert.Equal(0.00135, capability.ShareBelow, 1e-5);
        // Beyond the exact range the bound goes on without a jump.
        Assert.Equal(Capability.Of(2000, 9, 1, 6).LowerBound, Capability.Of(2001, 9, 1, 6).LowerBound, 1e-3);
    }

    [Fact]
    public void A_run_chart_keeps_every_charge_in_a_bounded_number_of_marks() =>
        Gen.Double[-5, 5]
            .Array[1, 3000]
            .Sample(
                values =>
                {
                    var chart = new RunChart(50);
                    foreach (var value in values)
                        chart.Add(value, value > 4);

                    Assert.InRange(chart.Marks.Count, 1, 50);
                    Assert.Equal(values.Length, chart.Marks.Sum(mark => mark.Charges));
                    Assert.Equal(values.Count(value => value > 4), chart.Marks.Sum(mark => mark.Signalled));
                    Assert.Equal(values.Min(), chart.Marks.Min(mark => mark.Least));
                    Assert.Equal(values.Max(), chart.Marks.Max(mark => mark.Greatest));
                    Assert.Equal(values.Sum(), chart.Marks.Sum(mark => mark.Mean * mark.Charges), 1e-6);
                },
                iter: 100
            );
}
