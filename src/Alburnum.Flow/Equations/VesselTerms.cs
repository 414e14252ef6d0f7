using Alburnum.Impregnation;

namespace Alburnum.Flow.Equations;

/// <summary>What the vessel holds at the end of a step: its pressure (Pa), and how readily its liquid and its air enter (1/(Pa·s)).</summary>
internal readonly record struct VesselTerms(double Pa, double Liquid, double Air)
{
    /// <summary>A vessel at a pressure, Pa, with air or liquid against the wood.</summary>
    public static VesselTerms Of(double pa, Contact contact, FluidPair fluids) =>
        new(
            pa,
            contact == Contact.Liquid ? 1000 / fluids.LiquidMPaS : 0,
            contact == Contact.Air ? 1000 * pa / (fluids.AirMPaS * FlowTerms.ReferencePa) : 0
        );
}
