using System.Text.Json;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Flow.Tests;
using Alburnum.Impregnation.Heating;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Wood that hot solution or steam warms, against the same equations integrated by a general-purpose solver, at the end of every stage.</summary>
[Computed]
public sealed class WarmedWoodChecks
{
    private const int Apart = 10;
    private static readonly JsonElement Reference = StoredRuns.Of("flow_heat.json");

    public static TheoryData<int> Runs => StoredRuns.Numbers(Reference.GetProperty("runs"));

    [Theory]
    [MemberData(nameof(Runs))]
    [IndependentProgram("SciPy 1.10.1, solve_ivp (BDF)", "reference/flow_heat.py")]
    public void Uptake_air_and_temperatures_at_the_end_of_every_stage_are_those_that_SciPy_finds(int at)
    {
        var row = Reference.GetProperty("runs")[at];
        var cells = Reference.GetProperty("cells").GetInt32();
        var edges = GradedEdges.FromOneEnd(Reference.Figure("depthMm"), cells, Reference.Figure("grading"));
        var unit = WarmedWood.Unit;
        var warming = new Warming(
            new WoodHeat(Reference.Figure("dryKgPerM3"), Reference.Figure("moisturePercent")),
            row.Figure("woodCelsius"),
            row.Figure("solutionCelsius")
        );
        var problem = new FlowProblem(
            LineMesh.Flat(edges, row.Figure("permeabilityM2"), Reference.Figure("voids")),
            StoredRuns.Fluids,
            new double[cells],
            Heat: new(LineMesh.Flat(edges, unit.Permeability.RadialM2, unit.VoidFraction), warming)
        );
        // Where the wood fills within a few steps, heat follows the liquid of the step before.
        var allowed = row.Figure("permeabilityM2") < 1e-15 ? 0.5 : 2;
        var voids = Reference.Figure("depthMm") / 1000 * Reference.Figure("voids");
        foreach (var (stored, run, stage) in StoredRuns.StageByStage(row, problem))
        {
            var where = $"{row.GetProperty("schedule")}, {row.Figure("permeabilityM2")} m², stage {stage}";
            var (liquid, air) = (run.Moments[^1].GainedM3 / voids, run.Moments[^1].AirM3 / voids);
            StoredRuns.Close(stored.Figure("liquidShare"), liquid, (0.01, 1e-4), $"{where}: liquid");
            StoredRuns.Close(stored.Figure("airShare"), air, (0.01, 1e-4), $"{where}: air");
            var celsius = stored.GetProperty("cellsCelsius").EnumerateArray().Select(c => c.GetDouble()).ToArray();
            for (var i = 0; i < celsius.Length; i++)
            {
                var cell = Math.Min(cells - 1, i * Apart);
                StoredRuns.Close(celsius[i], run.Celsius![cell], (0, allowed), $"{where}, cell {cell}: °C");
            }
        }
    }
}
