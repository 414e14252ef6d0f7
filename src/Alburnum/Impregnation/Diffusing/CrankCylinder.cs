using MathNet.Numerics;

namespace Alburnum.Impregnation.Diffusing;

/// <summary>Diffusion into a round piece from its surface, held at a constant concentration (Crank 1975, chapter 5).</summary>
/// <remarks>The time number is D·t/a², a the radius. Sums over the zeros of the Bessel function J₀.</remarks>
public static class CrankCylinder
{
    private const int Terms = 200;
    private static readonly double[] Zeros = [.. Enumerable.Range(1, Terms).Select(Zero)];

    /// <summary>Share of the final uptake, 0 to 1.</summary>
    /// <param name="timeNumber">D·t/a². 0 or more.</param>
    public static double Uptake(double timeNumber)
    {
        Require.InRange(timeNumber, 0, double.MaxValue, "");
        if (timeNumber < 1e-4)
            return 4 * Math.Sqrt(timeNumber / Math.PI) - timeNumber;
        double sum = 0;
        foreach (var zero in Zeros)
            sum += 4 / (zero * zero) * Math.Exp(-zero * zero * timeNumber);
        return 1 - sum;
    }

    /// <summary>Concentration in the middle as a share of the surface's.</summary>
    /// <param name="timeNumber">D·t/a². Above 0.</param>
    public static double Middle(double timeNumber)
    {
        Require.InRange(timeNumber, 1e-4, double.MaxValue, "");
        double sum = 0;
        foreach (var zero in Zeros)
            sum += Math.Exp(-zero * zero * timeNumber) / (zero * SpecialFunctions.BesselJ(1, zero));
        return Math.Clamp(1 - 2 * sum, 0, 1);
    }

    // McMahon's expansion, then Newton's method (J₀′ = −J₁).
    private static double Zero(int n)
    {
        var b = (n - 0.25) * Math.PI;
        var x = b + 1 / (8 * b);
        for (var i = 0; i < 8; i++)
            x += SpecialFunctions.BesselJ(0, x) / SpecialFunctions.BesselJ(1, x);
        return x;
    }
}
