using Alburnum.Impregnation.Flow;

namespace Alburnum.Impregnation.Prediction;

/// <summary>How far solution comes in from a cut end.</summary>
public static class EndReach
{
    /// <summary>Half the length of the piece looked at, mm: where the fronts from its two ends would meet.</summary>
    public const double HalfLengthMm = 1000;

    private const int Along = 60;
    private const int Across = 12;

    /// <summary>Depth by the quick model along the grain: slow twentieth, middle and fast twentieth of pieces, mm; at most half the length.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="isHeartwood">True for the end of heartwood, false for that of sapwood.</param>
    public static Spread Quick(PredictionQuestion question, bool isHeartwood)
    {
        var law = isHeartwood ? question.Heartwood : question.Sapwood;
        var front = new QuickFront(question.Schedule, question.Liquid, isRound: false);
        var spread = Math.Exp(1.645 * PermeabilityFit.PieceToPiece(law));
        return new(Depth(1 / spread), Depth(1), Depth(spread));

        double Depth(double factor) =>
            front.DepthMm(law.Typical(factor).LongitudinalM2, question.VoidFraction, HalfLengthMm);
    }

    /// <summary>Depth along the middle of the median piece by the flow solver, mm; half the length where all of it is reached.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="isHeartwood">True for the end of heartwood, false for that of sapwood.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <returns>Null where the run did not reach the schedule's end.</returns>
    public static double? Solved(PredictionQuestion question, bool isHeartwood, CancellationToken cancellation)
    {
        var law = isHeartwood ? question.Heartwood : question.Sapwood;
        var length = Math.Clamp(3 * Quick(question, isHeartwood).Middle, 20, HalfLengthMm);
        var problem = EndGrain.Of(
            question.Section,
            new WoodFlow(law.Typical(), question.VoidFraction),
            FluidPair.Of(question.Liquid),
            length,
            Along,
            Across
        );
        var run = FlowSolver.Run(problem, question.Schedule, StepControl.Usual, cancellation: cancellation);
        if (run.Ending is not Flow.Settled)
            return null;
        var depth = EndGrain.MiddleDepthMm(run, length, Along);
        return depth >= length ? HalfLengthMm : depth;
    }
}
