using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Tests;

internal static class DryWood
{
    /// <summary>Wood without free water, air inside at the pressure outside.</summary>
    public static FlowProblem Of(FlowMesh mesh, FluidPair fluids, double initialAirKPa = Schedule.AtmosphereKPa) =>
        new(mesh, fluids, new double[mesh.CellCount], initialAirKPa);
}
