using System.Text.Json;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Flow.Tests;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Heating;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Wood that hot solution or steam warms, against the same equations integrated by a general-purpose solver, at the end of every stage.</summary>
[Computed]
public sealed class WarmedWoodChecks
{
    private const int Apart = 10;
    private static readonly JsonElement Reference = JsonDocument
        .Parse(File.ReadAllText(Repository.At("tests", "Alburnum.OutsideChecks", "reference", "flow_heat.json")))
        .RootElement;

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
    [IndependentProgram("SciPy 1.10.1, solve_ivp (BDF)", "reference/flow_heat.py")]
    public void Uptake_air_and_temperatures_at_the_end_of_every_stage_are_those_that_SciPy_finds(int at)
    {
        var row = Reference.GetProperty("runs")[at];
        var cells = Reference.GetProperty("cells").GetInt32();
        var edges = GradedEdges.FromOneEnd(Figure(Reference, "depthMm"), cells, Figure(Reference, "grading"));
        var unit = WarmedWood.Unit;
        var warming = new Warming(
            new WoodHeat(Figure(Reference, "dryKgPerM3"), Figure(Reference, "moisturePercent")),
            Figure(row, "woodCelsius"),
            Figure(row, "solutionCelsius")
        );
        var problem = new FlowProblem(
            LineMesh.Flat(edges, Figure(row, "permeabilityM2"), Figure(Reference, "voids")),
            Fluids,
            new double[cells],
            Heat: new(LineMesh.Flat(edges, unit.Permeability.RadialM2, unit.VoidFraction), warming)
        );
        // Where the wood fills within a few steps, heat follows the liquid of the step before.
        var allowed = Figure(row, "permeabilityM2") < 1e-15 ? 0.5 : 2;
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
            var where = $"{row.GetProperty("schedule")}, {Figure(row, "permeabilityM2")} m², stage {stage + 1}";
            Close(Figure(rows[stage], "liquidShare"), run.Moments[^1].GainedM3 / voids, 1e-4, $"{where}: liquid");
            Close(Figure(rows[stage], "airShare"), run.Moments[^1].AirM3 / voids, 1e-4, $"{where}: air");
            var celsius = rows[stage].GetProperty("cellsCelsius").EnumerateArray().Select(c => c.GetDouble()).ToArray();
            for (var i = 0; i < celsius.Length; i++)
            {
                var found = run.Celsius![Math.Min(cells - 1, i * Apart)];
                Assert.True(
                    Math.Abs(found - celsius[i]) <= allowed,
                    $"{where}, cell {i * Apart}: {found} °C where SciPy finds {celsius[i]}"
                );
            }
        }
    }

    private static Stage Stage(JsonElement row) =>
        new(
            "stage",
            row.GetProperty("contact").GetString() == "liquid" ? Contact.Liquid : Contact.Air,
            Figure(row, "minutes"),
            Figure(row, "fromKPa"),
            Figure(row, "toKPa"),
            row.GetProperty("celsius") is { ValueKind: JsonValueKind.Number } celsius ? celsius.GetDouble() : null
        );

    private static void Close(double expected, double found, double beside, string what) =>
        Assert.True(
            Math.Abs(found - expected) <= 0.01 * Math.Abs(expected) + beside,
            $"{what}: {found} where SciPy finds {expected}"
        );

    private static double Figure(JsonElement row, string name) => row.GetProperty(name).GetDouble();
}
