using Alburnum.Impregnation;

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

    /// <summary>Air held, m³ at 101.325 kPa.</summary>
    internal double AirM3 { get; init; }

    /// <summary>Liquid held less what it must be from the start and the flow through the faces, as a share of the voids.</summary>
    public required double LiquidImbalance { get; init; }

    /// <summary>The same for air, at 101.325 kPa.</summary>
    public required double AirImbalance { get; init; }
}

/// <summary>What the flow solver found.</summary>
/// <param name="Ending">How the run ended; anything but <see cref="Completed"/> means the fields stop short of the schedule's end.</param>
/// <param name="Moments">The state after every step, the start first.</param>
/// <param name="Saturation">Share of each cell's voids that holds liquid at the end, 0 to 1 within the tolerance of the steps.</param>
/// <param name="Solution">Share of each cell's voids that holds solution at the end; the rest of the liquid is the wood's own water.</param>
/// <param name="PeakSolution">Greatest such share that each cell ever reached: where solution has been.</param>
/// <param name="ArrivalMinutes">When solution first reached each cell, min: <see cref="ReachedShare"/> of its voids, and <see cref="LeastOfLiquid"/> of its liquid; null where it never did.</param>
/// <param name="AirKPa">Absolute pressure of the air in each cell at the end, kPa.</param>
public sealed record FlowRun(
    FlowEnding Ending,
    IReadOnlyList<FlowMoment> Moments,
    IReadOnlyList<double> Saturation,
    IReadOnlyList<double> Solution,
    IReadOnlyList<double> PeakSolution,
    IReadOnlyList<double?> ArrivalMinutes,
    IReadOnlyList<double> AirKPa
)
{
    /// <summary>Temperature of each cell at the end, °C; null where all was as warm as the solution.</summary>
    public IReadOnlyList<double>? Celsius { get; init; }

    /// <summary>Share of a cell's voids that solution must have filled for the cell to count as reached. Our own choice: a reagent shows less.</summary>
    public const double ReachedShare = 0.2;

    /// <summary>Share of a cell's liquid that must be solution for the cell to count as reached: behind the middle of where it mixes with the wood's own water.</summary>
    public const double LeastOfLiquid = 0.5;

    /// <summary>How deep solution came along a row of cells from a face inwards.</summary>
    /// <param name="steps">Cells in the row.</param>
    /// <param name="cellAt">Cell at a step from the face; null where there is no wood, which does not count.</param>
    /// <param name="length">Length of that step.</param>
    /// <remarks>The last cell reached and the one beyond count by how full they were, compared with the one before: a sharp front stands inside a cell.</remarks>
    internal double ReachedDepth(int steps, Func<int, int?> cellAt, Func<int, double> length)
    {
        List<(int Cell, double Length)> row = [];
        for (var step = 0; step < steps; step++)
            if (cellAt(step) is { } cell)
                row.Add((cell, length(step)));
        double depth = 0,
            behind = 1 - AssumedVoids.TrappedAirShare;
        for (var i = 0; i < row.Count; i++)
        {
            var (isReached, filled) = (ArrivalMinutes[row[i].Cell] is not null, PeakSolution[row[i].Cell]);
            var isBehindFront = isReached && (i + 1 == row.Count || ArrivalMinutes[row[i + 1].Cell] is not null);
            depth += row[i].Length * (isBehindFront ? 1 : Math.Min(1, filled / behind));
            if (!isReached)
                return depth;
            behind = filled;
        }
        return depth;
    }
}
