using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;

namespace Alburnum.Flow.Tests.Stepping;

/// <summary>Liquid drawn in by capillarity while the other fluid comes out of the same face (McWhorter and Sunada 1990).</summary>
public class CounterCurrentImbibitionTests
{
    private const double K = 1e-14;
    private const double Voids = 0.6;
    private const double LiquidPaS = 1e-3;
    private const double OtherPaS = 1e-3;
    private static readonly RelativePermeability Relative = new(2, 2, 0);
    private static readonly CapillaryCurve Capillary = new(20);

    [Fact]
    public void Uptake_follows_the_integral_solution_within_3_percent()
    {
        const double minutes = 2;
        var mesh = LineMesh.Flat(25, 1000, _ => K, Voids);
        var fluids = new FluidPair(1000 * LiquidPaS, 1000 * OtherPaS, Relative, Capillary);
        var start = Enumerable.Repeat(Start, mesh.CellCount).ToArray();
        var run = Flows.Run(
            new FlowProblem(mesh, fluids, start, 4900 + Capillary.At(1).KPa),
            Flows.Hold(4900, minutes),
            new StepControl(firstSeconds: 0.01, growth: 1.05)
        );

        Assert.IsType<Completed>(run.Ending);
        Assert.True(run.Saturation[^1] < Start + 1e-3, "The front must not have met the far end.");
        var expected = 2 * Math.Sqrt(RateSquared()) * Math.Sqrt(minutes * 60);
        Assert.Equal(expected, run.Moments[^1].GainedM3, 0.03 * expected);
    }

    private const double Start = 0.1;
    private const int Points = 2000;

    // A² = φ/2 ∫ (S − Si)·D/F dS, F found by repeated substitution; D = k·λw·λn/(λw + λn)·|pc′|.
    private static double RateSquared()
    {
        var width = (1 - Start) / Points;
        var s = Enumerable.Range(0, Points).Select(i => Start + (i + 0.5) * width).ToArray();
        var diffusivity = s.Select(Diffusivity).ToArray();
        var f = s.Select(value => (value - Start) / (1 - Start)).Select(value => Math.Max(value, 1e-6)).ToArray();
        double whole = 0;
        for (var round = 0; round < 200; round++)
        {
            whole = 0;
            for (var i = 0; i < Points; i++)
                whole += (s[i] - Start) * diffusivity[i] / f[i] * width;
            // ∫ from S upward of (β − S)·D/F, summed from the top: first moment less S times the zeroth.
            double zeroth = 0,
                first = 0;
            for (var i = Points - 1; i >= 0; i--)
            {
                zeroth += diffusivity[i] / f[i] * width;
                first += s[i] * diffusivity[i] / f[i] * width;
                f[i] = Math.Max(1e-9, 1 - (first - s[i] * zeroth) / whole);
            }
        }
        return Voids / 2 * whole;
    }

    private static double Diffusivity(double s)
    {
        var (w, n) = (Relative.At(s).Liquid / LiquidPaS, Relative.At(s).Air / OtherPaS);
        var slope = 1000 * (Capillary.At(s - 1e-6).KPa - Capillary.At(s + 1e-6).KPa) / 2e-6;
        return K * w * n / (w + n) * slope;
    }
}
