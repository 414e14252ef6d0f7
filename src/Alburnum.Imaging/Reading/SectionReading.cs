using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>How far a photograph serves its purpose.</summary>
public enum QualityGrade
{
    /// <summary>Nothing to complain of.</summary>
    Good,

    /// <summary>Usable, with the limits named.</summary>
    Fair,

    /// <summary>The reading is to be taken with care; a new photograph is better.</summary>
    Poor,

    /// <summary>Nothing can be read from it.</summary>
    Unusable,
}

/// <summary>The photograph judged: a grade and what led to it.</summary>
/// <param name="Grade">Overall.</param>
/// <param name="Findings">One sentence each: what is amiss and what to do. Empty where nothing is.</param>
public sealed record Quality(QualityGrade Grade, IReadOnlyList<string> Findings)
{
    /// <summary>The same findings under a grade that is no better than a given one.</summary>
    public Quality AtBest(QualityGrade grade) => this with { Grade = Grade > grade ? Grade : grade };

    /// <summary>"good", "fair", "poor" or "unusable".</summary>
    public string InWords =>
        Grade switch
        {
            QualityGrade.Good => "good",
            QualityGrade.Fair => "fair",
            QualityGrade.Poor => "poor",
            QualityGrade.Unusable => "unusable",
            _ => throw new InvalidOperationException($"{Grade} is not a grade."),
        };
}

/// <summary>What was read from one photograph.</summary>
public sealed record SectionReading
{
    /// <summary>Name of the file as given.</summary>
    public required string FileName { get; init; }

    /// <summary>SHA-256 of the file's bytes, lower-case hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Width of the photograph as displayed upright, pixels.</summary>
    public required int WidthPx { get; init; }

    /// <summary>Height of the photograph as displayed upright, pixels.</summary>
    public required int HeightPx { get; init; }

    /// <summary>Outline measured.</summary>
    public required SectionShape Shape { get; init; }

    /// <summary>Nominal size.</summary>
    public required Section Section { get; init; }

    /// <summary>Indicator read, as named by the user or decided from the photograph; null where none could be told.</summary>
    public required Indicator? Indicator { get; init; }

    /// <summary>Outline used: 4 corners clockwise for sawn sections, rim points clockwise for round ones. Empty where none was found.</summary>
    public required IReadOnlyList<PointPx> OutlinePx { get; init; }

    /// <summary>How likely the outline is right to within 1 mm, 0 to 1.</summary>
    public required double OutlineConfidence { get; init; }

    /// <summary>Lines along the front between treated and untreated wood, one for each unbroken stretch.</summary>
    public required IReadOnlyList<IReadOnlyList<PointPx>> BoundaryPx { get; init; }

    /// <summary>Mean scale over the section, pixels per mm; null where no outline was found.</summary>
    public required double? PixelsPerMm { get; init; }

    /// <summary>
    /// Bow of straight lines by the lens, where the section's own sides tell of one: the share of its distance from the middle by which a point in the photograph's
    /// corner is drawn too near (above 0, a barrel) or too far. Null: none was assumed.
    /// </summary>
    public Estimate? LensBow { get; init; }

    /// <summary>The depth profile; null: not determined, and <see cref="Notes"/> say why.</summary>
    public required DepthProfile? Profile { get; init; }

    /// <summary>Lines along the outline where positions are left out, one for each unbroken stretch.</summary>
    public IReadOnlyList<IReadOnlyList<PointPx>> LeftOutPx { get; init; } = [];

    /// <summary>From the face to the front where the depth read is least; null where nothing was read.</summary>
    public (PointPx Face, PointPx Front)? LeastPx { get; init; }

    /// <summary>
    /// For each face of the profile, distance from each position to the nearest untreated wood in any direction, mm; null where none is near enough to tell.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<double?>> NearestUntreatedMm { get; init; } = [];

    /// <summary>Border and fingers of each face; null where the piece is not said to be incised.</summary>
    public IReadOnlyList<IncisedFace>? Incised { get; init; }

    /// <summary>Depth of the border that is continuous between incisions; null where the piece is not said to be incised.</summary>
    public DepthStatistics? BetweenIncisions { get; init; }

    /// <summary>How much of the perimeter reaches the depth asked about; null where none was.</summary>
    public ReachedDepth? Reached { get; init; }

    /// <summary>What was pointed out to the reader.</summary>
    public PhotographMarks Marks { get; init; } = PhotographMarks.None;

    /// <summary>What is known of the heartwood; null where no depth was read.</summary>
    public HeartwoodReading? Heartwood { get; init; }

    /// <summary>How good the photograph is.</summary>
    public required Quality Quality { get; init; }

    /// <summary>What is wrong and what to do, one sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}
