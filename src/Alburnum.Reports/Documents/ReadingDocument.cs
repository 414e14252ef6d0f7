using System.Text.Json.Serialization;

namespace Alburnum.Reports.Documents;

/// <summary>
/// The reading of one section. Points are [x, y] in pixels of the photograph displayed upright; <c>corners_px</c> for sections
/// with straight sides, <c>rim_px</c> for round ones. A reading that could not be made has no faces and no depth.
/// </summary>
public sealed record ReadingDocument(
    string? File,
    string? Sha256,
    string Shape,
    IReadOnlyList<double> SectionMm,
    int? WidthPx,
    int? HeightPx,
    double? PixelsPerMm,
    IReadOnlyList<double[]>? CornersPx,
    IReadOnlyList<double[]>? RimPx,
    IReadOnlyList<IReadOnlyList<double[]>>? BoundaryPx,
    IReadOnlyList<FaceDocument> Faces,
    DepthDocument? Depth,
    double? TreatedShare,
    double? TreatedShareU,
    double? SapwoodTreatedShare,
    string Quality,
    IReadOnlyList<string> Notes
)
{
    /// <summary>Key of the indicator read; null where none could be told.</summary>
    public string? Indicator { get; init; }

    /// <summary>How likely the outline is right to within 1 mm, 0 to 1; 1 where it was pointed out.</summary>
    public double? OutlineConfidence { get; init; }

    /// <summary>Standard uncertainty of the sapwood's treated share; null where the sapwood is not known.</summary>
    public double? SapwoodTreatedShareU { get; init; }

    /// <summary>How the heartwood was told, or why not; null where no depth was read.</summary>
    public HeartwoodDocument? Heartwood { get; init; }

    /// <summary>Bow of straight lines by the lens, above 0 for a barrel, as a share at the photograph's corner; null where none was assumed.</summary>
    public double? LensBow { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public double? LensBowU { get; init; }

    /// <summary>How much reaches the depth asked about; null where none was.</summary>
    public RequiredDocument? Required { get; init; }

    /// <summary>Depth of the border that is continuous between incisions; null where the piece is not said to be incised.</summary>
    public DepthDocument? BetweenIncisions { get; init; }

    /// <summary>What was pointed out on the photograph; null where nothing was.</summary>
    public MarksDocument? Marks { get; init; }

    /// <summary>What makes mean and least depth uncertain, cause by cause; left out where it is not asked for, or no depth was read.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<BudgetRowDocument>? Budget { get; init; }
}

/// <summary>One cause of uncertainty and what it contributes, mm. Causes add in quadrature.</summary>
public sealed record BudgetRowDocument
{
    /// <summary>The cause.</summary>
    public required string Cause { get; init; }

    /// <summary>How large it is taken to be, and of what.</summary>
    public required string Size { get; init; }

    /// <summary>How it was evaluated: "A" from scatter, "B" otherwise (JCGM 100).</summary>
    public required string Type { get; init; }

    /// <summary>"published", "common practice" or "from memory".</summary>
    public required string Standing { get; init; }

    /// <summary>Who says so.</summary>
    public required string Source { get; init; }

    /// <summary>Standard uncertainty of the mean depth from this cause alone, mm.</summary>
    public required double MeanUMm { get; init; }

    /// <summary>The same of the least depth, mm.</summary>
    public required double LeastUMm { get; init; }
}

/// <summary>The heartwood: told "given", "colour", "reagent" or "not determined"; its border's standard uncertainty; its circle where it was seen.</summary>
public sealed record HeartwoodDocument(
    string Told,
    double? BorderUMm,
    double[]? PithPx,
    double? RadiusMm,
    IReadOnlyList<IReadOnlyList<double[]>>? BorderPx,
    string InWords
);

/// <summary>How much of the perimeter reaches a depth, 0 to 1, with the standard uncertainty; the same for heartwood that lies open.</summary>
public sealed record RequiredDocument(
    double DepthMm,
    double ReachedShare,
    double ReachedShareU,
    double? OpenHeartwoodTreatedShare,
    double? OpenHeartwoodTreatedShareU,
    IReadOnlyList<RequiredFaceDocument> Faces
);

/// <summary>The same for one face; null where nothing was read, or no heartwood is known to lie open.</summary>
public sealed record RequiredFaceDocument(
    int Number,
    double? ReachedShare,
    double? ReachedShareU,
    double? OpenHeartwoodShare,
    double? OpenHeartwoodReachedShare,
    double? OpenHeartwoodReachedShareU
)
{
    /// <summary>Standard uncertainty of the share on which heartwood lies open.</summary>
    public double? OpenHeartwoodShareU { get; init; }
}

/// <summary>A finger of preservative at an incision: where it is deepest, its width along the face, its depth.</summary>
public sealed record FingerDocument(double PositionMm, double WidthMm, double DepthMm);

/// <summary>Depth along one face, at even steps from its start; lists of equal length.</summary>
public sealed record FaceDocument(
    int Number,
    double StepMm,
    IReadOnlyList<double> PositionsMm,
    IReadOnlyList<double> DepthMm,
    IReadOnlyList<double> UMm,
    IReadOnlyList<bool> Excluded,
    IReadOnlyList<double?> SapwoodMm
)
{
    /// <summary>Distance to the nearest untreated wood in any direction; null where it was not read.</summary>
    public IReadOnlyList<double?>? NearestUntreatedMm { get; init; }

    /// <summary>Depth of the border between incisions; null where the piece is not said to be incised.</summary>
    public IReadOnlyList<double>? EnvelopeMm { get; init; }

    /// <summary>Fingers at incisions; null where the piece is not said to be incised.</summary>
    public IReadOnlyList<FingerDocument>? Fingers { get; init; }
}

/// <summary>Depth over the whole section, mm, each with its standard uncertainty, mm.</summary>
public sealed record DepthDocument(
    double MinMm,
    double MinUMm,
    double P5Mm,
    double P5UMm,
    double MedianMm,
    double MedianUMm,
    double MeanMm,
    double MeanUMm,
    double MaxMm,
    double MaxUMm
);
