using Alburnum.Timber;

namespace Alburnum.Records.Marks;

/// <summary>A place on a photograph as a person writes it: pixels of the photograph shown upright, from its top left corner.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Downward.</param>
public readonly record struct MarkedPoint(double X, double Y);

/// <summary>A known length on a photograph.</summary>
/// <param name="From">One end.</param>
/// <param name="To">The other end.</param>
/// <param name="LengthMm">How long it is, 0.1 to 2000 mm.</param>
public sealed record MarkedLength(MarkedPoint From, MarkedPoint To, double LengthMm);

/// <summary>The pith, and how far the heartwood reaches about it.</summary>
/// <param name="Pith">The pith; may lie outside the section.</param>
/// <param name="RadiusMm">Radius of the heartwood, 0.1 to 2000 mm.</param>
public sealed record MarkedPith(MarkedPoint Pith, double RadiusMm);

/// <summary>What a person points out on one photograph, as it is written in a case, typed as an option or sent from a page.</summary>
public sealed record WrittenMarks
{
    /// <summary>Nothing pointed out.</summary>
    public static WrittenMarks None { get; } = new();

    /// <summary>Corners, clockwise, or points on the rim of a round section; null where the section is to be found.</summary>
    public IReadOnlyList<MarkedPoint>? Corners { get; init; }

    /// <summary>A known length; null where the nominal size gives the scale.</summary>
    public MarkedLength? Scale { get; init; }

    /// <summary>The section's size as measured on the piece; null where nobody measured it. Not beside a known length.</summary>
    public Section? MeasuredSize { get; init; }

    /// <summary>Places that are treated.</summary>
    public IReadOnlyList<MarkedPoint> Treated { get; init; } = [];

    /// <summary>Places that are not treated.</summary>
    public IReadOnlyList<MarkedPoint> Untreated { get; init; } = [];

    /// <summary>Places that are not to be read.</summary>
    public IReadOnlyList<MarkedPoint> LeaveOut { get; init; } = [];

    /// <summary>Outline of the heartwood, three points or more; null where it is not given. At most one of this and the next two is.</summary>
    public IReadOnlyList<MarkedPoint>? Heartwood { get; init; }

    /// <summary>Three points or more on the ring at which the heartwood ends; null where it is not given.</summary>
    public IReadOnlyList<MarkedPoint>? HeartwoodRing { get; init; }

    /// <summary>The pith with the heartwood's radius; null where they are not given.</summary>
    public MarkedPith? Pith { get; init; }
}
