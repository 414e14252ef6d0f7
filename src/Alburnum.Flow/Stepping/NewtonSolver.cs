using System.Numerics;
using Alburnum.Flow.Equations;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.Stepping;

/// <summary>Solves one time step by an inexact Newton method: J·δ = F, then (p, S) ← (p, S) − δ, kept within what is possible.</summary>
/// <remarks>
/// The linear equations are solved to a tenth only (Dembo, Eisenstat and Steihaug, "Inexact Newton methods", 1982); between two iterations
/// <see cref="NonlinearGaussSeidel"/> moves the front on.
/// </remarks>
internal sealed class NewtonSolver<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    /// <summary>Iterations allowed in one step.</summary>
    public const int MaxIterations = 14;

    // Part of the right-hand side that the linear solver may leave over: closer costs more than it saves Newton.
    private const double LinearTolerance = 0.1;
    private const int Restart = 12;
    private readonly FlowMesh _mesh;
    private readonly TwoWayPartition _partition;
    private readonly JacobianAssembly<T> _system;
    private readonly NonlinearGaussSeidel _relaxation;
    private readonly ILinearSolver _linear;
    private readonly double[] _trial;
    private readonly double[] _change;
    private readonly double _tolerance;
    private int _worstCell;
    private double _worstShare;

    /// <summary>Working arrays for a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="partition">How the cells are shared between two cores.</param>
    /// <param name="tolerance">Share of a cell's voids by which it may stay out of balance.</param>
    public NewtonSolver(FlowMesh mesh, FluidPair fluids, TwoWayPartition partition, double tolerance)
    {
        (_mesh, _partition, _tolerance) = (mesh, partition, tolerance);
        _system = new JacobianAssembly<T>(mesh, fluids, partition);
        _relaxation = new NonlinearGaussSeidel(mesh, fluids, _system.Jacobian.Pattern, _system.Mobility);
        _linear =
            mesh.IsLine && _system.Jacobian is BlockCsrMatrix<double> line
                ? new BlockThomas(line)
                : new Gmres<T>(
                    _system.Jacobian,
                    new CprPreconditioner<T>(_system.Jacobian, _system.TotalVolumeWeight),
                    Restart,
                    LinearTolerance,
                    maxIterations: typeof(T) == typeof(float) ? 40 : 120
                );
        _trial = new double[2 * mesh.CellCount];
        _change = new double[2 * mesh.CellCount];
    }

    /// <summary>The step last solved.</summary>
    public SolvedStep Solved => new(_trial, _system.Flows);

    /// <summary>Solves a step.</summary>
    /// <param name="state">Air pressure (Pa) and saturation before it, cell by cell.</param>
    /// <param name="step">The step.</param>
    /// <param name="cancellation">Stops between iterations.</param>
    public NewtonOutcome Solve(double[] state, TimeStep step, CancellationToken cancellation)
    {
        state.CopyTo(_trial, 0);
        _system.Take(_trial, step.Warmth);
        var linearIterations = 0;
        for (var iteration = 1; iteration <= MaxIterations; iteration++)
        {
            cancellation.ThrowIfCancellationRequested();
            _system.Assemble(_trial, step);
            FindWorst();
            if (_worstShare <= _tolerance)
                return Outcome(NewtonEnding.Converged, iteration);
            if (!double.IsFinite(_worstShare))
                return Outcome(NewtonEnding.NotFinite, iteration);
            var linear = _linear.Solve(_system.Residual, _change);
            if (!IsUsable(linear))
                return Outcome(
                    typeof(T) == typeof(float) ? NewtonEnding.SinglePrecisionExhausted : NewtonEnding.LinearSolveFailed,
                    iteration
                );
            linearIterations += linear.Iterations;
            _partition.Run(_mesh.CellCount, Move);
            _system.Take(_trial, step.Warmth);
            _relaxation.Relax(_trial, _change, step);
        }
        return Outcome(NewtonEnding.IterationLimit, MaxIterations);

        NewtonOutcome Outcome(NewtonEnding ending, int iterations) =>
            new(ending, iterations, linearIterations, _worstCell, _worstShare);
    }

    // In double precision an answer that is at all closer serves Newton; in single precision double is the better way on.
    private static bool IsUsable(LinearOutcome linear) =>
        linear.Ending == LinearEnding.Converged
        || (linear is { Ending: LinearEnding.Stagnated, RelativeResidual: <= 1 } && typeof(T) == typeof(double));

    private void FindWorst()
    {
        var found = new (int Cell, double Share)[2];
        _partition.Run(_mesh.CellCount, (first, end) => found[first == 0 ? 0 : 1] = Worst(first, end));
        // Asked so that a value that is no number counts as the worst.
        (_worstCell, _worstShare) = found[1].Share <= found[0].Share ? found[0] : found[1];
    }

    private (int Cell, double Share) Worst(int first, int end)
    {
        var (worstCell, worstShare) = (first, 0.0);
        var voids = _mesh.VoidM3;
        var residual = _system.Residual;
        for (var i = first; i < end; i++)
        {
            // Air is judged against the air that the pressure would press into the voids.
            var pressure = Math.Max(1, _trial[2 * i] * (1 / StandardAir.Pa));
            var (liquid, air) = (Math.Abs(residual[2 * i]), Math.Abs(residual[2 * i + 1]));
            var known = worstShare * voids[i];
            if (!(liquid <= known && air <= known * pressure))
                (worstCell, worstShare) = (i, Math.Max(liquid, air / pressure) / voids[i]);
            if (double.IsNaN(worstShare))
                break;
        }
        return (worstCell, worstShare);
    }

    private void Move(int first, int end)
    {
        for (var i = first; i < end; i++)
        {
            var p = _trial[2 * i];
            var s = _trial[2 * i + 1];
            _trial[2 * i] = Math.Clamp(p - _change[2 * i], p / 4, 4 * p + StandardAir.Pa);
            _trial[2 * i + 1] = Math.Clamp(s - _change[2 * i + 1], 0, 1);
        }
    }
}
