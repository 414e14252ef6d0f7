using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sorbing;

namespace Alburnum.Flow.Pieces;

/// <summary>The product on single ways: each is run twice, to where it holds most solution and to the end.</summary>
public static class ProductRun
{
    // Nothing was given back that could be told from the error of the steps.
    private const double LeastGivenMinutes = 1e-6;

    /// <summary>The table of a question's schedule, in which product is counted as the solution at full strength that would carry it.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="walls">What the walls take; with none it is the table of the solution itself.</param>
    public static FrontTable Table(PredictionQuestion question, WallShare walls)
    {
        ArgumentNullException.ThrowIfNull(question);
        var schedule = question.Schedule;
        return new(
            way =>
            {
                var end = WayRun.Of(question, schedule, way);
                var fullest =
                    end.FullestMinutes is > 0 and var minutes && minutes < schedule.Minutes - LeastGivenMinutes
                        ? WayRun.Of(question, schedule.Until(minutes), way)
                        : end;
                return ProductWay.Of(fullest, end, walls, way.Narrowing);
            },
            question.Warming is not null
        );
    }
}
