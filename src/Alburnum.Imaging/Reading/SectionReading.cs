using Alburnum.Imaging.Geometry;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>One photograph, what was asked of it, and what came of reading it.</summary>
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

    /// <summary>What was pointed out to the reader.</summary>
    public required PhotographMarks Marks { get; init; }

    /// <summary>Reagent for heartwood that was sprayed; null where none was.</summary>
    public HeartwoodReagent? HeartwoodReagent { get; init; }

    /// <summary>What came of it.</summary>
    public required ReadingOutcome Outcome { get; init; }
}
