namespace Alburnum.Reports.Impregnation;

/// <summary>The plan for a charge. Fields as in docs/json/charge.md.</summary>
public sealed record ChargePlanDocument
{
    /// <summary>What the charge is.</summary>
    public required string Name { get; init; }

    /// <summary>Pieces.</summary>
    public required int PieceCount { get; init; }

    /// <summary>Volume of the timber, m³.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Lateral surface of the timber, m².</summary>
    public required double SurfaceM2 { get; init; }

    /// <summary>Name of the schedule.</summary>
    public required string Schedule { get; init; }

    /// <summary>Its length, min.</summary>
    public required double ScheduleMinutes { get; init; }

    /// <summary>Least days of drying first; null where the timber is dry enough.</summary>
    public double? DryingDays { get; init; }

    /// <summary>Density of the timber with its water, kg/m³.</summary>
    public required double DensityKgPerM3 { get; init; }

    /// <summary>Product required in the analytical zone, kg/m³.</summary>
    public required double RequiredKgPerM3 { get; init; }

    /// <summary>Density of the working solution, kg/m³.</summary>
    public required double SolutionDensityKgPerM3 { get; init; }

    /// <summary>Net uptake expected, L to the m³ of timber.</summary>
    public required Estimate UptakeLPerM3 { get; init; }

    /// <summary>Solution expected in the analytical zone, L to the m³ of zone.</summary>
    public required Estimate ZoneLPerM3 { get; init; }

    /// <summary>Solution the timber is expected to keep, L.</summary>
    public required Estimate SolutionL { get; init; }

    /// <summary>Strength of the working solution, % of product by mass.</summary>
    public required Estimate StrengthPercent { get; init; }

    /// <summary>Product in the solution kept, kg.</summary>
    public required Estimate ProductKg { get; init; }

    /// <summary>Water in the solution kept, kg.</summary>
    public required Estimate WaterKg { get; init; }

    /// <summary>Weight of the timber before, kg.</summary>
    public required double WeightBeforeKg { get; init; }

    /// <summary>Weight expected after, kg.</summary>
    public required Estimate WeightAfterKg { get; init; }

    /// <summary>Share of cores expected to reach the depth, 0 to 1.</summary>
    public required Estimate CoreShare { get; init; }

    /// <summary>Where the product is expected, with walls that take up nothing and with others.</summary>
    public required IReadOnlyList<ChargeProductDocument> Product { get; init; }

    /// <summary>What the figures of the product mean and rest on, one sentence each.</summary>
    public required IReadOnlyList<string> ProductNotes { get; init; }

    /// <summary>What was assumed because nobody said it, one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}
