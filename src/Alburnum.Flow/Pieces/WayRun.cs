using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;

namespace Alburnum.Flow.Pieces;

/// <summary>The flow solver on one way from a face inwards: a line of cells, narrow at the face and wider inwards, closed where the fronts meet.</summary>
public static class WayRun
{
    private const int Cells = 80;

    // The first cell is a 1,300th of the way, the last a twentieth: a front in refractory wood stays within the first few per cent.
    private const double Grading = 4;

    // The answer depends on k/(φL²) only: any size will do.
    private const double WayM = 0.05;
    private const double Voids = 0.6;
    private static readonly double[] Edges = GradedEdges.FromOneEnd(1, Cells, Grading);

    /// <summary>The table of a question's schedule, solution and moisture, solved as it is read.</summary>
    /// <param name="question">What is asked.</param>
    public static FrontTable Table(PredictionQuestion question) => Table(question, question.Schedule);

    /// <summary>The table of another schedule with a question's solution and moisture.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="schedule">The schedule.</param>
    public static FrontTable Table(PredictionQuestion question, Schedule schedule)
    {
        ArgumentNullException.ThrowIfNull(question);
        var (fluids, saturation) = (FluidPair.Of(question.Liquid), question.WaterShare);
        return new((scaled, narrowing) => Of(schedule, fluids, saturation, scaled, narrowing));
    }

    /// <summary>Runs a schedule on one way.</summary>
    /// <param name="schedule">The schedule.</param>
    /// <param name="fluids">Solution and air.</param>
    /// <param name="saturation">Share of the voids that holds the wood's own water, 0 to 1.</param>
    /// <param name="scaled">k/(φL²), in SI units. Above 0.</param>
    /// <param name="narrowing">Share of its breadth that the way has lost at its end, 0 to 1.</param>
    /// <exception cref="InvalidOperationException">The solver could not carry the schedule through.</exception>
    internal static FilledWay Of(
        Schedule schedule,
        FluidPair fluids,
        double saturation,
        double scaled,
        double narrowing
    )
    {
        var mesh = Mesh(scaled * Voids * WayM * WayM, narrowing);
        double[] water = [.. Enumerable.Repeat(saturation, Cells)];
        var run = FlowSolver.Run(new FlowProblem(mesh, fluids, water), schedule, StepControl.Rough);
        if (run.Ending is not Completed)
            throw new InvalidOperationException($"One way, k/(φL²) = {scaled}: {run.Ending}.");
        var voids = mesh.VoidM3;
        double whole = 0;
        foreach (var cell in voids)
            whole += cell;
        var kept = new double[Cells + 1];
        for (var i = 0; i < Cells; i++)
            kept[i + 1] = kept[i] + run.Solution[i] * voids[i] / whole;
        return new(
            run.ReachedDepth(Cells, i => i, i => Edges[i + 1] - Edges[i]),
            run.Moments[^1].GainedM3 / whole,
            Edges,
            kept
        )
        {
            FullestMinutes = run.Moments.MaxBy(moment => moment.GainedM3)!.Minutes,
            Gained = [.. run.Moments.Select(moment => (moment.Minutes, moment.GainedM3 / whole))],
        };
    }

    // The breadth falls evenly from the face inwards; a conductance is exact for steady flow along it.
    private static FlowMesh Mesh(double permeabilityM2, double narrowing)
    {
        double Middle(int cell) => (Edges[cell] + Edges[cell + 1]) / 2;
        double Volume(double from, double to) => to - from - narrowing * (to * to - from * from) / 2;
        double Resistance(double from, double to) =>
            narrowing == 0 ? to - from : Math.Log((1 - narrowing * from) / (1 - narrowing * to)) / narrowing;
        double Conductance(double from, double to) => permeabilityM2 / WayM / Resistance(from, to);
        return new FlowMesh(
            [.. Enumerable.Range(0, Cells).Select(i => Voids * WayM * Volume(Edges[i], Edges[i + 1]))],
            [.. Enumerable.Range(0, Cells - 1).Select(i => (i, i + 1, Conductance(Middle(i), Middle(i + 1))))],
            [(0, Conductance(0, Middle(0)))]
        );
    }
}
