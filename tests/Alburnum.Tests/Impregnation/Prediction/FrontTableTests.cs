using Alburnum.Impregnation.Prediction;
using CsCheck;

namespace Alburnum.Tests.Impregnation.Prediction;

/// <summary>Reading between runs, with a front that goes in as the root of κ in place of the solver; Alburnum.Flow.Tests holds it against the solver.</summary>
public class FrontTableTests
{
    private const double Voids = 0.6;

    private static FrontTable Root(Action? solved = null) =>
        new(way =>
        {
            solved?.Invoke();
            var reached = Math.Min(1, 1e6 * Math.Sqrt(way.Scaled) * (1 + 0.2 * way.Narrowing));
            return new(reached, 0.9 * reached, [0, reached / 2, 1], [0, 0.45 * reached, 0.9 * reached]);
        });

    // Where the front meets the end of the way its course has a kink, which a straight line between two runs cuts: with eight runs a decade
    // of κ the front moves by 15 % from run to run, and the line lies at most a quarter of that, 4 %, below the kink.
    [Fact]
    public void Between_runs_and_below_them_it_stays_with_the_front() =>
        Gen.Select(Gen.Double[-50, -30], Gen.Double[10, 200])
            .Sample(
                (ln, way) =>
                {
                    var k = Math.Exp(ln);
                    var free = 1e9 * Math.Sqrt(k / Voids);
                    var expected = Math.Min(way, free);
                    var isAtTheEnd = free > 0.85 * way && free < 1.16 * way;
                    Assert.Equal(expected, Root().DepthMm(k, Voids, way), (isAtTheEnd ? 0.04 : 0.005) * expected);
                }
            );

    [Fact]
    public void Permeability_is_found_again_from_the_depth() =>
        Gen.Select(Gen.Double[0.01, 40], Gen.Double[50, 100])
            .Sample(
                (depth, way) =>
                {
                    var front = Root();
                    var k = front.PermeabilityM2(depth, Voids, way);
                    Assert.Equal(depth, front.DepthMm(k, Voids, way), 1e-5 * depth);
                }
            );

    [Fact]
    public void A_way_that_narrows_by_half_lies_half_way_between()
    {
        var front = Root();
        double Reached(double narrowing) => front.At(1e-18, Voids, 50, narrowing).Reached;

        Assert.Equal((Reached(0) + Reached(1)) / 2, Reached(0.5), 1e-12);
        Assert.True(Reached(1) > Reached(0));
    }

    [Fact]
    public void All_that_is_kept_lies_within_the_way_and_none_within_no_depth() =>
        Gen.Double[-60, -25]
            .Sample(ln =>
            {
                var way = Root().At(Math.Exp(ln), Voids, 50, 0);
                Assert.Equal(way.Net, way.KeptWithin(1), 1e-9);
                Assert.Equal(0, way.KeptWithin(0), 1e-12);
                Assert.InRange(way.KeptWithin(0.3), 0, way.Net + 1e-12);
            });

    [Fact]
    public void The_solver_is_run_for_what_is_read_only_and_once()
    {
        var runs = 0;
        var front = Root(() => runs++);
        for (var i = 0; i < 10; i++)
            front.DepthMm(1e-18, Voids, 50);

        Assert.Equal(2, runs);
    }
}
