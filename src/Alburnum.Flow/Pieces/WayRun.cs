using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
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

    // Where all is as warm as the solution the answer depends on k/(φL²) only: any void fraction will do.
    private const double AnyVoids = 0.6;
    private static readonly double[] Edges = GradedEdges.FromOneEnd(1, Cells, Grading);

    // Runs in dry wood with water-thin solution at the usual temperature, which most questions share: kept as long as their schedule is.
    private static readonly TreatingLiquid UsualLiquid = TreatingLiquid.Water();
    private static readonly ConditionalWeakTable<
        Schedule,
        ConcurrentDictionary<(SingleWay Way, double? Until), FilledWay>
    > Kept = [];

    /// <summary>The table of a question's schedule, solution and moisture, solved as it is read.</summary>
    /// <param name="question">What is asked.</param>
    public static FrontTable Table(PredictionQuestion question) => Table(question, question.Schedule);

    /// <summary>The table of another schedule with a question's solution and moisture.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="schedule">The schedule.</param>
    public static FrontTable Table(PredictionQuestion question, Schedule schedule)
    {
        ArgumentNullException.ThrowIfNull(question);
        return new(way => Of(question, schedule, way), question.Warming is not null);
    }

    /// <summary>A schedule on one way.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="schedule">The schedule.</param>
    /// <param name="way">The way.</param>
    /// <param name="until">When it is broken off, min since it began; null where it is run to its end.</param>
    /// <exception cref="InvalidOperationException">The solver could not carry the schedule through.</exception>
    internal static FilledWay Of(PredictionQuestion question, Schedule schedule, SingleWay way, double? until = null)
    {
        return question is { Warming: null, WaterShare: 0 } && question.Liquid == UsualLiquid
            ? Kept.GetOrCreateValue(schedule).GetOrAdd((way, until), asked => Run(asked.Way, asked.Until))
            : Run(way, until);

        FilledWay Run(SingleWay on, double? minutes) =>
            Solved(question, minutes is { } end ? schedule.Until(end) : schedule, on);
    }

    private static FilledWay Solved(PredictionQuestion question, Schedule schedule, SingleWay way)
    {
        var (voids, lengthM) = (question.Warming is null ? AnyVoids : question.VoidFraction, way.Mm / 1000);
        var mesh = Mesh(way.Scaled * voids * lengthM * lengthM, voids, way);
        var problem = new FlowProblem(
            mesh,
            FluidPair.Of(question.Liquid),
            [.. Enumerable.Repeat(question.WaterShare, Cells)],
            Heat: question.Warming is { } warming
                ? new(Mesh(WarmedWood.Unit.Permeability.RadialM2, WarmedWood.Unit.VoidFraction, way), warming)
                : null
        );
        var run = FlowSolver.Run(problem, schedule, StepControl.Rough);
        if (run.Ending is not Completed)
            throw new InvalidOperationException($"One way, {way}: {run.Ending}.");
        double whole = 0;
        foreach (var cell in mesh.VoidM3)
            whole += cell;
        var kept = new double[Cells + 1];
        for (var i = 0; i < Cells; i++)
            kept[i + 1] = kept[i] + run.Solution[i] * mesh.VoidM3[i] / whole;
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
    private static FlowMesh Mesh(double permeabilityM2, double voids, SingleWay way)
    {
        var (narrowing, lengthM) = (way.Narrowing, way.Mm / 1000);
        double Middle(int cell) => (Edges[cell] + Edges[cell + 1]) / 2;
        double Volume(double from, double to) => to - from - narrowing * (to * to - from * from) / 2;
        double Resistance(double from, double to) =>
            narrowing == 0 ? to - from : Math.Log((1 - narrowing * from) / (1 - narrowing * to)) / narrowing;
        double Conductance(double from, double to) => permeabilityM2 / lengthM / Resistance(from, to);
        return new FlowMesh(
            [.. Enumerable.Range(0, Cells).Select(i => voids * lengthM * Volume(Edges[i], Edges[i + 1]))],
            [.. Enumerable.Range(0, Cells - 1).Select(i => (i, i + 1, Conductance(Middle(i), Middle(i + 1))))],
            [(0, Conductance(0, Middle(0)))]
        );
    }
}
