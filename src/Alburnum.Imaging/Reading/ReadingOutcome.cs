using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>What came of reading a photograph: a depth, or the stage at which the reading ended.</summary>
public abstract record ReadingOutcome
{
    private protected ReadingOutcome() { }

    /// <summary>How good the photograph is.</summary>
    public required Quality Quality { get; init; }

    /// <summary>Indicator as named by the user or decided from the photograph; null where neither was done.</summary>
    public required Indicator? Indicator { get; init; }
}

/// <summary>A depth was read.</summary>
/// <param name="Profile">Depth along every face.</param>
public sealed record Read(DepthProfile Profile) : ReadingOutcome
{
    /// <summary>Outline used.</summary>
    public required OutlineInPhotograph Outline { get; init; }

    /// <summary>Whether depths are measured from points that lie on no edge, so that nothing may be decided by them.</summary>
    public bool IsOffEdge => Quality.Findings.Any(finding => finding is PointsOffEdge);

    /// <summary>Scale of the section.</summary>
    public required SectionScale Scale { get; init; }

    /// <summary>What makes least and mean depth uncertain.</summary>
    public required DepthBudget Budget { get; init; }

    /// <summary>Lines along the front between treated and untreated wood, one for each unbroken stretch.</summary>
    public required IReadOnlyList<IReadOnlyList<PointPx>> BoundaryPx { get; init; }

    /// <summary>Lines along the outline where positions are left out, one for each unbroken stretch.</summary>
    public required IReadOnlyList<IReadOnlyList<PointPx>> LeftOutPx { get; init; }

    /// <summary>From the face to the front where the depth read is least.</summary>
    public required (PointPx Face, PointPx Front) LeastPx { get; init; }

    /// <summary>
    /// For each face of the profile, distance from each position to the nearest untreated wood in any direction, mm; null where none is near enough to be known.
    /// </summary>
    public required IReadOnlyList<IReadOnlyList<double?>> NearestUntreatedMm { get; init; }

    /// <summary>What is known of the heartwood.</summary>
    public required HeartwoodReading Heartwood { get; init; }

    /// <summary>Border and fingers; null where the piece is not said to be incised.</summary>
    public required IncisedReading? Incised { get; init; }

    /// <summary>How much of the perimeter reaches the depth asked about; null where none was.</summary>
    public required ReachedDepth? Reached { get; init; }
}

/// <summary>No depth could be read.</summary>
/// <param name="Stage">Where the reading ended.</param>
/// <param name="Fault">Why.</param>
public sealed record NotDetermined(ReadingStage Stage, ReadingFault Fault) : ReadingOutcome
{
    /// <summary>Outline as far as it was found; null where nothing was.</summary>
    public required OutlineInPhotograph? Outline { get; init; }

    /// <summary>Scale of the section; null where the reading ended before it.</summary>
    public required SectionScale? Scale { get; init; }

    /// <summary>Its sapwood, where no treated wood is seen and the heartwood is shown or seen; null otherwise.</summary>
    public SapwoodAlone? Sapwood { get; init; }

    /// <summary>What is known of the heartwood; null where it was not looked for, as treated wood may be there.</summary>
    public HeartwoodReading? Heartwood { get; init; }

    /// <summary>Whether pointing the outline out may help: it was not found, or a part of the section, or another thing, may have been taken for it.</summary>
    public bool OutlineMayBeWrong =>
        Fault is OutlineNotFound or NoFront or DoubtfulBorder || !(Outline is { Confidence: >= 1 });
}

/// <summary>The stages of a reading, in their order.</summary>
public enum ReadingStage
{
    /// <summary>The section is found in the photograph.</summary>
    Outline,

    /// <summary>Its scale is taken, and it is drawn flat.</summary>
    Flattening,

    /// <summary>The photograph is judged.</summary>
    Quality,

    /// <summary>Treated and untreated wood are told apart.</summary>
    Zones,

    /// <summary>The front is read to a fraction of a pixel.</summary>
    Front,
}

/// <summary>Why no depth could be read.</summary>
public abstract record ReadingFault
{
    private protected ReadingFault() { }
}

/// <summary>The section was not found in the photograph.</summary>
/// <param name="MayIncludeBark">True where a rim was found within which bark, or the side of the piece, may lie in part.</param>
public sealed record OutlineNotFound(bool MayIncludeBark = false) : ReadingFault;

/// <summary>The known length and the nominal size differ by more than can be right.</summary>
/// <param name="MostPart">Most that can be right: one part in so many, 4 for a quarter.</param>
public sealed record KnownLengthDisagrees(int MostPart) : ReadingFault;

/// <summary>The photograph shows too little of the section.</summary>
public sealed record TooLittleShown : ReadingFault;

/// <summary>The section shows no colour, only light and dark: the photograph is black and white, or toned in one colour.</summary>
public sealed record NoColour : ReadingFault;

/// <summary>The colours are not those of the indicator named.</summary>
/// <param name="Named">As named.</param>
/// <param name="Seen">The one that they look like.</param>
public sealed record OtherIndicator(Indicator Named, Indicator Seen) : ReadingFault;

/// <summary>No treated wood beside untreated: one colour throughout, or the colours of sapwood, heartwood and stains.</summary>
/// <param name="IsTreated">Whether it is that of treated wood; null where bare wood may look like it under another indicator or a reagent for heartwood.</param>
public sealed record NoFront(bool? IsTreated) : ReadingFault
{
    /// <summary>The indicator named, whose reaction is not seen; null where none was named.</summary>
    public Indicator? Named { get; init; }
}

/// <summary>An uneven border was seen without a reagent, within an outline that was not pointed out: it may be anything.</summary>
public sealed record DoubtfulBorder : ReadingFault;

/// <summary>Every position is left out.</summary>
public sealed record NothingLeft : ReadingFault;

/// <summary>An outline in the photograph.</summary>
/// <param name="PointsPx">4 corners clockwise for sawn sections, rim points clockwise for round ones.</param>
/// <param name="Confidence">How likely it is right to within 1 mm, 0 to 1; 1 where points were given and an edge lies at them, 0 where none does.</param>
public sealed record OutlineInPhotograph(IReadOnlyList<PointPx> PointsPx, double Confidence);

/// <summary>Scale of a section in its photograph.</summary>
/// <param name="PixelsPerMm">Mean over the section.</param>
/// <param name="LensBow">
/// Bow of straight lines by the lens, where the section's own sides show one: the share of its distance from the middle by which a point in the photograph's
/// corner is drawn too near (above 0, a barrel) or too far. Null: none was assumed.
/// </param>
/// <param name="Basis">What the section's size is known by.</param>
/// <param name="Section">The section as large as it was taken to be.</param>
public sealed record SectionScale(double PixelsPerMm, Estimate? LensBow, ScaleBasis Basis, Section Section);

/// <summary>What the size of a section is known by, and with it the scale of every depth.</summary>
public enum ScaleBasis
{
    /// <summary>Its nominal size, taken on trust.</summary>
    NominalSize,

    /// <summary>A known length in the photograph.</summary>
    KnownLength,

    /// <summary>Its size as measured on the piece.</summary>
    MeasuredSize,

    /// <summary>The printed card beside it.</summary>
    Card,
}

/// <summary>An incised piece: what is continuous, and what reaches deeper.</summary>
/// <param name="Faces">Border and fingers of each face.</param>
/// <param name="Between">Depth of the border between incisions; null where every position is left out.</param>
public sealed record IncisedReading(IReadOnlyList<IncisedFace> Faces, DepthStatistics? Between);
