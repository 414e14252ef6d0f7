using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Stepping;

/// <summary>Wood ready to be flooded.</summary>
/// <param name="Mesh">Cells, connections, faces.</param>
/// <param name="Fluids">Liquid and air.</param>
/// <param name="InitialSaturation">Share of each cell's voids that already holds water, 0 to 1.</param>
/// <param name="InitialAirKPa">Absolute pressure of the air inside, kPa.</param>
/// <param name="Heat">What warms or cools it; null where all is as warm as the solution.</param>
public sealed record FlowProblem(
    FlowMesh Mesh,
    FluidPair Fluids,
    IReadOnlyList<double> InitialSaturation,
    double InitialAirKPa = Schedule.AtmosphereKPa,
    WarmedWood? Heat = null
);
