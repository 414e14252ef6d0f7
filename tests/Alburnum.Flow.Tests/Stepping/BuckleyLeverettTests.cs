using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;

namespace Alburnum.Flow.Tests.Stepping;

/// <summary>One liquid driving out another fluid that hardly compresses, in a column with an open end (Buckley and Leverett 1942).</summary>
public class BuckleyLeverettTests
{
    private const double Length = 0.1;
    private const double Voids = 0.6;
    private const double K = 1e-14;
    private const double Liquid = 1.0;
    private const double Other = 0.5;
    private static readonly int[] Grids = [50, 100, 200, 400];
    private static readonly RelativePermeability Relative = new(2, 2, 0);

    [Fact]
    public void The_front_stands_where_the_fractional_flow_puts_it()
    {
        var (profile, injected) = Solve(400);
        var expected = FrontShare(injected);

        // Half-way up the shock, between cell middles.
        var shock = ShockSaturation();
        var at = profile.FindIndex(saturation => saturation < shock / 2);
        Assert.Equal(expected, (double)at / 400, 0.01);
    }

    [Fact]
    public void The_saturation_profile_converges_at_first_order()
    {
        var errors = Grids.Select(Error).ToArray();

        // Between two grids it also counts where in a cell the front happens to stand.
        Assert.InRange(Math.Log2(errors[0] / errors[^1]) / Math.Log2((double)Grids[^1] / Grids[0]), 0.6, 1.3);
    }

    private static double Error(int cells)
    {
        var (profile, injected) = Solve(cells);
        double sum = 0;
        for (var i = 0; i < cells; i++)
            sum += Math.Abs(profile[i] - Exact((i + 0.5) / cells, injected)) / cells;
        return sum;
    }

    // Far above the pressure drop the air hardly compresses; a last cell a million times larger is the open end.
    private static (List<double> Profile, double Injected) Solve(int cells)
    {
        var line = LineMesh.Flat(1000 * Length, cells, _ => K, Voids);
        var width = Length / cells;
        var joins = Enumerable.Range(0, cells).Select(i => (i, i + 1, i + 1 < cells ? K / width : 2 * K / width));
        var mesh = new FlowMesh([.. line.VoidM3.ToArray(), 1e6 * Length], [.. joins], [(0, 2 * K / width)]);
        var fluids = new FluidPair(Liquid, Other, Relative, new CapillaryCurve(0));
        var run = Flows.Run(
            DryWood.Of(mesh, fluids, 4900),
            Flows.Hold(4910, 400),
            // The time step shrinks with the cells, so that both errors fall together.
            new StepControl(firstSeconds: 1, growth: 2, greatestSeconds: 24_000.0 / cells / 2)
        );
        Assert.IsType<Completed>(run.Ending);
        return ([.. run.Saturation.Take(cells)], run.Moments[^1].GainedM3 / (Length * Voids));
    }

    private static double Exact(double x, double injected)
    {
        if (x > FrontShare(injected))
            return 0;
        double low = ShockSaturation(),
            high = 1;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (injected * Slope(middle) > x)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    private static double FrontShare(double injected) => injected * Slope(ShockSaturation());

    // Welge's tangent from the dry state: f(S)/S = f′(S).
    private static double ShockSaturation()
    {
        double low = 0.2,
            high = 0.99;
        for (var i = 0; i < 80; i++)
        {
            var middle = (low + high) / 2;
            if (Fraction(middle) / middle < Slope(middle))
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    private static double Fraction(double s) => s * s / Liquid / (s * s / Liquid + (1 - s) * (1 - s) / Other);

    private static double Slope(double s) => (Fraction(s + 1e-6) - Fraction(s - 1e-6)) / 2e-6;
}
