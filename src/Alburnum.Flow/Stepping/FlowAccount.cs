using Alburnum.Flow.Equations;

namespace Alburnum.Flow.Stepping;

/// <summary>The account of a run: what every cell holds, what came in, and where liquid has been.</summary>
/// <remarks>What is held moves by the flows, not by the state: what a step leaves out of balance is carried into the next, and nothing is lost.</remarks>
internal sealed class FlowAccount
{
    private readonly FlowProblem _problem;
    private readonly double[] _share;
    private readonly double[] _peak;
    private readonly double?[] _arrival;
    private readonly List<FlowMoment> _moments = [];
    private readonly double _voidM3;
    private readonly double _liquidAtStart;
    private readonly double _airAtStart;

    // Where there is no water in the wood before, all liquid is solution.
    private readonly SolutionAccount? _solution;
    private double _liquidIn;
    private double _airIn;

    /// <summary>Opens the account of a piece before the schedule begins.</summary>
    public FlowAccount(FlowProblem problem)
    {
        _problem = problem;
        var cells = problem.Mesh.CellCount;
        State = new double[2 * cells];
        Held = new double[2 * cells];
        _share = new double[cells];
        _peak = new double[cells];
        _arrival = new double?[cells];
        for (var i = 0; i < cells; i++)
        {
            var (p, s, v) = (1000 * problem.InitialAirKPa, problem.InitialSaturation[i], problem.Mesh.VoidM3[i]);
            (State[2 * i], State[2 * i + 1]) = (p, s);
            (Held[2 * i], Held[2 * i + 1]) = (v * s, v * (1 - s) * p / StandardAir.Pa);
            _voidM3 += v;
            _liquidAtStart += Held[2 * i];
            _airAtStart += Held[2 * i + 1];
        }
        if (problem.InitialSaturation.Any(saturation => saturation > 0))
            _solution = new SolutionAccount(problem.Mesh, Held);
    }

    /// <summary>Air pressure (Pa) and saturation, cell by cell.</summary>
    public double[] State { get; }

    /// <summary>Liquid and air held, m³ (air at the reference pressure), cell by cell.</summary>
    public double[] Held { get; }

    /// <summary>Books a solved step.</summary>
    /// <param name="step">The step.</param>
    /// <param name="minutes">When it began, min.</param>
    /// <param name="length">How long it took, min.</param>
    public StepChange Keep(SolvedStep step, double minutes, double length)
    {
        var voids = _problem.Mesh.VoidM3;
        double liquid = 0,
            pressure = 0;
        for (var i = 0; i < voids.Length; i++)
        {
            var (p, s) = (step.State[2 * i], step.State[2 * i + 1]);
            liquid += voids[i] * Math.Abs(s - State[2 * i + 1]);
            pressure += voids[i] * Math.Abs(p - State[2 * i]) / Math.Max(p, State[2 * i]);
            Held[2 * i] = voids[i] * s - step.Residual[2 * i];
            Held[2 * i + 1] = voids[i] * (1 - s) * p / StandardAir.Pa - step.Residual[2 * i + 1];
        }
        _solution?.Keep(step.Connections, step.Faces);
        for (var i = 0; i < voids.Length; i++)
            NoteSolution(i, minutes, length);
        step.State.CopyTo(State, 0);
        _liquidIn += step.LiquidInM3;
        _airIn += step.AirInM3;
        return new StepChange(liquid / _voidM3, pressure / _voidM3, Math.Max(0, _liquidIn) / _voidM3);
    }

    private void NoteSolution(int cell, double minutes, double length)
    {
        var (before, now) = (_share[cell], SolutionShare(cell));
        _share[cell] = now;
        _peak[cell] = Math.Max(_peak[cell], now);
        if (now >= FlowRun.ReachedShare && now >= FlowRun.LeastOfLiquid * LiquidShare(cell) && _arrival[cell] is null)
            _arrival[cell] = minutes + length * (1 - Math.Clamp((now - FlowRun.ReachedShare) / (now - before), 0, 1));
    }

    private double SolutionShare(int cell) =>
        _solution is null ? LiquidShare(cell) : _solution.HeldM3[cell] / _problem.Mesh.VoidM3[cell];

    private double LiquidShare(int cell) => Held[2 * cell] / _problem.Mesh.VoidM3[cell];

    /// <summary>Writes down a moment.</summary>
    /// <param name="minutes">Time since the start, min.</param>
    /// <param name="kPa">Absolute pressure in the vessel, kPa.</param>
    public void Note(double minutes, double kPa)
    {
        double liquid = 0,
            air = 0;
        for (var i = 0; i < Held.Length; i += 2)
        {
            liquid += Held[i];
            air += Held[i + 1];
        }
        _moments.Add(
            new FlowMoment
            {
                Minutes = minutes,
                VesselKPa = kPa,
                GainedM3 = _liquidIn,
                LiquidImbalance = (liquid - _liquidAtStart - _liquidIn) / _voidM3,
                AirImbalance = (air - _airAtStart - _airIn) / _voidM3,
            }
        );
    }

    /// <summary>Closes the account.</summary>
    public FlowRun Close(FlowEnding ending)
    {
        var cells = _problem.Mesh.CellCount;
        var saturation = new double[cells];
        var airKPa = new double[cells];
        for (var i = 0; i < cells; i++)
        {
            saturation[i] = Held[2 * i] / _problem.Mesh.VoidM3[i];
            airKPa[i] = State[2 * i] / 1000;
        }
        return new FlowRun(ending, _moments, saturation, _share, _peak, _arrival, airKPa);
    }
}
