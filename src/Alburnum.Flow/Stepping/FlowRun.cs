using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Stepping;

/// <summary>Wood ready to be flooded.</summary>
/// <param name="Mesh">Cells, connections, faces.</param>
/// <param name="Fluids">Liquid and air.</param>
/// <param name="InitialSaturation">Share of each cell's voids that already holds water, 0 to 1.</param>
/// <param name="InitialAirKPa">Absolute pressure of the air inside, kPa.</param>
public sealed record FlowProblem(
    FlowMesh Mesh,
    FluidPair Fluids,
    IReadOnlyList<double> InitialSaturation,
    double InitialAirKPa = Schedule.AtmosphereKPa
)
{
    /// <summary>Wood without free water, air inside at the pressure outside.</summary>
    public static FlowProblem Dry(FlowMesh mesh, FluidPair fluids, double initialAirKPa = Schedule.AtmosphereKPa) =>
        new(mesh, fluids, new double[mesh.CellCount], initialAirKPa);
}

/// <summary>The state of the whole piece at the end of one step.</summary>
/// <param name="Minutes">Time since the start, min.</param>
/// <param name="Stage">Stage of the schedule.</param>
/// <param name="VesselKPa">Absolute pressure in the vessel, kPa.</param>
/// <param name="LiquidM3">Liquid held, m³.</param>
/// <param name="GainedM3">Liquid that came in through the faces since the start, m³, less what left.</param>
/// <param name="AirM3">Air held, m³ at 101.325 kPa.</param>
/// <param name="LiquidImbalance">Liquid held less what it must be from the start and the flow through the faces, as a share of the voids.</param>
/// <param name="AirImbalance">The same for air, at 101.325 kPa.</param>
/// <param name="NewtonIterations">Newton iterations of the step.</param>
public sealed record FlowMoment(
    double Minutes,
    string Stage,
    double VesselKPa,
    double LiquidM3,
    double GainedM3,
    double AirM3,
    double LiquidImbalance,
    double AirImbalance,
    int NewtonIterations
);

/// <summary>What the flow solver found.</summary>
/// <param name="Ending">How the run ended; anything but <see cref="Settled"/> means the fields stop short of the schedule's end.</param>
/// <param name="Moments">The state after every step, the start first.</param>
/// <param name="Saturation">Share of each cell's voids that holds liquid at the end, 0 to 1 within the tolerance of the steps.</param>
/// <param name="PeakGain">Greatest saturation above the initial one that each cell ever reached: where solution has been.</param>
/// <param name="ArrivalMinutes">When each cell's gain first passed a half, min; null where it never did.</param>
/// <param name="AirKPa">Absolute pressure of the air in each cell at the end, kPa.</param>
public sealed record FlowRun(
    FlowEnding Ending,
    IReadOnlyList<FlowMoment> Moments,
    IReadOnlyList<double> Saturation,
    IReadOnlyList<double> PeakGain,
    IReadOnlyList<double?> ArrivalMinutes,
    IReadOnlyList<double> AirKPa
)
{
    /// <summary>Gain of saturation from which a cell counts as reached.</summary>
    public const double ReachedGain = 0.5;

    /// <summary>Most liquid gained at any moment, m³: the gross uptake.</summary>
    public double GrossM3 => Moments.Max(moment => moment.GainedM3);

    /// <summary>Liquid gained at the end, m³: the net uptake.</summary>
    public double NetM3 => Moments[^1].GainedM3;
}
