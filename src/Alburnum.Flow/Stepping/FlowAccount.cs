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

    /// <summary>Void volume of all cells, m³.</summary>
    public double VoidM3 => _voidM3;

    /// <summary>Liquid that came in through the faces since the start, m³, less what left.</summary>
    public double GainedM3 => _liquidIn;

    /// <summary>Air held by all cells, m³ at the reference pressure.</summary>
    public double AirM3
    {
        get
        {
            double air = 0;
            for (var i = 1; i < Held.Length; i += 2)
                air += Held[i];
            return air;
        }
    }

    /// <summary>Books a solved step.</summary>
    /// <param name="state">Air pressure (Pa) and saturation after it, cell by cell.</param>
    /// <param name="held">Liquid and air held after it, m³, cell by cell.</param>
    /// <param name="flows">What flowed.</param>
    /// <param name="minutes">When it began, min.</param>
    /// <param name="length">How long it took, min.</param>
    public void Keep(double[] state, double[] held, StepFlows flows, double minutes, double length)
    {
        state.CopyTo(State, 0);
        held.CopyTo(Held, 0);
        _solution?.Keep(flows.Liquid, flows.FaceLiquid);
        for (var i = 0; i < _share.Length; i++)
            NoteSolution(i, minutes, length);
        _liquidIn -= flows.FaceLiquid.Sum();
        _airIn -= flows.FaceAir.Sum();
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
        double liquid = 0;
        for (var i = 0; i < Held.Length; i += 2)
            liquid += Held[i];
        var air = AirM3;
        _moments.Add(
            new FlowMoment
            {
                Minutes = minutes,
                VesselKPa = kPa,
                GainedM3 = _liquidIn,
                AirM3 = air,
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
