using System.Numerics;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.Stepping;

/// <summary>One time step of second order: backward Euler over its two halves and over the whole, carried on to no step at all.</summary>
/// <remarks>
/// Extrapolated backward Euler (Deuflhard, "Recent progress in extrapolation methods for ordinary differential equations", SIAM Rev. 27, 1985):
/// flows = 2·(those of the halves) − those of the whole, stable however stiff, and the difference of the two tells the error. The three
/// solutions are each free of overshoot; what their combination would overshoot by, <see cref="FluxCorrection"/> takes off. The whole does not wait for
/// the halves where there are enough cells for a second core to help and few enough for it not to be at work already.
/// </remarks>
internal sealed class ExtrapolatedStep<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    // Below this number of cells a second core would wait longer than it helps.
    private const int SideBySideFrom = 1000;
    private readonly NewtonSolver<T> _halves;

    // The same solver where the two are done one after the other.
    private readonly NewtonSolver<T> _whole;
    private readonly FluxCorrection _limiter;
    private readonly StepFlows _correction;

    /// <summary>Working arrays for a problem.</summary>
    public ExtrapolatedStep(FlowProblem problem, TwoWayPartition partition, double tolerance)
    {
        var mesh = problem.Mesh;
        _halves = Newton();
        _whole =
            mesh.CellCount >= SideBySideFrom && partition.Split(mesh.CellCount) == mesh.CellCount ? Newton() : _halves;
        _limiter = new FluxCorrection(mesh);
        (Flows, _correction) = (new StepFlows(mesh), new StepFlows(mesh));
        (State, Held) = (new double[2 * mesh.CellCount], new double[2 * mesh.CellCount]);

        NewtonSolver<T> Newton() => new(mesh, problem.Fluids, partition, tolerance);
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
    /// <param name="half">The vessel in the middle of it.</param>
    /// <param name="end">The vessel at its end.</param>
    /// <param name="cancellation">Stops between iterations.</param>
    public NewtonOutcome Solve(
        double[] state,
        double[] held,
        double seconds,
        VesselBoundary half,
        VesselBoundary end,
        CancellationToken cancellation
    )
    {
        NewtonOutcome halves = default,
            whole = default;
        if (_whole != _halves)
        {
            Parallel.Invoke(
                new ParallelOptions { CancellationToken = cancellation },
                () => halves = Halves(state, held, seconds, half, end, cancellation),
                () => whole = _whole.Solve(state, new TimeStep(held, seconds, end), cancellation)
            );
        }
        else
        {
            halves = Halves(state, held, seconds, half, end, cancellation);
            if (halves.Ending != NewtonEnding.Converged)
                return halves;
            // The whole ends close to where the halves did.
            whole = _whole.Solve(State, new TimeStep(held, seconds, end), cancellation);
        }
        var outcome = halves.With(whole);
        if (outcome.Ending == NewtonEnding.Converged)
            Extrapolate();
        return outcome;
    }

    private NewtonOutcome Halves(
        double[] state,
        double[] held,
        double seconds,
        VesselBoundary half,
        VesselBoundary end,
        CancellationToken cancellation
    )
    {
        var first = _halves.Solve(state, new TimeStep(held, seconds / 2, half), cancellation);
        if (first.Ending != NewtonEnding.Converged)
            return first;
        Flows.Mix(0, 1, _halves.Solved.Flows);
        held.CopyTo(Held, 0);
        Flows.Carry(Held);
        _halves.Solved.State.CopyTo(State, 0);
        var second = _halves.Solve(State, new TimeStep(Held, seconds / 2, end), cancellation);
        if (second.Ending == NewtonEnding.Converged)
        {
            Flows.Mix(1, 1, _halves.Solved.Flows);
            _halves.Solved.Flows.Carry(Held);
            _halves.Solved.State.CopyTo(State, 0);
        }
        return first.With(second);
    }

    private void Extrapolate()
    {
        _correction.Mix(0, 1, Flows);
        _correction.Mix(1, -1, _whole.Solved.Flows);
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
