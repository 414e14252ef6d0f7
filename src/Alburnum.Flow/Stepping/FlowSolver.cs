using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Stepping;

/// <summary>Carries a piece of wood through a schedule: liquid and trapped air, step by step, implicit and of second order in time.</summary>
/// <remarks>
/// Each step solves the balances at its end, and those of its two halves, by Newton's method with exact derivatives. What a step leaves out of
/// balance (below the tolerance) is carried into the next one, so that the account of liquid and air stays true to round-off.
/// Equations, limits and checks in docs/science/flow.md. Air does not dissolve; no vapour; gravity is left out.
/// </remarks>
public static class FlowSolver
{
    /// <summary>Runs the schedule.</summary>
    /// <param name="problem">The wood.</param>
    /// <param name="schedule">The vessel's pressure history.</param>
    /// <param name="control">Steps and tolerance.</param>
    /// <param name="progress">Told the share of the schedule done, 0 to 1; null where nobody listens.</param>
    /// <param name="cancellation">Stops between Newton iterations.</param>
    /// <exception cref="ArgumentOutOfRangeException">A saturation or pressure out of range, or a wrong number of saturations.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static FlowRun Run(
        FlowProblem problem,
        Schedule schedule,
        StepControl control,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        Check(problem);
        return Run(problem, schedule, control, TwoWayPartition.Usual, progress, cancellation);
    }

    /// <summary>Runs the schedule with the cells shared between two cores in one way or another.</summary>
    internal static FlowRun Run(
        FlowProblem problem,
        Schedule schedule,
        StepControl control,
        TwoWayPartition partition,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        var order = LevelSchedule.Of(problem.Mesh, partition);
        var ordered = problem with
        {
            Mesh = order.Ordered(problem.Mesh),
            InitialSaturation = order.Ordered<double>([.. problem.InitialSaturation]),
            Heat = problem.Heat is { } heat ? heat with { Mesh = order.Ordered(heat.Mesh) } : null,
        };
        // A line is solved exactly, in double precision. Elsewhere single precision is tried first, as Newton's next iteration makes good
        // what a rough answer leaves over; it does not carry where cells level out within a ten-millionth of a step.
        if (!problem.Mesh.IsLine)
        {
            var single = new TimeStepping<float>(ordered, control, partition, cancellation).Through(schedule, progress);
            if (single.Ending is not SinglePrecisionExhausted)
                return Own(single, order);
        }
        return Own(
            new TimeStepping<double>(ordered, control, partition, cancellation).Through(schedule, progress),
            order
        );
    }

    private static void Check(FlowProblem problem)
    {
        Require.InRange(
            problem.InitialSaturation.Count,
            problem.Mesh.CellCount,
            problem.Mesh.CellCount,
            "saturations, one a cell"
        );
        Require.InRange(problem.InitialAirKPa, 1e-6, 5000, "kPa");
        foreach (var saturation in problem.InitialSaturation)
            Require.InRange(saturation, 0, 1, "(share of the voids)", nameof(problem.InitialSaturation));
    }

    // The answer by the cells' own numbers.
    private static FlowRun Own(FlowRun run, LevelSchedule order) =>
        run with
        {
            Ending = run.Ending switch
            {
                StepTooSmall small => small with { Cell = order.Own(small.Cell) },
                StepLimit limit => limit with { Cell = order.Own(limit.Cell) },
                var completed => completed,
            },
            Saturation = order.Back(run.Saturation),
            Solution = order.Back(run.Solution),
            PeakSolution = order.Back(run.PeakSolution),
            ArrivalMinutes = order.Back(run.ArrivalMinutes),
            AirKPa = order.Back(run.AirKPa),
            Celsius = run.Celsius is { } celsius ? order.Back(celsius) : null,
        };
}
