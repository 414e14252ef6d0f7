using Alburnum.Impregnation.Prediction;

namespace Alburnum.Flow.Pieces;

/// <summary>How far solution comes in from a cut end.</summary>
public static class EndReach
{
    /// <summary>Half the length of the piece looked at, mm: where the fronts from its two ends would meet.</summary>
    public const double HalfLengthMm = 1000;

    /// <summary>Depth along the grain: slow twentieth, middle and fast twentieth of pieces, mm; at most half the length.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="front">The table of its schedule.</param>
    /// <param name="isHeartwood">True for the end of heartwood, false for that of sapwood.</param>
    public static Spread Of(PredictionQuestion question, FrontTable front, bool isHeartwood)
    {
        var law = isHeartwood ? question.Heartwood : question.Sapwood;
        var spread = law.TwentiethFactor;
        return new(Depth(1 / spread), Depth(1), Depth(spread));

        double Depth(double factor) =>
            front.DepthMm(law.Typical(factor).LongitudinalM2, question.VoidFraction, HalfLengthMm);
    }
}
