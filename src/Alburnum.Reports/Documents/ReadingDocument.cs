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
);

/// <summary>Depth along one face, at even steps from its start; lists of equal length.</summary>
public sealed record FaceDocument(
    int Number,
    double StepMm,
    IReadOnlyList<double> PositionsMm,
    IReadOnlyList<double> DepthMm,
    IReadOnlyList<double> UMm,
    IReadOnlyList<bool> Excluded,
    IReadOnlyList<double?> SapwoodMm
);

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
