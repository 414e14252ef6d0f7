using Alburnum.Impregnation;

namespace Alburnum.Flow.Equations;

/// <summary>Boundary condition at the faces: the vessel's pressure at the end of a step (Pa), and the mobilities of its liquid and its air (1/(Pa·s)).</summary>
/// <remarks>The phase that does not touch the wood has no mobility there: it may leave the wood, but none enters.</remarks>
internal readonly record struct VesselBoundary(double Pa, double Liquid, double Air)
{
    /// <summary>A vessel at a pressure, Pa, with air or liquid against the wood, and how warm that is.</summary>
    public static VesselBoundary Of(double pa, Contact contact, FluidPair fluids, CellWarmth warmth) =>
        new(
            pa,
            contact == Contact.Liquid ? warmth.FlowsTimes * 1000 / fluids.LiquidMPaS : 0,
            contact == Contact.Air ? warmth.AirTimes * 1000 * pa / (fluids.AirMPaS * StandardAir.Pa) : 0
        );
}
