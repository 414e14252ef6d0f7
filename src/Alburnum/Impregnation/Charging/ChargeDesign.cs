namespace Alburnum.Impregnation.Charging;

/// <summary>What a charge should cost least of.</summary>
public enum ChargeCost
{
    /// <summary>Time in the vessel.</summary>
    Time,

    /// <summary>Solution kept by the timber.</summary>
    Solution,
}

/// <summary>What a charge must reach.</summary>
/// <param name="CoreShare">Share of cores that must reach the depth, 0 to 1.</param>
/// <param name="Chance">Chance that depth and retention are both met, 0.5 to 0.98.</param>
/// <param name="Least">What it should cost least of.</param>
public sealed record ChargeGoal(double CoreShare, double Chance, ChargeCost Least)
{
    /// <summary>Chance that depth and retention must each be met with: both together are then met with the chance asked for at least, however the two hang together (Bonferroni's inequality).</summary>
    public double ChanceOfEach => OfEach(Chance);

    /// <summary>The same of any chance, 0 to 1.</summary>
    public static double OfEach(double chance) => 1 - (1 - chance) / 2;
}

/// <summary>One schedule, with the shortest pressure period tried that reaches the depth often enough.</summary>
/// <param name="Schedule">The schedule, with that period.</param>
/// <param name="PressureMinutes">The period, min; null where the schedule has none that could be longer or shorter.</param>
/// <param name="DepthChance">Chance that enough of the cores reach the depth, 0 to 1.</param>
/// <param name="Plan">The plan, at a strength that meets the retention with the chance asked for; null where none can be made.</param>
/// <param name="Shortfall">Why none can be made; null where one is.</param>
public sealed record ScheduleTrial(
    Fact<Schedule> Schedule,
    double? PressureMinutes,
    double DepthChance,
    ChargePlan? Plan,
    ChargeShortfall? Shortfall
);

/// <summary>Schedules held against what a charge must reach.</summary>
/// <param name="Goal">What it must reach.</param>
/// <param name="Tried">The schedules, in the order of their file.</param>
public sealed record ChargeDesign(ChargeGoal Goal, IReadOnlyList<ScheduleTrial> Tried)
{
    /// <summary>The schedule that costs least among those that are enough; null where none is.</summary>
    public ScheduleTrial? Chosen =>
        Tried
            .Where(trial => trial.Plan is not null)
            .MinBy(trial =>
                (trial.Schedule.Value.Minutes, trial.Plan!.SolutionL.Value) is var (minutes, litres)
                && Goal.Least == ChargeCost.Time
                    ? (minutes, litres)
                    : (litres, minutes)
            );
}
