using Alburnum.Impregnation.Prediction;

namespace Alburnum.Flow.Pieces;

/// <summary>How long the pressure must be held for a depth.</summary>
public static class TimeToDepth
{
    /// <summary>Longest pressure period looked at, min.</summary>
    public const double LongestMinutes = 2 * 24 * 60;

    /// <summary>Pressure period after which the front stands at a depth, min; null where two days are not enough.</summary>
    /// <param name="question">What is asked; the schedule gives the pressures.</param>
    /// <param name="depthMm">Depth, mm. Above 0.</param>
    /// <param name="sapwoodMm">Sapwood on the way, mm; 0 where heartwood reaches the face.</param>
    /// <param name="factor">Permeability over the median. Above 0.</param>
    public static double? Minutes(PredictionQuestion question, double depthMm, double sapwoodMm, double factor)
    {
        Require.Positive(depthMm, "mm");
        var way = question.Section.ThicknessMm / 2;
        if (depthMm > way || Depth(LongestMinutes) < depthMm)
            return null;
        double low = 0.1,
            high = LongestMinutes;
        while (high / low > 1.02)
        {
            var middle = Math.Sqrt(low * high);
            if (Depth(middle) >= depthMm)
                high = middle;
            else
                low = middle;
        }
        return high;

        double Depth(double minutes)
        {
            var front = WayRun.Table(question, question.Schedule.WithPressurePeriod(minutes));
            return LayeredWay.DepthMm(
                front,
                question.VoidFraction,
                (question.Sapwood.LateralMedianM2 * factor, Math.Min(sapwoodMm, way)),
                (question.Heartwood.LateralMedianM2 * factor, way)
            );
        }
    }
}
