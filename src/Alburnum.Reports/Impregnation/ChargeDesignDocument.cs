using Alburnum.Impregnation.Charging;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>Schedules held against what a charge must reach. Fields as in docs/json/charge.md.</summary>
public sealed record ChargeDesignDocument
{
    /// <summary>What was asked, in one line.</summary>
    public required string Title { get; init; }

    /// <summary>Required depth, in words.</summary>
    public required string Demand { get; init; }

    /// <summary>Share of cores that must reach the depth, 0 to 1.</summary>
    public required double WantedShare { get; init; }

    /// <summary>Product required in the analytical zone, kg/m³.</summary>
    public required double RequiredKgPerM3 { get; init; }

    /// <summary>Chance that depth and retention are both met, at least, 0 to 1.</summary>
    public required double Chance { get; init; }

    /// <summary>The schedules tried, in the order of their file.</summary>
    public required IReadOnlyList<ScheduleTrialDocument> Tried { get; init; }

    /// <summary>Name of the schedule chosen; null where none is enough.</summary>
    public string? Chosen { get; init; }

    /// <summary>What to do.</summary>
    public required string Answer { get; init; }

    /// <summary>What was assumed because nobody said it, one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>One schedule tried.</summary>
public sealed record ScheduleTrialDocument
{
    /// <summary>Name of the schedule.</summary>
    public required string Schedule { get; init; }

    /// <summary>Shortest pressure period tried that is enough, or the longest where none is, min; null where the schedule has none.</summary>
    public double? PressureMinutes { get; init; }

    /// <summary>Length of the schedule with it, min.</summary>
    public required double ScheduleMinutes { get; init; }

    /// <summary>Chance that enough of the cores reach the depth, 0 to 1.</summary>
    public required double DepthChance { get; init; }

    /// <summary>Strength that meets the retention with the chance asked for, % of product by mass; null where the schedule is not enough.</summary>
    public double? StrengthPercent { get; init; }

    /// <summary>Solution that the timber is expected to keep, L; null likewise.</summary>
    public Estimate? SolutionL { get; init; }

    /// <summary>Product in it, kg; null likewise.</summary>
    public Estimate? ProductKg { get; init; }

    /// <summary>Why the schedule is not enough; null where it is.</summary>
    public string? NotEnough { get; init; }
}

/// <summary>Writes a design down.</summary>
public static class ChargeDesignMapping
{
    /// <summary>The design as a document.</summary>
    public static ChargeDesignDocument Of(DesignedCharge designed)
    {
        ArgumentNullException.ThrowIfNull(designed);
        var (words, design) = (ChargeWords.Current, designed.Design);
        return new()
        {
            Title = words.Title(designed.Order.Name),
            Demand = TreatingWords.Demand(designed.Rule),
            RequiredKgPerM3 = designed.Order.RetentionKgPerM3,
            WantedShare = design.Goal.CoreShare,
            Chance = design.Goal.Chance,
            Tried = [.. design.Tried.Select(trial => Of(trial, words))],
            Chosen = design.Chosen?.Schedule.Value.Name,
            Answer = words.Answer(design, TreatingQuestion.IsTooWet(designed.Order.Treatment.MoisturePercent)),
            Assumptions = TreatingWords.Current.Say(designed.Assumptions),
            Cautions =
            [
                words.DesignCaution(DesignCharge.PeriodsMinutes),
                .. TreatingWords.Current.TooWet(designed.Order.Treatment.MoisturePercent),
                .. words.Cautions,
            ],
        };
    }

    private static ScheduleTrialDocument Of(ScheduleTrial trial, ChargeWords words) =>
        new()
        {
            Schedule = trial.Schedule.Value.Name,
            PressureMinutes = trial.PressureMinutes,
            ScheduleMinutes = trial.Schedule.Value.Minutes,
            DepthChance = trial.DepthChance,
            StrengthPercent = trial.Plan?.StrengthPercent.Value,
            SolutionL = trial.Plan?.SolutionL,
            ProductKg = trial.Plan?.ConcentrateKg,
            NotEnough = trial.Shortfall is { } shortfall ? words.Say(shortfall) : null,
        };
}
