namespace Alburnum.Reports.Acceptance;

/// <summary>A laboratory's figures as a retention. Fields as in docs/json/retention.md.</summary>
public sealed record CountedRetentionDocument
{
    /// <summary>What the retention counts.</summary>
    public required string Counted { get; init; }

    /// <summary>True where nothing was found: the contents are then limits.</summary>
    public required bool IsBelowDetection { get; init; }

    /// <summary>The contents, one for each unit that can be given.</summary>
    public required IReadOnlyList<ContentDocument> Contents { get; init; }

    /// <summary>Part of the standard uncertainty that comes from the laboratory, kg/m³; null where kg/m³ or it is not known.</summary>
    public required double? LaboratoryKgPerM3 { get; init; }

    /// <summary>Part of it that comes from the density of the zone, kg/m³; null where kg/m³ or it is not known.</summary>
    public required double? DensityKgPerM3 { get; init; }

    /// <summary>How the figures were turned into it, one sentence each.</summary>
    public required IReadOnlyList<string> Steps { get; init; }

    /// <summary>What is missing and what to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }
}

/// <summary>A content in one unit.</summary>
public sealed record ContentDocument
{
    /// <summary>The unit: "kg/m³", "mg/kg", "% m/m" or "g/m²".</summary>
    public required string Unit { get; init; }

    /// <summary>The content; the limit of detection where nothing was found.</summary>
    public required double Value { get; init; }

    /// <summary>Its standard uncertainty; null where a figure, or the density that it takes, is stated without any.</summary>
    public required double? U { get; init; }
}
