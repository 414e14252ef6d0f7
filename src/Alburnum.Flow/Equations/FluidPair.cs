using Alburnum.Impregnation;

namespace Alburnum.Flow.Equations;

/// <summary>The two things that share the voids, and how they hinder each other.</summary>
public sealed record FluidPair
{
    /// <summary>Checks the viscosities.</summary>
    /// <param name="liquidMPaS">Viscosity of the liquid, mPa·s. 1e-3 to 1000.</param>
    /// <param name="airMPaS">Viscosity of the air, mPa·s. 1e-6 to 1000.</param>
    /// <param name="relative">Relative permeabilities.</param>
    /// <param name="capillary">Capillary pressure.</param>
    public FluidPair(double liquidMPaS, double airMPaS, RelativePermeability relative, CapillaryCurve capillary)
    {
        LiquidMPaS = Require.InRange(liquidMPaS, 1e-3, 1000, "mPa·s");
        AirMPaS = Require.InRange(airMPaS, 1e-6, 1000, "mPa·s");
        Relative = relative;
        Capillary = capillary;
    }

    /// <summary>A treating liquid and air, as predictions use them.</summary>
    /// <param name="liquid">The liquid.</param>
    /// <param name="cavityRadiusMicrometres">Radius of the cavities that pull the liquid in, µm. 0.1 to 1000.</param>
    public static FluidPair Of(
        TreatingLiquid liquid,
        double cavityRadiusMicrometres = AssumedVoids.CavityRadiusMicrometres
    ) =>
        new(
            liquid.ViscosityMPaS,
            AssumedVoids.AirMPaS,
            RelativePermeability.Usual,
            new CapillaryCurve(
                2 * liquid.SurfaceTensionMNPerM / Require.InRange(cavityRadiusMicrometres, 0.1, 1000, "µm")
            )
        );

    /// <summary>Viscosity of the liquid, mPa·s.</summary>
    public double LiquidMPaS { get; }

    /// <summary>Viscosity of the air, mPa·s.</summary>
    public double AirMPaS { get; }

    /// <summary>Relative permeabilities.</summary>
    public RelativePermeability Relative { get; }

    /// <summary>Capillary pressure.</summary>
    public CapillaryCurve Capillary { get; }
}
