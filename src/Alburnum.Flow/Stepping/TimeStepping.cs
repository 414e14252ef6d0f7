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

    // Where the contact changes the flow starts beyond all bounds: shorter steps than this are not asked for to follow it.
    private const double LeastControlledSeconds = 1e-3;
    private readonly FlowAccount _account = new(problem);
    private readonly HeatAccount _heat = new(problem, partition);
    private readonly ExtrapolatedStep<T> _step = new(problem, partition, control.CellTolerance);
    private double _elapsed;
    private double _seconds = control.FirstSeconds;

    // How many times what is allowed the step before was off, over its length squared, 1/s²; 0 where there was none in the stage.
    private double _excessPerSquare;
    private int _steps;
    private int _newtonIterations;
    private int _linearIterations;
    private NewtonOutcome _last;

    /// <summary>Runs the schedule.</summary>
    public FlowRun Through(Schedule schedule, IProgress<double>? progress)
    {
        FlowEnding ending = new Completed(0, 0, 0);
        Contact? contact = null;
        var scale = new UptakeScale(schedule);
        _account.Note(0, schedule.Stages[0].FromKPa);
        foreach (var stage in schedule.Stages)
        {
            if (stage.Contact != contact)
                _seconds = control.FirstSeconds;
            contact = stage.Contact;
            ending = Through(stage, scale, () => progress?.Report(Math.Min(1, _elapsed / 60 / schedule.Minutes)));
            if (ending is not Completed)
                break;
            scale.Pass(stage);
        }
        return _account.Close(ending) with { Celsius = _heat.Celsius };
    }

    private FlowEnding Through(Stage stage, UptakeScale scale, Action report)
    {
        var length = stage.Minutes * 60;
        var isRamp = stage.FromKPa != stage.ToKPa;
        var longest = isRamp ? Math.Min(control.GreatestSeconds, length / 4) : control.GreatestSeconds;
        if (isRamp)
            _seconds = Math.Min(_seconds, length / 8);
        double done = 0;
        _excessPerSquare = 0;
        while (done < length)
        {
            if (_steps == control.GreatestSteps)
                return new StepLimit(_elapsed / 60, stage.Name, _steps, _last.WorstCell, _last.WorstShare);
            _seconds = Math.Min(_seconds, longest);
            // A last sliver is joined to the step before it.
            var left = length - done;
            var seconds =
                left <= _seconds * 1.0001 ? left : Math.Min(_seconds, left / 2 > _seconds ? _seconds : left / 2);
            Solve(stage, done, seconds);
            if (_last.Ending == NewtonEnding.SinglePrecisionExhausted)
                return new SinglePrecisionExhausted();
            if (_last.Ending != NewtonEnding.Converged)
            {
                _seconds = seconds / 4;
                if (_seconds < LeastSeconds)
                    return new StepTooSmall(_elapsed / 60, stage.Name, _last.WorstCell, _last.WorstShare);
                continue;
            }
            var excess = Excess(stage, done + seconds, scale);
            if (excess > 1 && seconds > LeastControlledSeconds)
            {
                _seconds = seconds * control.Change(excess);
                _excessPerSquare = 0;
                continue;
            }
            done = left == seconds ? length : done + seconds;
            Keep(stage.KPaAt(done / 60), seconds, excess);
            report();
        }
        return new Completed(_steps, _newtonIterations, _linearIterations);
    }

    private void Solve(Stage stage, double done, double seconds)
    {
        _heat.Foresee(_account.Held, seconds, stage);
        var warmth = _heat.Vessel(stage);
        _last = _step.Solve(
            _account.State,
            _account.Held,
            seconds,
            (Vessel(done + seconds / 2), _heat.Half),
            (Vessel(done + seconds), _heat.End),
            cancellation
        );
        _newtonIterations += _last.Iterations;
        _linearIterations += _last.LinearIterations;

        VesselBoundary Vessel(double at) =>
            VesselBoundary.Of(1000 * stage.GasKPaAt(at / 60), stage.Contact, problem.Fluids, warmth);
    }

    private double Excess(Stage stage, double done, UptakeScale scale)
    {
        var (liquid, air) = _step.Error;
        var gained = (_account.GainedM3 - _step.Flows.FaceLiquid.Sum()) / _account.VoidM3;
        return control.Excess(
            liquid / _account.VoidM3 / scale.Share(stage, done, gained),
            air / Math.Max(_account.AirM3, double.Epsilon)
        );
    }

    private void Keep(double kPa, double seconds, double excess)
    {
        _heat.Keep(_account.Held, _step.Held, _step.Flows, seconds);
        _account.Keep(_step.State, _step.Held, _step.Flows, _elapsed / 60, seconds / 60);
        _elapsed += seconds;
        _steps++;
        _account.Note(_elapsed / 60, kPa);
        var perSquare = excess / (seconds * seconds);
        var next = seconds * control.Change(excess, _excessPerSquare > 0 ? perSquare / _excessPerSquare : 1);
        _excessPerSquare = perSquare;
        _seconds =
            next <= seconds ? next
            : _last.MostIterations > NewtonSolver<T>.MaxIterations - 3 ? seconds
            : Math.Max(_seconds, next);
    }
}
