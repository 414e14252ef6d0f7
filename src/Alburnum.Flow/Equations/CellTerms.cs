namespace Alburnum.Flow.Equations;

/// <summary>What one cell brings to its connections: pressures (Pa), and how readily it lets go of liquid and air (1/(Pa·s)).</summary>
/// <remarks>Air is counted at the reference pressure, so that what a cell lets go of grows with its pressure.</remarks>
internal readonly struct CellTerms
{
    public readonly double AirPa;
    public readonly double LiquidPa;
    public readonly double PullSlope;
    public readonly double Liquid;
    public readonly double LiquidSlope;
    public readonly double Air;
    public readonly double AirByP;
    public readonly double AirByS;

    /// <summary>A cell's terms.</summary>
    /// <param name="airPa">Air pressure, Pa.</param>
    /// <param name="saturation">Share of the voids that holds liquid.</param>
    /// <param name="fluids">Liquid and air.</param>
    public CellTerms(double airPa, double saturation, FluidPair fluids)
    {
        var (pull, pullSlope) = fluids.Capillary.At(saturation);
        var relative = fluids.Relative.At(saturation);
        var liquid = 1000 / fluids.LiquidMPaS;
        var air = 1000 / (fluids.AirMPaS * FlowTerms.ReferencePa);
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
