using System.Text.Json;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Flow.Tests;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Whole schedules, dry wood and wet, against the same equations integrated by a general-purpose solver, at the end of every stage.</summary>
[Computed]
public sealed class WholeScheduleChecks
{
    private const double Half = 0.005;
    private static readonly JsonElement Reference = StoredRuns.Of("flow_schedules.json");

    public static TheoryData<int> Runs => StoredRuns.Numbers(Reference.GetProperty("runs"));

    [Theory]
    [MemberData(nameof(Runs))]
    [IndependentProgram("SciPy 1.10.1, solve_ivp (BDF)", "reference/flow_schedules.py")]
    public void Uptake_air_and_front_at_the_end_of_every_stage_are_within_half_a_per_cent_of_SciPys(int at)
    {
        var row = Reference.GetProperty("runs")[at];
        var cells = Reference.GetProperty("cells").GetInt32();
        var edges = GradedEdges.FromOneEnd(Reference.Figure("depthMm"), cells, Reference.Figure("grading"));
        var mesh = LineMesh.Flat(edges, row.Figure("permeabilityM2"), Reference.Figure("voids"));
        var water = row.Figure("waterShare");
        var problem = new FlowProblem(mesh, StoredRuns.Fluids, [.. Enumerable.Repeat(water, cells)]);
        var voids = Reference.Figure("depthMm") / 1000 * Reference.Figure("voids");
        foreach (var (stored, run, stage) in StoredRuns.StageByStage(row, problem))
        {
            var where = $"{row.GetProperty("schedule")}, stage {stage}";
            var (liquid, air) = (water + run.Moments[^1].GainedM3 / voids, run.Moments[^1].AirM3 / voids);
            StoredRuns.Close(stored.Figure("liquidShare"), liquid, (Half, 0), $"{where}: liquid");
            StoredRuns.Close(stored.Figure("airShare"), air, (Half, 0), $"{where}: air");
            // Where the saturation hardly changes with depth, as after brushing, it is that which must agree at the front.
            var front = stored.Figure("frontMm");
            if (
                front == 0
                || Math.Abs(Saturation(run.Saturation, edges, front) - Reference.Figure("frontShare")) > 0.002
            )
                StoredRuns.Close(front, FrontMm(run.Saturation, edges), (Half, 0.01), $"{where}: front");
        }
    }

    // As the script reads it: straight between the middles of the cells, from the deepest that is filled so far.
    private static double FrontMm(IReadOnlyList<double> saturation, double[] edges)
    {
        var share = Reference.Figure("frontShare");
        for (var i = saturation.Count - 1; i >= 0; i--)
        {
            if (saturation[i] < share)
                continue;
            if (i + 1 == saturation.Count)
                return edges[^1];
            var (here, next) = ((edges[i] + edges[i + 1]) / 2, (edges[i + 1] + edges[i + 2]) / 2);
            return here + (next - here) * (saturation[i] - share) / (saturation[i] - saturation[i + 1]);
        }
        return 0;
    }

    private static double Saturation(IReadOnlyList<double> saturation, double[] edges, double mm)
    {
        var i = 0;
        while (i + 2 < saturation.Count && (edges[i + 1] + edges[i + 2]) / 2 < mm)
            i++;
        var (here, next) = ((edges[i] + edges[i + 1]) / 2, (edges[i + 1] + edges[i + 2]) / 2);
        var share = Math.Clamp((mm - here) / (next - here), 0, 1);
        return saturation[i] + share * (saturation[i + 1] - saturation[i]);
    }
}
