using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A charge designed: what it must reach, and which schedules do.</summary>
/// <param name="Order">The charge as it was written down; its own schedule is not used.</param>
/// <param name="Rule">Required depth.</param>
/// <param name="Design">The schedules, and the one chosen.</param>
/// <param name="Assumptions">What was assumed because nobody said it.</param>
public sealed record DesignedCharge(
    ChargeOrder Order,
    DepthRule Rule,
    ChargeDesign Design,
    IReadOnlyList<LogAssumption> Assumptions
);

/// <summary>Looks for the schedule, pressure period and strength that meet depth and retention with a stated chance at least cost.</summary>
public static class DesignCharge
{
    /// <summary>Pressure periods that are tried, min: such as a treater would set. Our own choice.</summary>
    public static IReadOnlyList<double> PeriodsMinutes { get; } =
    [5, 10, 15, 20, 30, 45, 60, 90, 120, 150, 180, 240, 300, 360, 480, 600, 720];

    /// <summary>Looks.</summary>
    /// <param name="order">The charge; its own schedule is not used.</param>
    /// <param name="goal">What it must reach.</param>
    /// <param name="schedules">Schedules to choose from; null for those of the facts.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="progress">Told the share of the schedules that are done; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">Something needed is not known of the timber, or cannot be.</exception>
    public static DesignedCharge Run(
        ChargeOrder order,
        ChargeGoal goal,
        IReadOnlyList<Fact<Schedule>>? schedules,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(goal);
        ArgumentNullException.ThrowIfNull(facts);
        var known = schedules ?? facts.Impregnation.Schedules;
        var tried = new List<(ExpectedCharge Expected, ScheduleTrial Trial)>();
        foreach (var schedule in known)
        {
            var (expected, minutes) = Shortest(schedule);
            tried.Add((expected, Trial(expected, minutes, goal)));
            progress?.Report(new((double)tried.Count / known.Count));
        }
        var (first, _) = tried[0];
        return new(order, first.Rule, new(goal, [.. tried.Select(each => each.Trial)]), first.Assumptions);

        (ExpectedCharge Expected, double? Minutes) Shortest(Fact<Schedule> schedule)
        {
            if (!schedule.Value.IsUnderPressure)
                return (At(null), null);
            // A longer period never brings less, so the shortest that is enough is bisected; the longest where none is.
            var (least, most) = (0, PeriodsMinutes.Count - 1);
            var best = At(PeriodsMinutes[most]);
            if (DepthChance(best, goal) < goal.ChanceOfEach)
                return (best, PeriodsMinutes[most]);
            while (least < most)
            {
                var middle = (least + most) / 2;
                if (At(PeriodsMinutes[middle]) is var shorter && DepthChance(shorter, goal) >= goal.ChanceOfEach)
                    (most, best) = (middle, shorter);
                else
                    least = middle + 1;
            }
            return (best, PeriodsMinutes[most]);

            ExpectedCharge At(double? minutes) =>
                ExpectedCharge.Of(
                    order,
                    request =>
                        request with
                        {
                            Schedule = schedule.Value.Name,
                            OwnSchedules = schedules,
                            PressureMinutes = minutes,
                        },
                    facts,
                    stop
                );
        }
    }

    private static double DepthChance(ExpectedCharge expected, ChargeGoal goal) =>
        expected.BatchShares.Average(share => share >= goal.CoreShare ? 1.0 : 0);

    private static ScheduleTrial Trial(ExpectedCharge expected, double? minutes, ChargeGoal goal)
    {
        var chance = DepthChance(expected, goal);
        var asked = expected.Question.Aimed(goal.ChanceOfEach);
        ChargeShortfall? shortfall =
            chance < goal.ChanceOfEach ? new DepthTooSeldom()
            : asked is null ? new ZoneTooUncertain(expected.Question.ZoneLPerM3)
            : asked.Shortfall;
        return new(expected.Schedule, minutes, chance, shortfall is null ? ChargePlan.For(asked!) : null, shortfall);
    }
}
