using System.Numerics;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.Stepping;

/// <summary>One time step of second order: backward Euler over its two halves and over the whole, carried on to no step at all.</summary>
/// <remarks>
/// Extrapolated backward Euler (Deuflhard, "Recent progress in extrapolation methods for ordinary differential equations", SIAM Rev. 27, 1985):
/// flows = 2·(those of the halves) − those of the whole, stable however stiff, and the difference of the two tells the error. The three
/// solutions are each free of overshoot; what their combination would overshoot by, <see cref="FluxCorrection"/> takes off.
/// </remarks>
internal sealed class ExtrapolatedStep<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    private readonly NewtonSolver<T> _newton;
    private readonly FluxCorrection _limiter;
    private readonly StepFlows _correction;
    private int _iterations;
    private int _most;
    private int _linear;

    /// <summary>Working arrays for a problem.</summary>
    public ExtrapolatedStep(FlowProblem problem, TwoWayPartition partition, double tolerance)
    {
        var mesh = problem.Mesh;
        _newton = new NewtonSolver<T>(mesh, problem.Fluids, partition, tolerance);
        _limiter = new FluxCorrection(mesh);
        (Flows, _correction) = (new StepFlows(mesh), new StepFlows(mesh));
        (State, Held) = (new double[2 * mesh.CellCount], new double[2 * mesh.CellCount]);
    }

    /// <summary>Air pressure (Pa) and saturation after the second half, cell by cell: where the next step starts looking.</summary>
    public double[] State { get; }

    /// <summary>Liquid and air held after the step, m³, cell by cell.</summary>
    public double[] Held { get; }

    /// <summary>What flowed in the step.</summary>
    public StepFlows Flows { get; }

    /// <summary>By how much the halves and the whole differ in what they let through the faces, m³: the error of either.</summary>
    public (double LiquidM3, double AirM3) Error { get; private set; }

    /// <summary>Solves a step.</summary>
    /// <param name="state">Air pressure (Pa) and saturation before it, cell by cell.</param>
    /// <param name="held">Liquid and air held before it, m³, cell by cell.</param>
    /// <param name="seconds">Its length, s.</param>
    /// <param name="half">The vessel and the cells' warmth in the middle of it.</param>
    /// <param name="end">The same at its end.</param>
    /// <param name="cancellation">Stops between iterations.</param>
    public NewtonOutcome Solve(
        double[] state,
        double[] held,
        double seconds,
        (VesselBoundary Vessel, CellWarmth[] Cells) half,
        (VesselBoundary Vessel, CellWarmth[] Cells) end,
        CancellationToken cancellation
    )
    {
        (_iterations, _most, _linear) = (0, 0, 0);
        var outcome = Add(state, new TimeStep(held, seconds / 2, half.Vessel, half.Cells), cancellation);
        if (outcome.Ending != NewtonEnding.Converged)
            return outcome;
        Flows.Mix(0, 1, _newton.Solved.Flows);
        held.CopyTo(Held, 0);
        Flows.Carry(Held);
        _newton.Solved.State.CopyTo(State, 0);
        outcome = Add(State, new TimeStep(Held, seconds / 2, end.Vessel, end.Cells), cancellation);
        if (outcome.Ending != NewtonEnding.Converged)
            return outcome;
        Flows.Mix(1, 1, _newton.Solved.Flows);
        _newton.Solved.Flows.Carry(Held);
        _newton.Solved.State.CopyTo(State, 0);
        // The whole ends close to where the halves did.
        outcome = Add(State, new TimeStep(held, seconds, end.Vessel, end.Cells), cancellation);
        if (outcome.Ending == NewtonEnding.Converged)
            Extrapolate();
        return outcome;
    }

    private NewtonOutcome Add(double[] guess, TimeStep step, CancellationToken cancellation)
    {
        var outcome = _newton.Solve(guess, step, cancellation);
        _iterations += outcome.Iterations;
        _most = Math.Max(_most, outcome.Iterations);
        _linear += outcome.LinearIterations;
        return outcome with { Iterations = _iterations, MostIterations = _most, LinearIterations = _linear };
    }

    private void Extrapolate()
    {
        _correction.Mix(0, 1, Flows);
        _correction.Mix(1, -1, _newton.Solved.Flows);
        double liquid = 0,
            air = 0;
        for (var f = 0; f < _correction.FaceLiquid.Length; f++)
        {
            liquid += Math.Abs(_correction.FaceLiquid[f]);
            air += Math.Abs(_correction.FaceAir[f]);
        }
        Error = (liquid, air);
        _limiter.Limit(Held, _correction);
        _correction.Carry(Held);
        Flows.Mix(1, 1, _correction);
    }
}
