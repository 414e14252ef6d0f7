using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Stepping;

/// <summary>How warm each cell is, step by step: foreseen for the end of a step with the flows of the step before, and booked with its own.</summary>
internal sealed class HeatAccount
{
    // The front of heat goes as the root of time: a step is split where it is longer than this part of the time since the surroundings changed.
    private const double Part = 0.25;
    private const int MostParts = 8;
    private readonly WarmedWood? _heat;
    private readonly HeatEquation? _equation;
    private readonly double[] _celsius;
    private readonly double[] _next;
    private readonly double[] _between;
    private readonly StepFlows _flows;
    private double _flowSeconds = 1;
    private double? _surroundings;
    private double _sinceChange;

    /// <summary>Opens the account of a piece before the schedule begins; where nothing warms it, all stays as it is.</summary>
    public HeatAccount(FlowProblem problem, TwoWayPartition partition)
    {
        var cells = problem.Mesh.CellCount;
        _heat = problem.Heat;
        _equation = _heat is null ? null : new HeatEquation(problem.Mesh, _heat, partition);
        (_celsius, _next, _between) = (new double[cells], new double[cells], new double[2 * cells]);
        Array.Fill(_celsius, _heat?.Warming.WoodCelsius ?? 0);
        (Half, End) = (new CellWarmth[cells], new CellWarmth[cells]);
        Array.Fill(Half, CellWarmth.Even);
        Array.Fill(End, CellWarmth.Even);
        _flows = new StepFlows(problem.Mesh);
    }

    /// <summary>Warmth of the cells in the middle of the step foreseen.</summary>
    public CellWarmth[] Half { get; }

    /// <summary>Warmth of the cells at its end.</summary>
    public CellWarmth[] End { get; }

    /// <summary>Temperature of each cell, °C; null where nothing warms the wood.</summary>
    public IReadOnlyList<double>? Celsius => _heat is null ? null : _celsius;

    /// <summary>Warmth of what touches the wood in a stage; as that of the wood where it brings no heat.</summary>
    public CellWarmth Vessel(Stage stage) =>
        _heat is null ? CellWarmth.Even : Warmth(Surroundings(stage) ?? _heat.Warming.WoodCelsius);

    /// <summary>Works out how warm the cells will be after a step.</summary>
    /// <param name="held">Liquid and air held before it, m³, cell by cell.</param>
    /// <param name="seconds">Its length, s.</param>
    /// <param name="stage">The stage it lies in.</param>
    public void Foresee(double[] held, double seconds, Stage stage)
    {
        if (_equation is null)
            return;
        var surroundings = Surroundings(stage);
        if (surroundings != _surroundings)
            _sinceChange = 0;
        _surroundings = surroundings;
        Advance(held, seconds);
        for (var i = 0; i < _celsius.Length; i++)
        {
            Half[i] = Warmth((_celsius[i] + _next[i]) / 2);
            End[i] = Warmth(_next[i]);
        }
    }

    /// <summary>Books the step foreseen.</summary>
    /// <param name="before">Liquid and air held before it, m³, cell by cell.</param>
    /// <param name="after">The same after it.</param>
    /// <param name="flows">What flowed in it.</param>
    /// <param name="seconds">Its length, s.</param>
    public void Keep(double[] before, double[] after, StepFlows flows, double seconds)
    {
        if (_equation is null)
            return;
        _flows.Mix(0, 1, flows);
        _flowSeconds = seconds;
        for (var i = 0; i < _between.Length; i++)
            _between[i] = (before[i] + after[i]) / 2;
        Advance(_between, seconds);
        _next.CopyTo(_celsius, 0);
        _sinceChange += seconds;
    }

    private void Advance(double[] held, double seconds)
    {
        var parts = (int)Math.Clamp(Math.Ceiling(seconds / (Part * _sinceChange)), 1, MostParts);
        _celsius.CopyTo(_next, 0);
        for (var part = 0; part < parts; part++)
            _equation!.Solve(_next, (held, _flows, _flowSeconds), seconds / parts, _surroundings);
    }

    private double? Surroundings(Stage stage) =>
        stage.Celsius ?? (stage.Contact == Contact.Liquid ? _heat!.Warming.SolutionCelsius : null);

    private CellWarmth Warmth(double celsius) =>
        new(_heat!.Warming.FlowsTimes(celsius), _heat.Warming.AirTimes(celsius));
}
