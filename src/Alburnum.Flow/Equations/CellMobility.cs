namespace Alburnum.Flow.Equations;

/// <summary>Phase pressures (Pa) and mobilities (1/(Pa·s)) of one cell, with their derivatives by its air pressure and saturation.</summary>
/// <remarks>
/// λ_liquid = k_r,liquid(S)/μ_liquid; λ_air = k_r,air(S)/μ_air · p/p₀, as air is counted at the reference pressure p₀; p_liquid = p − pc(S).
/// </remarks>
internal readonly struct CellMobility
{
    public readonly double AirPa;
    public readonly double LiquidPa;
    public readonly double PullSlope;
    public readonly double Liquid;
    public readonly double LiquidSlope;
    public readonly double Air;
    public readonly double AirByP;
    public readonly double AirByS;

    /// <summary>Works them out.</summary>
    /// <param name="airPa">Air pressure, Pa.</param>
    /// <param name="saturation">Share of the voids that holds liquid.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="warmth">How warm it is.</param>
    public CellMobility(double airPa, double saturation, FluidPair fluids, CellWarmth warmth)
    {
        var (pull, pullSlope) = fluids.Capillary.At(saturation);
        var relative = fluids.Relative.At(saturation);
        var liquid = warmth.FlowsTimes * 1000 / fluids.LiquidMPaS;
        var air = warmth.AirTimes * 1000 / (fluids.AirMPaS * StandardAir.Pa);
        AirPa = airPa;
        LiquidPa = airPa - 1000 * pull;
        PullSlope = 1000 * pullSlope;
        Liquid = liquid * relative.Liquid;
        LiquidSlope = liquid * relative.LiquidSlope;
        AirByP = air * relative.Air;
        Air = AirByP * airPa;
        AirByS = air * relative.AirSlope * airPa;
    }
}
