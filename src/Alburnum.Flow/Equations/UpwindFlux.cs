using System.Runtime.CompilerServices;

namespace Alburnum.Flow.Equations;

/// <summary>Two-point upwind flux of both phases across a connection in a step, m³ (air at the reference pressure), with its derivatives by either side's unknowns.</summary>
/// <remarks>
/// F = t·λ_up·(p₁ − p₂) for each phase, λ taken from the side that the phase comes from. Derivatives are exact; liquid by pressure is the
/// same for both sides but for the sign. Aziz and Settari, Petroleum Reservoir Simulation (1979), on upstream weighting.
/// </remarks>
internal readonly ref struct UpwindFlux
{
    public readonly double Liquid;
    public readonly double LiquidByP;
    public readonly double LiquidByS1;
    public readonly double LiquidByS2;
    public readonly double Air;
    public readonly double AirByP1;
    public readonly double AirByP2;
    public readonly double AirByS1;
    public readonly double AirByS2;

    /// <summary>From one cell to its neighbour.</summary>
    /// <param name="a">The cell.</param>
    /// <param name="b">The neighbour.</param>
    /// <param name="t">Conductance times the length of the step, m³·s.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public UpwindFlux(in CellMobility a, in CellMobility b, double t)
    {
        var liquidDrop = t * (a.LiquidPa - b.LiquidPa);
        if (liquidDrop >= 0)
        {
            LiquidByP = t * a.Liquid;
            Liquid = a.Liquid * liquidDrop;
            LiquidByS1 = a.LiquidSlope * liquidDrop - LiquidByP * a.PullSlope;
            LiquidByS2 = LiquidByP * b.PullSlope;
        }
        else
        {
            LiquidByP = t * b.Liquid;
            Liquid = b.Liquid * liquidDrop;
            LiquidByS1 = -LiquidByP * a.PullSlope;
            LiquidByS2 = b.LiquidSlope * liquidDrop + LiquidByP * b.PullSlope;
        }
        var airDrop = t * (a.AirPa - b.AirPa);
        if (airDrop >= 0)
        {
            Air = a.Air * airDrop;
            AirByP1 = t * a.Air + a.AirByP * airDrop;
            AirByP2 = -t * a.Air;
            AirByS1 = a.AirByS * airDrop;
        }
        else
        {
            Air = b.Air * airDrop;
            AirByP1 = t * b.Air;
            AirByP2 = -t * b.Air + b.AirByP * airDrop;
            AirByS2 = b.AirByS * airDrop;
        }
    }

    /// <summary>From one cell out to the vessel; the vessel has no unknowns.</summary>
    /// <param name="a">The cell.</param>
    /// <param name="vessel">What the vessel holds.</param>
    /// <param name="t">Conductance times the length of the step, m³·s.</param>
    public UpwindFlux(in CellMobility a, in VesselBoundary vessel, double t)
    {
        var liquidDrop = t * (a.LiquidPa - vessel.Pa);
        var liquid = liquidDrop > 0 ? a.Liquid : vessel.Liquid;
        LiquidByP = t * liquid;
        Liquid = liquid * liquidDrop;
        LiquidByS1 = (liquidDrop > 0 ? a.LiquidSlope * liquidDrop : 0) - LiquidByP * a.PullSlope;

        var airDrop = t * (a.AirPa - vessel.Pa);
        var air = airDrop > 0 ? a.Air : vessel.Air;
        Air = air * airDrop;
        AirByP1 = t * air + (airDrop > 0 ? a.AirByP * airDrop : 0);
        AirByS1 = airDrop > 0 ? a.AirByS * airDrop : 0;
    }
}
