using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;

namespace Alburnum.Flow.Pieces;

/// <summary>The flow solver's answer for the cut end of the median piece of a question.</summary>
/// <param name="Ending">How the run ended.</param>
/// <param name="DepthMm">Depth along the middle of the piece where the run ended, mm; half the length where all of it is reached.</param>
public sealed record EndRun(FlowEnding Ending, double DepthMm)
{
    private const int Along = 60;
    private const int Across = 12;

    /// <summary>Treats the end of the median piece.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="isHeartwood">True for the end of heartwood, false for that of sapwood.</param>
    /// <param name="expectedMm">Depth expected, mm: the strip is three times as long.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static EndRun Of(
        PredictionQuestion question,
        bool isHeartwood,
        double expectedMm,
        CancellationToken cancellation
    )
    {
        var law = isHeartwood ? question.Heartwood : question.Sapwood;
        var length = Math.Clamp(3 * expectedMm, 20, EndReach.HalfLengthMm);
        var problem = Cut(new WoodFlow(law.Typical(), question.VoidFraction, question.WaterShare));
        if (question.Warming is { } warming)
            problem = problem with { Heat = new(Cut(WarmedWood.Unit).Mesh, warming) };
        var run = FlowSolver.Run(problem, question.Schedule, StepControl.Usual, cancellation: cancellation);
        var depth = EndGrainMesh.MiddleDepthMm(run, length, Along);
        return new(run.Ending, depth >= length ? EndReach.HalfLengthMm : depth);

        FlowProblem Cut(WoodFlow wood) =>
            EndGrainMesh.Of(question.Section, wood, FluidPair.Of(question.Liquid), length, Along, Across);
    }
}
