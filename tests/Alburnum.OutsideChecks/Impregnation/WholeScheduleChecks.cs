using System.Text.Json;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Flow.Tests;
using Alburnum.Impregnation;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Whole schedules, dry wood and wet, against the same equations integrated by a general-purpose solver, at the end of every stage.</summary>
[Computed]
public sealed class WholeScheduleChecks
{
    private static readonly JsonElement Reference = JsonDocument
        .Parse(File.ReadAllText(Repository.At("tests", "Alburnum.OutsideChecks", "reference", "flow_schedules.json")))
        .RootElement;

    // What is wanted is the same equations: the steps' own error is held elsewhere.
    private static readonly StepControl Fine = new(growth: 3, cellTolerance: 1e-5, uptakeError: 1e-4);

    private static readonly FluidPair Fluids = new(
        1.002,
        0.0181,
        RelativePermeability.Usual,
        new CapillaryCurve(2 * 72.8 / 15)
    );

    public static TheoryData<int> Runs => [.. Enumerable.Range(0, Reference.GetProperty("runs").GetArrayLength())];

    [Theory]
    [MemberData(nameof(Runs))]
    [IndependentProgram("SciPy 1.10.1, solve_ivp (BDF)", "reference/flow_schedules.py")]
    public void Uptake_air_and_front_at_the_end_of_every_stage_are_within_half_a_per_cent_of_SciPys(int at)
    {
        var row = Reference.GetProperty("runs")[at];
        var cells = Reference.GetProperty("cells").GetInt32();
        var edges = GradedEdges.FromOneEnd(Figure(Reference, "depthMm"), cells, Figure(Reference, "grading"));
        var mesh = LineMesh.Flat(edges, Figure(row, "permeabilityM2"), Figure(Reference, "voids"));
        var water = Figure(row, "waterShare");
        var problem = new FlowProblem(mesh, Fluids, [.. Enumerable.Repeat(water, cells)]);
        var rows = row.GetProperty("stages").EnumerateArray().ToArray();
        var stages = rows.Select(Stage).ToArray();
        var voids = Figure(Reference, "depthMm") / 1000 * Figure(Reference, "voids");
        for (var stage = 0; stage < stages.Length; stage++)
        {
            var run = FlowSolver.Run(
                problem,
                new Schedule("as stored", stages[..(stage + 1)]),
                Fine,
                cancellation: TestContext.Current.CancellationToken
            );
            Assert.IsType<Completed>(run.Ending);
            var (liquid, air, front) = (
                Figure(rows[stage], "liquidShare"),
                Figure(rows[stage], "airShare"),
                Figure(rows[stage], "frontMm")
            );
            var where = $"{row.GetProperty("schedule")}, stage {stage + 1}";
            Close(liquid, water + run.Moments[^1].GainedM3 / voids, 0, $"{where}: liquid");
            Close(air, run.Moments[^1].AirM3 / voids, 0, $"{where}: air");
            // Where the saturation hardly changes with depth, as after brushing, it is that which must agree at the front.
            if (
                front == 0
                || Math.Abs(Saturation(run.Saturation, edges, front) - Figure(Reference, "frontShare")) > 0.002
            )
                Close(front, FrontMm(run.Saturation, edges), 0.01, $"{where}: front");
        }
    }

    private static Stage Stage(JsonElement row) =>
        new(
            "stage",
            row.GetProperty("contact").GetString() == "liquid" ? Contact.Liquid : Contact.Air,
            Figure(row, "minutes"),
            Figure(row, "fromKPa"),
            Figure(row, "toKPa")
        );

    // As the script reads it: straight between the middles of the cells, from the deepest that is filled so far.
    private static double FrontMm(IReadOnlyList<double> saturation, double[] edges)
    {
        var share = Figure(Reference, "frontShare");
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

    private static void Close(double expected, double found, double beside, string what) =>
        Assert.True(
            Math.Abs(found - expected) <= 0.005 * Math.Abs(expected) + beside + 1e-12,
            $"{what}: {found} where SciPy finds {expected}"
        );

    private static double Figure(JsonElement row, string name) => row.GetProperty(name).GetDouble();
}
