using System.Text.Json.Serialization;
using Alburnum.Impregnation.Prediction;

namespace Alburnum.Reports.Documents;

/// <summary>What the timber of a case was expected to reach, beside what was measured.</summary>
public sealed record CasePredictionDocument
{
    /// <summary>Name of the schedule.</summary>
    public required string Schedule { get; init; }

    /// <summary>The cuts in words; null where the timber is not incised.</summary>
    public string? Incising { get; init; }

    /// <summary>Required depth, in words.</summary>
    public required string Demand { get; init; }

    /// <summary>Mean depth of a piece as predicted, mm.</summary>
    public required Spread MeanDepthMm { get; init; }

    /// <summary>Mean depth over the pieces measured, mm; null where none could be read.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public Estimate? MeasuredMeanDepthMm { get; init; }

    /// <summary>Share of cores expected to meet the demand, 0 to 1, with its spread between batches; null where no depth is asked for.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public required Estimate? CoreShare { get; init; }

    /// <summary>What was assumed because nobody said it, one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>What the numbers rest on, one sentence each.</summary>
    public required IReadOnlyList<string> RestsOn { get; init; }

    /// <summary>Weakest standing touched.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The plant's own charges, by which the prediction is calibrated; null where the case names no history.</summary>
    public PlantDocument? Plant { get; init; }
}

/// <summary>The charge that the timber of a case was planned in.</summary>
public sealed record CaseChargeDocument
{
    /// <summary>What the charge is.</summary>
    public required string Name { get; init; }

    /// <summary>Pieces.</summary>
    public required int PieceCount { get; init; }

    /// <summary>Volume of the timber, m³.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Least days of drying first; null where the timber is dry enough.</summary>
    public double? DryingDays { get; init; }

    /// <summary>Product required in the analytical zone, kg/m³.</summary>
    public required double RequiredKgPerM3 { get; init; }

    /// <summary>Net uptake expected, L to the m³ of timber.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public required Estimate UptakeLPerM3 { get; init; }

    /// <summary>Solution the timber is expected to keep, L.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public required Estimate SolutionL { get; init; }

    /// <summary>Strength of the working solution, % of product by mass.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public required Estimate StrengthPercent { get; init; }

    /// <summary>Product in the solution kept, kg.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public required Estimate ProductKg { get; init; }

    /// <summary>What it took up as it was run; null where nothing was read at the vessel.</summary>
    public CaseUptakeDocument? AsRun { get; init; }
}

/// <summary>What the charge of a case took up, by the readings at the vessel.</summary>
public sealed record CaseUptakeDocument
{
    /// <summary>Net uptake, L to the m³ of timber: by weight where weighed, otherwise by the tank.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public required Estimate UptakeLPerM3 { get; init; }

    /// <summary>Product, kg to the m³ of timber: of the whole piece, not of the zone.</summary>
    [JsonConverter(typeof(EstimateConverter))]
    public required Estimate RetentionKgPerM3 { get; init; }

    /// <summary>Whether the uptake lies within two standard uncertainties of the plan's.</summary>
    public required bool AsExpected { get; init; }

    /// <summary>What the readings say of the plan and of each other, one sentence each.</summary>
    public required IReadOnlyList<string> Findings { get; init; }
}
