namespace Alburnum.Reports.Documents;

/// <summary>
/// What was pointed out on a photograph before it was read: points [x, y] in pixels of the photograph displayed upright. A list
/// that is not given is null.
/// </summary>
public sealed record MarksDocument(
    IReadOnlyList<double[]>? CornersPx,
    ScaleDocument? Scale,
    IReadOnlyList<double[]>? TreatedPx,
    IReadOnlyList<double[]>? UntreatedPx,
    IReadOnlyList<double[]>? LeaveOutPx,
    IReadOnlyList<double[]>? HeartwoodPx,
    IReadOnlyList<double[]>? HeartwoodRingPx,
    double[]? PithPx,
    double? HeartwoodRadiusMm
);

/// <summary>A known length: its two ends, and how long it is.</summary>
public sealed record ScaleDocument(double[] FromPx, double[] ToPx, double LengthMm);
