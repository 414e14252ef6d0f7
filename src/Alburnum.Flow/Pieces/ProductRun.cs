using System.Collections.Concurrent;
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
    public static FrontTable Table(PredictionQuestion question, WallShare walls) => Tables(question, [walls])[0];

    /// <summary>The same for several laws of the walls, from the same runs.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="walls">What the walls take, by each law.</param>
    public static IReadOnlyList<FrontTable> Tables(PredictionQuestion question, IReadOnlyList<WallShare> walls)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(walls);
        var schedule = question.Schedule;
        ConcurrentDictionary<SingleWay, (FilledWay Fullest, FilledWay End)> runs = [];
        return
        [
            .. walls.Select(law => new FrontTable(
                way =>
                {
                    var (fullest, end) = runs.GetOrAdd(way, Both);
                    return ProductWay.Of(fullest, end, law, way.Narrowing);
                },
                question.Warming is not null
            )),
        ];

        (FilledWay Fullest, FilledWay End) Both(SingleWay way)
        {
            var end = WayRun.Of(question, schedule, way);
            return end.FullestMinutes is > 0 and var minutes && minutes < schedule.Minutes - LeastGivenMinutes
                ? (WayRun.Of(question, schedule, way, minutes), end)
                : (end, end);
        }
    }
}
