namespace Alburnum.Reports.Documents;

/// <summary>
/// What was pointed out on a photograph before it was read: points [x, y] in pixels of the photograph displayed upright. A list
/// that is not given is null.
/// </summary>
public sealed record MarksDocument
{
    /// <summary>Corners of the outline, or points along a rim.</summary>
    public IReadOnlyList<double[]>? CornersPx { get; init; }

    /// <summary>A known length.</summary>
    public ScaleDocument? Scale { get; init; }

    /// <summary>Size of the section as measured on the piece, as it is written.</summary>
    public string? MeasuredSize { get; init; }

    /// <summary>Places that are treated.</summary>
    public IReadOnlyList<double[]>? TreatedPx { get; init; }

    /// <summary>Places that are not treated.</summary>
    public IReadOnlyList<double[]>? UntreatedPx { get; init; }

    /// <summary>Places that are to be left out.</summary>
    public IReadOnlyList<double[]>? LeaveOutPx { get; init; }

    /// <summary>Outline of the heartwood.</summary>
    public IReadOnlyList<double[]>? HeartwoodPx { get; init; }

    /// <summary>Points on the ring at which the heartwood ends.</summary>
    public IReadOnlyList<double[]>? HeartwoodRingPx { get; init; }

    /// <summary>The pith.</summary>
    public double[]? PithPx { get; init; }

    /// <summary>Radius of the heartwood about the pith, mm.</summary>
    public double? HeartwoodRadiusMm { get; init; }
}

/// <summary>A known length: its two ends, and how long it is.</summary>
public sealed record ScaleDocument
{
    /// <summary>One end.</summary>
    public required double[] FromPx { get; init; }

    /// <summary>The other.</summary>
    public required double[] ToPx { get; init; }

    /// <summary>The length, mm.</summary>
    public required double LengthMm { get; init; }
}
