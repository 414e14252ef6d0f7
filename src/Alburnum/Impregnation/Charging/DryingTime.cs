using Alburnum.Facts;
using Alburnum.Impregnation.Diffusing;

namespace Alburnum.Impregnation.Charging;

/// <summary>How long too wet timber must dry before treatment, by diffusion of moisture in a sheet.</summary>
/// <remarks>
/// The mean moisture falls from M₀ towards the equilibrium Me as Crank's sheet does, with one diffusion coefficient. It leaves
/// out the surface's resistance and the slow coming of free water, so air drying outdoors takes longer: a least time.
/// </remarks>
public static class DryingTime
{
    /// <summary>Diffusion coefficient of moisture across the grain of softwood in air drying, free and bound water together, m²/s.</summary>
    public static Fact<double> SoftwoodDiffusionM2PerS { get; } =
        new(3e-10, new(Standing.FromMemory, "order of magnitude for softwoods in air drying", "", "", "remembered"));

    /// <summary>Days until the mean moisture is down to a limit.</summary>
    /// <param name="thicknessMm">Thickness of the pieces, mm. 0.5 to 2000.</param>
    /// <param name="startPercent">Moisture now, %. Up to 250.</param>
    /// <param name="limitPercent">Moisture wanted, %; below the start, above the equilibrium.</param>
    /// <param name="equilibriumPercent">Moisture that the air leads to, %. 0 to 30.</param>
    /// <param name="diffusionM2PerS">Diffusion coefficient of moisture across the grain, m²/s. 1e-13 to 1e-7.</param>
    public static double Days(
        double thicknessMm,
        double startPercent,
        double limitPercent,
        double equilibriumPercent,
        double diffusionM2PerS
    )
    {
        Require.InRange(equilibriumPercent, 0, 30, "%");
        Require.InRange(startPercent, equilibriumPercent, Ranges.MoisturePercent.High, "%");
        Require.Positive(Require.Within(limitPercent, Ranges.MoisturePercent) - equilibriumPercent, "%");
        Require.InRange(diffusionM2PerS, 1e-13, 1e-7, "m²/s");
        var half = Require.InRange(thicknessMm, Ranges.SectionMm.Low / 2, Ranges.SectionMm.High, "mm") / 2000;
        if (limitPercent >= startPercent)
            return 0;
        var gone = (startPercent - limitPercent) / (startPercent - equilibriumPercent);
        return CrankSheet.TimeNumber(gone) * half * half / diffusionM2PerS / 86400;
    }
}
