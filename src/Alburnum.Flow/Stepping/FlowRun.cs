namespace Alburnum.Flow.Stepping;

/// <summary>The state of the whole piece at the end of one step.</summary>
public sealed record FlowMoment
{
    /// <summary>Time since the start, min.</summary>
    public required double Minutes { get; init; }

    /// <summary>Absolute pressure in the vessel, kPa.</summary>
    public required double VesselKPa { get; init; }

    /// <summary>Liquid that came in through the faces since the start, m³, less what left.</summary>
    public required double GainedM3 { get; init; }

    /// <summary>Liquid held less what it must be from the start and the flow through the faces, as a share of the voids.</summary>
    public required double LiquidImbalance { get; init; }

    /// <summary>The same for air, at 101.325 kPa.</summary>
    public required double AirImbalance { get; init; }
}

/// <summary>What the flow solver found.</summary>
/// <param name="Ending">How the run ended; anything but <see cref="Completed"/> means the fields stop short of the schedule's end.</param>
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
}
