using System.Numerics;
using Alburnum.Flow.Equations;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Stepping;

/// <summary>Carries a piece of wood through a schedule: liquid and trapped air, step by step, fully implicit.</summary>
/// <remarks>
/// Each step solves the balances at its end by Newton's method with exact derivatives. What a step leaves out of balance
/// (below the tolerance) is carried into the next one, so that the account of liquid and air stays true to round-off.
/// Equations, limits and checks in docs/science/flow.md. Air does not dissolve; temperature is even; gravity is left out.
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
        Require.InRange(
            problem.InitialSaturation.Count,
            problem.Mesh.CellCount,
            problem.Mesh.CellCount,
            "saturations, one a cell"
        );
        Require.InRange(problem.InitialAirKPa, 1e-6, 5000, "kPa");
        foreach (var saturation in problem.InitialSaturation)
            Require.InRange(saturation, 0, 1, "(share of the voids)", nameof(problem.InitialSaturation));
        var order = CellOrder.Of(problem.Mesh);
        var ordered = order.Ordered(problem);
        var run = problem.Mesh.IsLine ? null : In<float>(ordered, schedule, control, progress, cancellation);
        return order.Back(run ?? In<double>(ordered, schedule, control, progress, cancellation)!);
    }

    // Linear equations in a precision; null where single precision does not carry: cells that level out within a ten-millionth of a step.
    private static FlowRun? In<T>(
        FlowProblem problem,
        Schedule schedule,
        StepControl control,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
        where T : unmanaged, IBinaryFloatingPointIeee754<T> =>
        new Course<T>(problem, control, cancellation).Through(schedule, progress);

    // One run: the working arrays and the account of what is held.
    private sealed class Course<T>
        where T : unmanaged, IBinaryFloatingPointIeee754<T>
    {
        private const int MaxNewton = 14;
        private const double LeastSeconds = 1e-9;

        private readonly FlowProblem _problem;
        private readonly StepControl _control;
        private readonly CancellationToken _cancellation;
        private readonly FlowKernel<T> _kernel;
        private readonly FrontRelaxation _front;
        private readonly INewtonEquations _equations;
        private readonly double[] _state;
        private readonly double[] _held;
        private readonly double[] _trial;
        private readonly double[] _change;
        private readonly double[] _peak;
        private readonly double?[] _arrival;
        private readonly List<FlowMoment> _moments = [];
        private readonly double _voidM3;
        private readonly double _liquidAtStart;
        private readonly double _airAtStart;
        private double _liquidIn;
        private double _airIn;
        private int _worstCell;
        private double _worstShare;
        private int _linearIterations;
        private bool _carries = true;

        public Course(FlowProblem problem, StepControl control, CancellationToken cancellation)
        {
            (_problem, _control, _cancellation) = (problem, control, cancellation);
            _kernel = new FlowKernel<T>(problem.Mesh, problem.Fluids);
            _front = new FrontRelaxation(problem.Mesh, problem.Fluids, _kernel.Matrix.Blocks, _kernel.Terms);
            _equations =
                problem.Mesh.IsLine && _kernel.Matrix is BlockMatrix<double> matrix
                    ? new LineElimination(matrix)
                    : new HelpedKrylov<T>(_kernel.Matrix);
            var cells = problem.Mesh.CellCount;
            _state = new double[2 * cells];
            _held = new double[2 * cells];
            _trial = new double[2 * cells];
            _change = new double[2 * cells];
            _peak = new double[cells];
            _arrival = new double?[cells];
            for (var i = 0; i < cells; i++)
            {
                var (p, s, v) = (1000 * problem.InitialAirKPa, problem.InitialSaturation[i], problem.Mesh.VoidM3[i]);
                (_state[2 * i], _state[2 * i + 1]) = (p, s);
                (_held[2 * i], _held[2 * i + 1]) = (v * s, v * (1 - s) * p / FlowTerms.ReferencePa);
                _voidM3 += v;
                _liquidAtStart += _held[2 * i];
                _airAtStart += _held[2 * i + 1];
            }
        }

        public FlowRun? Through(Schedule schedule, IProgress<double>? progress)
        {
            double elapsed = 0,
                step = _control.FirstSeconds;
            var steps = 0;
            var newton = 0;
            Contact? contact = null;
            Note(0, schedule.Stages[0].Name, schedule.Stages[0].FromKPa, 0);
            foreach (var stage in schedule.Stages)
            {
                if (stage.Contact != contact)
                    step = _control.FirstSeconds;
                contact = stage.Contact;
                var length = stage.Minutes * 60;
                var longest =
                    stage.FromKPa == stage.ToKPa
                        ? _control.GreatestSeconds
                        : Math.Min(_control.GreatestSeconds, length / 4);
                if (stage.FromKPa != stage.ToKPa)
                    step = Math.Min(step, length / 8);
                double done = 0;
                while (done < length)
                {
                    if (steps == _control.GreatestSteps)
                        return Answer(new IterationLimit(elapsed / 60, stage.Name, steps, _worstCell, _worstShare));
                    step = Math.Min(step, longest);
                    // A last sliver is joined to the step before it.
                    var left = length - done;
                    var seconds = left <= step * 1.0001 ? left : Math.Min(step, left / 2 > step ? step : left / 2);
                    var kPa = stage.KPaAt((done + seconds) / 60);
                    var iterations = Try(seconds, 1000 * kPa, stage.Contact);
                    if (!_carries)
                        return null;
                    if (iterations == 0)
                    {
                        step = seconds / 4;
                        if (step < LeastSeconds)
                            return Answer(new StepTooSmall(elapsed / 60, stage.Name, _worstCell, _worstShare));
                        continue;
                    }
                    var moved = Keep(elapsed / 60, seconds / 60);
                    done = left == seconds ? length : done + seconds;
                    elapsed += seconds;
                    steps++;
                    newton += iterations;
                    Note(elapsed / 60, stage.Name, kPa, iterations);
                    progress?.Report(elapsed / 60 / schedule.Minutes);
                    var next = _control.Next(seconds, moved);
                    step =
                        next <= seconds ? next
                        : iterations > MaxNewton - 3 ? seconds
                        : Math.Max(step, next);
                }
            }
            return Answer(new Settled(steps, newton, _linearIterations));
        }

        // Newton iterations needed, or 0 where the step did not converge.
        private int Try(double seconds, double vesselPa, Contact contact)
        {
            _state.CopyTo(_trial, 0);
            _kernel.Take(_trial);
            var step = new FlowStep(_held, seconds, VesselTerms.Of(vesselPa, contact, _problem.Fluids));
            for (var iteration = 1; iteration <= MaxNewton; iteration++)
            {
                _cancellation.ThrowIfCancellationRequested();
                _kernel.Assemble(_trial, step);
                FindWorst();
                if (_worstShare <= _control.CellTolerance)
                    return iteration;
                if (!double.IsFinite(_worstShare))
                    return 0;
                if (!_equations.Solve(_trial, _kernel.Residual, _change))
                {
                    _carries = typeof(T) == typeof(double);
                    return 0;
                }
                _linearIterations += _equations.Iterations;
                Halves.Run(_problem.Mesh.CellCount, Move);
                _kernel.Take(_trial);
                _front.Relax(_trial, _change, step);
            }
            return 0;
        }

        private void FindWorst()
        {
            var found = new (int Cell, double Share)[2];
            Halves.Run(_problem.Mesh.CellCount, (first, end) => found[first == 0 ? 0 : 1] = Worst(first, end));
            // Asked so that a value that is no number counts as the worst.
            (_worstCell, _worstShare) = found[1].Share <= found[0].Share ? found[0] : found[1];
        }

        private (int Cell, double Share) Worst(int first, int end)
        {
            var (worstCell, worstShare) = (first, 0.0);
            var voids = _problem.Mesh.VoidM3;
            var residual = _kernel.Residual;
            for (var i = first; i < end; i++)
            {
                // Air is judged against the air that the pressure would press into the voids.
                var pressure = Math.Max(1, _trial[2 * i] * (1 / FlowTerms.ReferencePa));
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
                _trial[2 * i] = Math.Clamp(p - _change[2 * i], p / 4, 4 * p + FlowTerms.ReferencePa);
                _trial[2 * i + 1] = Math.Clamp(s - _change[2 * i + 1], 0, 1);
            }
        }

        // Accepts the trial state; what is held moves by the flows, not by the state, so nothing is lost.
        private StepChange Keep(double minutes, double length)
        {
            var voids = _problem.Mesh.VoidM3;
            double liquid = 0,
                pressure = 0;
            for (var i = 0; i < voids.Length; i++)
            {
                var (p, s) = (_trial[2 * i], _trial[2 * i + 1]);
                liquid += voids[i] * Math.Abs(s - _state[2 * i + 1]);
                pressure += voids[i] * Math.Abs(p - _state[2 * i]) / Math.Max(p, _state[2 * i]);
                _held[2 * i] = voids[i] * s - _kernel.Residual[2 * i];
                _held[2 * i + 1] = voids[i] * (1 - s) * p / FlowTerms.ReferencePa - _kernel.Residual[2 * i + 1];
                var gain = s - _problem.InitialSaturation[i];
                if (gain > _peak[i])
                    _peak[i] = gain;
                if (gain >= FlowRun.ReachedGain && _arrival[i] is null)
                {
                    var left = (gain - FlowRun.ReachedGain) / (s - _state[2 * i + 1]);
                    _arrival[i] = minutes + length * (1 - left);
                }
            }
            _trial.CopyTo(_state, 0);
            _liquidIn += _kernel.LiquidInM3;
            _airIn += _kernel.AirInM3;
            return new StepChange(liquid / _voidM3, pressure / _voidM3, Math.Max(0, _liquidIn) / _voidM3);
        }

        private void Note(double minutes, string stage, double kPa, int iterations)
        {
            double liquid = 0,
                air = 0;
            for (var i = 0; i < _held.Length; i += 2)
            {
                liquid += _held[i];
                air += _held[i + 1];
            }
            var liquidOff = (liquid - _liquidAtStart - _liquidIn) / _voidM3;
            var airOff = (air - _airAtStart - _airIn) / _voidM3;
            _moments.Add(new FlowMoment(minutes, stage, kPa, liquid, _liquidIn, air, liquidOff, airOff, iterations));
        }

        private FlowRun Answer(FlowEnding ending)
        {
            var cells = _problem.Mesh.CellCount;
            var saturation = new double[cells];
            var airKPa = new double[cells];
            for (var i = 0; i < cells; i++)
            {
                saturation[i] = _held[2 * i] / _problem.Mesh.VoidM3[i];
                airKPa[i] = _state[2 * i] / 1000;
            }
            return new FlowRun(ending, _moments, saturation, _peak, _arrival, airKPa);
        }
    }
}
