using System.Text.Json;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Runs of schedules by a general-purpose solver, kept beside the scripts that made them, and what they are held against.</summary>
internal static class StoredRuns
{
    /// <summary>Solution, air and laws as the scripts have them.</summary>
    public static FluidPair Fluids { get; } =
        new(1.002, 0.0181, RelativePermeability.Usual, new CapillaryCurve(2 * 72.8 / 15));

    /// <summary>What is wanted is the same equations: the steps' own error is held elsewhere.</summary>
    public static StepControl Fine { get; } = new(growth: 3, cellTolerance: 1e-5, uptakeError: 1e-4);

    /// <summary>A file of runs.</summary>
    public static JsonElement Of(string file) =>
        JsonDocument
            .Parse(File.ReadAllText(Repository.At("tests", "Alburnum.OutsideChecks", "reference", file)))
            .RootElement;

    /// <summary>The number of each run.</summary>
    public static TheoryData<int> Numbers(JsonElement runs) => [.. Enumerable.Range(0, runs.GetArrayLength())];

    /// <summary>A number by its name.</summary>
    public static double Figure(this JsonElement row, string name) => row.GetProperty(name).GetDouble();

    /// <summary>A stage of a stored schedule.</summary>
    public static Stage Stage(JsonElement row) =>
        new(
            "stage",
            row.GetProperty("contact").GetString() == "liquid" ? Contact.Liquid : Contact.Air,
            row.Figure("minutes"),
            row.Figure("fromKPa"),
            row.Figure("toKPa"),
            row.TryGetProperty("celsius", out var celsius) && celsius.ValueKind == JsonValueKind.Number
                ? celsius.GetDouble()
                : null
        );

    /// <summary>The run from the start to the end of one stage after another, and what was stored of it there.</summary>
    public static IEnumerable<(JsonElement Stored, FlowRun Run, int Stage)> StageByStage(
        JsonElement row,
        FlowProblem problem
    )
    {
        var rows = row.GetProperty("stages").EnumerateArray().ToArray();
        var stages = rows.Select(Stage).ToArray();
        for (var stage = 0; stage < stages.Length; stage++)
        {
            var run = FlowSolver.Run(
                problem,
                new Schedule("as stored", stages[..(stage + 1)]),
                Fine,
                cancellation: TestContext.Current.CancellationToken
            );
            Assert.IsType<Completed>(run.Ending);
            yield return (rows[stage], run, stage + 1);
        }
    }

    /// <summary>Holds a figure against a stored one, to a share of it and so much beside.</summary>
    public static void Close(double stored, double found, (double Share, double Beside) within, string what) =>
        Assert.True(
            Math.Abs(found - stored) <= within.Share * Math.Abs(stored) + within.Beside + 1e-12,
            $"{what}: {found} where SciPy finds {stored}"
        );
}
