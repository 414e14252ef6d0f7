using System.Numerics;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Partitioning;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Stepping;

/// <summary>Carries a problem through a schedule, step by step; the linear equations are solved in single or double precision.</summary>
internal sealed class TimeStepping<T>(
    FlowProblem problem,
    StepControl control,
    TwoWayPartition partition,
    CancellationToken cancellation
)
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    private const double LeastSeconds = 1e-9;
    private readonly FlowAccount _account = new(problem);
    private readonly NewtonSolver<T> _newton = new(problem.Mesh, problem.Fluids, partition, control.CellTolerance);
    private double _elapsed;
    private double _seconds = control.FirstSeconds;
    private int _steps;
    private int _newtonIterations;
    private int _linearIterations;
    private NewtonOutcome _last;

    /// <summary>Runs the schedule.</summary>
    public FlowRun Through(Schedule schedule, IProgress<double>? progress)
    {
        FlowEnding ending = new Completed(0, 0, 0);
        Contact? contact = null;
        _account.Note(0, schedule.Stages[0].FromKPa);
        foreach (var stage in schedule.Stages)
        {
            if (stage.Contact != contact)
                _seconds = control.FirstSeconds;
            contact = stage.Contact;
            ending = Through(stage, () => progress?.Report(_elapsed / 60 / schedule.Minutes));
            if (ending is not Completed)
                break;
        }
        return _account.Close(ending);
    }

    private FlowEnding Through(Stage stage, Action report)
    {
        var length = stage.Minutes * 60;
        var isRamp = stage.FromKPa != stage.ToKPa;
        var longest = isRamp ? Math.Min(control.GreatestSeconds, length / 4) : control.GreatestSeconds;
        if (isRamp)
            _seconds = Math.Min(_seconds, length / 8);
        double done = 0;
        while (done < length)
        {
            if (_steps == control.GreatestSteps)
                return new StepLimit(_elapsed / 60, stage.Name, _steps, _last.WorstCell, _last.WorstShare);
            _seconds = Math.Min(_seconds, longest);
            // A last sliver is joined to the step before it.
            var left = length - done;
            var seconds =
                left <= _seconds * 1.0001 ? left : Math.Min(_seconds, left / 2 > _seconds ? _seconds : left / 2);
            var kPa = stage.KPaAt((done + seconds) / 60);
            var vessel = VesselBoundary.Of(1000 * kPa, stage.Contact, problem.Fluids);
            _last = _newton.Solve(_account.State, new TimeStep(_account.Held, seconds, vessel), cancellation);
            _linearIterations += _last.LinearIterations;
            switch (_last.Ending)
            {
                case NewtonEnding.Converged:
                    Keep(kPa, seconds);
                    done = left == seconds ? length : done + seconds;
                    report();
                    break;
                case NewtonEnding.SinglePrecisionExhausted:
                    return new SinglePrecisionExhausted();
                default:
                    _seconds = seconds / 4;
                    if (_seconds < LeastSeconds)
                        return new StepTooSmall(_elapsed / 60, stage.Name, _last.WorstCell, _last.WorstShare);
                    break;
            }
        }
        return new Completed(_steps, _newtonIterations, _linearIterations);
    }

    private void Keep(double kPa, double seconds)
    {
        var moved = _account.Keep(_newton.Solved, _elapsed / 60, seconds / 60);
        _elapsed += seconds;
        _steps++;
        _newtonIterations += _last.Iterations;
        _account.Note(_elapsed / 60, kPa);
        var next = control.Next(seconds, moved);
        _seconds =
            next <= seconds ? next
            : _last.Iterations > NewtonSolver<T>.MaxIterations - 3 ? seconds
            : Math.Max(_seconds, next);
    }
}
