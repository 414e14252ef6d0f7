namespace Alburnum.Tests.Shared.ClosedForms;

/// <summary>A sharp liquid front moving straight in from a flat face under constant pressure.</summary>
/// <remarks>
/// Darcy's law behind the front, no resistance ahead of it: x = √(2·k·Δp·t ⁄ (μ·φ)). With air closed in ahead, the air's
/// pressure rises as an ideal gas's and stops the front short. Derivations in docs/science/flow.md.
/// </remarks>
internal static class PlaneFront
{
    /// <summary>Depth reached, mm, with nothing closed in ahead.</summary>
    /// <param name="permeabilityM2">Permeability along the flow, m². Above 0, at most 1e-9.</param>
    /// <param name="pressureKPa">Pressure difference driving the flow, kPa. 0 to 5000.</param>
    /// <param name="minutes">Time under pressure, min. 0 or more.</param>
    /// <param name="viscosityMPaS">Dynamic viscosity, mPa·s. Above 0.</param>
    /// <param name="porosity">Fillable share of the volume. Above 0, at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static double DepthMm(
        double permeabilityM2,
        double pressureKPa,
        double minutes,
        double viscosityMPaS,
        double porosity
    )
    {
        Require.InRange(minutes, 0, 1e7, "min");
        return 1000 * Math.Sqrt(2 * Rate(permeabilityM2, pressureKPa, viscosityMPaS, porosity) * minutes * 60);
    }

    /// <summary>Time to reach a depth, min, with nothing closed in ahead.</summary>
    /// <param name="depthMm">Depth, mm. 0 to 2000.</param>
    /// <param name="permeabilityM2">Permeability along the flow, m². Above 0, at most 1e-9.</param>
    /// <param name="pressureKPa">Pressure difference driving the flow, kPa. Above 0 to 5000.</param>
    /// <param name="viscosityMPaS">Dynamic viscosity, mPa·s. Above 0.</param>
    /// <param name="porosity">Fillable share of the volume. Above 0, at most 1.</param>
    public static double MinutesToDepth(
        double depthMm,
        double permeabilityM2,
        double pressureKPa,
        double viscosityMPaS,
        double porosity
    )
    {
        Require.InRange(depthMm, 0, 2000, "mm");
        Require.Positive(pressureKPa, "kPa");
        var depth = depthMm / 1000;
        return depth * depth / (2 * Rate(permeabilityM2, pressureKPa, viscosityMPaS, porosity)) / 60;
    }

    /// <summary>Share of a dead-end depth that liquid fills in the end: 1 − p₀/p, both absolute; 0 where p ≤ p₀.</summary>
    /// <param name="initialAirKPa">Absolute pressure of the air before flooding, kPa. 0 to 5000.</param>
    /// <param name="liquidKPa">Absolute pressure of the liquid, kPa. Above 0 to 5000.</param>
    public static double FillLimit(double initialAirKPa, double liquidKPa)
    {
        Require.InRange(initialAirKPa, 0, 5000, "kPa");
        Require.Positive(liquidKPa, "kPa");
        return Math.Max(0, 1 - initialAirKPa / liquidKPa);
    }

    /// <summary>Time to reach a depth, min, with air closed in between the front and a dead end.</summary>
    /// <param name="depthMm">Depth, mm. 0 up to, not including, the limit (1 − p₀/p) of the dead end's depth.</param>
    /// <param name="deadEndMm">Depth of the dead end: half the thickness of a piece wetted on both sides, mm.</param>
    /// <param name="permeabilityM2">Permeability along the flow, m². Above 0, at most 1e-9.</param>
    /// <param name="kPa">Absolute pressures, kPa: of the air before flooding, 0 or more, and of the liquid, above it, to 5000.</param>
    /// <param name="viscosityMPaS">Dynamic viscosity, mPa·s. Above 0.</param>
    /// <param name="porosity">Fillable share of the volume. Above 0, at most 1.</param>
    /// <remarks>
    /// Integral of x dx/(p − p₀L/(L − x)): with s = L(1 − p₀/p),
    /// t = (μφ/kp)·[x²/2 − (L − s)·x − s·(L − s)·ln(1 − x/s)]. Isothermal ideal gas, none escaping.
    /// </remarks>
    public static double MinutesToDepthAgainstAir(
        double depthMm,
        double deadEndMm,
        double permeabilityM2,
        (double InitialAir, double Liquid) kPa,
        double viscosityMPaS,
        double porosity
    )
    {
        var length = Require.Positive(deadEndMm, "mm") / 1000;
        var limit = length * FillLimit(kPa.InitialAir, kPa.Liquid);
        var depth = depthMm / 1000;
        Require.InRange(depthMm, 0, 1000 * limit * (1 - 1e-12), "mm");
        var gap = length - limit;
        var integral = depth * depth / 2 - gap * depth - (gap > 0 ? limit * gap * Math.Log(1 - depth / limit) : 0);
        return integral / Rate(permeabilityM2, kPa.Liquid, viscosityMPaS, porosity) / 60;
    }

    // k·Δp/(μ·φ), m²/s.
    private static double Rate(double permeabilityM2, double pressureKPa, double viscosityMPaS, double porosity)
    {
        Require.InRange(permeabilityM2, double.Epsilon, 1e-9, "m²");
        Require.InRange(pressureKPa, 0, 5000, "kPa");
        Require.Positive(viscosityMPaS, "mPa·s");
        Require.InRange(porosity, double.Epsilon, 1, "(share)");
        return permeabilityM2 * pressureKPa * 1000 / (viscosityMPaS / 1000 * porosity);
    }
}
