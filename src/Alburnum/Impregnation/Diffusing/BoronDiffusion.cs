using MathNet.Numerics;

namespace Alburnum.Impregnation.Diffusing;

/// <summary>How far a boron salt spreads in damp wood from a face held at one concentration.</summary>
/// <remarks>
/// C/Cs = erfc(x/2√(Dt)) in thick wood. No table of the coefficient against moisture and temperature was found, so it is an
/// input; depths scale with √t whatever it is.
/// </remarks>
public static class BoronDiffusion
{
    /// <summary>Depth to which the concentration is at least a share of the surface's, mm.</summary>
    /// <param name="diffusionM2PerS">Diffusion coefficient, m²/s. 1e-15 to 1e-8.</param>
    /// <param name="days">Time, days. 0 or more.</param>
    /// <param name="share">Share of the surface's concentration that counts as reached, above 0, below 1.</param>
    public static double DepthMm(double diffusionM2PerS, double days, double share)
    {
        Require.InRange(diffusionM2PerS, 1e-15, 1e-8, "m²/s");
        Require.InRange(days, 0, 1e5, "days");
        Require.InRange(share, 1e-9, 1 - 1e-9, "(share)");
        return 2000 * SpecialFunctions.ErfcInv(share) * Math.Sqrt(diffusionM2PerS * days * 86400);
    }

    /// <summary>Depth at another time from one that was observed: √t.</summary>
    /// <param name="observedMm">Depth observed, mm.</param>
    /// <param name="observedDays">When, days. Above 0.</param>
    /// <param name="days">Time asked for, days.</param>
    public static double ScaledMm(double observedMm, double observedDays, double days) =>
        Require.InRange(observedMm, 0, 1e4, "mm")
        * Math.Sqrt(Require.InRange(days, 0, 1e5, "days") / Require.Positive(observedDays, "days"));

    /// <summary>Share of a leachable salt that a piece in constant water has lost, 0 to 1: diffusion outwards from a sheet.</summary>
    /// <param name="diffusionM2PerS">Diffusion coefficient, m²/s.</param>
    /// <param name="days">Time in water, days.</param>
    /// <param name="thicknessMm">Thickness, mm.</param>
    public static double LeachedShare(double diffusionM2PerS, double days, double thicknessMm)
    {
        Require.InRange(diffusionM2PerS, 1e-15, 1e-8, "m²/s");
        Require.InRange(days, 0, 1e5, "days");
        var half = Require.InRange(thicknessMm, 0.1, 2000, "mm") / 2000;
        return CrankSheet.Uptake(diffusionM2PerS * days * 86400 / (half * half));
    }
}
