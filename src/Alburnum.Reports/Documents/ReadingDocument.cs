using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Measures;

namespace Alburnum.Reports.Documents;

/// <summary>
/// The reading of one section. Points are [x, y] in pixels of the photograph displayed upright. A reading that could not be made
/// has no faces and no depth; one made with a ruler has no photograph, and nothing that is measured in pixels.
/// </summary>
public sealed record ReadingDocument
{
    /// <summary>Name of the photograph; null for a reading with a ruler.</summary>
    public string? File { get; init; }

    /// <summary>SHA-256 of the photograph; null likewise.</summary>
    public string? Sha256 { get; init; }

    /// <summary>Which of several pieces on the photograph it is, in reading order from 1; null where it shows one, and for a reading with a ruler.</summary>
    public int? PieceNumber { get; init; }

    /// <summary>What that piece is called; null where it goes by its number.</summary>
    public string? PieceLabel { get; init; }

    /// <summary>The photograph's name without its folder, followed by the piece's where it shows several; empty for a reading with a ruler.</summary>
    [JsonIgnore]
    public string Name =>
        PieceNumber is { } number
            ? $"{Path.GetFileName(File)} {new PieceOnPhotograph(number, PieceLabel, default).Name}"
            : Path.GetFileName(File ?? "");

    /// <summary>Shape of the section.</summary>
    [JsonConverter(typeof(ShapeConverter))]
    public required SectionShape Shape { get; init; }

    /// <summary>Nominal sizes, mm: width and thickness, or one diameter.</summary>
    public required IReadOnlyList<double> SectionMm { get; init; }

    /// <summary>Width of the photograph, px.</summary>
    public int? WidthPx { get; init; }

    /// <summary>Height of the photograph, px.</summary>
    public int? HeightPx { get; init; }

    /// <summary>Scale, pixels per mm; null where none was found.</summary>
    public double? PixelsPerMm { get; init; }

    /// <summary>What the size of the section, and with it every depth, is known by; null where no scale was taken, and for a reading with a ruler.</summary>
    [JsonConverter(typeof(ScaleBasisConverter))]
    public ScaleBasis? ScaleBasis { get; init; }

    /// <summary>Corners of a section with straight sides.</summary>
    public IReadOnlyList<double[]>? CornersPx { get; init; }

    /// <summary>Rim of a round section.</summary>
    public IReadOnlyList<double[]>? RimPx { get; init; }

    /// <summary>Boundary of the treated wood, a line each.</summary>
    public IReadOnlyList<IReadOnlyList<double[]>>? BoundaryPx { get; init; }

    /// <summary>Depth along each face.</summary>
    public required IReadOnlyList<FaceDocument> Faces { get; init; }

    /// <summary>Depth over the whole section; null where none was read.</summary>
    public DepthDocument? Depth { get; init; }

    /// <summary>Treated share of the section, 0 to 1; null where none was read.</summary>
    public double? TreatedShare { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public double? TreatedShareU { get; init; }

    /// <summary>Treated share of the sapwood, 0 to 1; null where the sapwood is not known.</summary>
    public double? SapwoodTreatedShare { get; init; }

    /// <summary>How good the photograph is; null for a reading with a ruler.</summary>
    [JsonConverter(typeof(QualityConverter))]
    public QualityGrade? Quality { get; init; }

    /// <summary>What is said of the reading, one sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Key of the indicator read; null where none could be detected.</summary>
    public string? Indicator { get; init; }

    /// <summary>How likely the outline is right to within 1 mm, 0 to 1; 1 where points were given and the edge lies at them, 0 where they lie on no sure edge.</summary>
    public double? OutlineConfidence { get; init; }

    /// <summary>Standard uncertainty of the sapwood's treated share; null where the sapwood is not known.</summary>
    public double? SapwoodTreatedShareU { get; init; }

    /// <summary>How the heartwood was found, or why not; null where it was not looked for.</summary>
    public HeartwoodDocument? Heartwood { get; init; }

    /// <summary>Its sapwood, where no treated wood is seen and the heartwood is shown or seen; null otherwise.</summary>
    public SapwoodDocument? SapwoodAlone { get; init; }

    /// <summary>Bow of straight lines by the lens, above 0 for a barrel, as a share at the photograph's corner; null where none was assumed.</summary>
    public double? LensBow { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public double? LensBowU { get; init; }

    /// <summary>How much reaches the required depth; null where none was given.</summary>
    public RequiredDocument? Required { get; init; }

    /// <summary>Depth of the border that is continuous between incisions; null where the piece is not said to be incised.</summary>
    public DepthDocument? BetweenIncisions { get; init; }

    /// <summary>The stage at which the reading ended; null where a depth was read.</summary>
    [JsonConverter(typeof(ReadingStageConverter))]
    public ReadingStage? EndedAt { get; init; }

    /// <summary>Why it ended there, as an object with its <c>kind</c>; null likewise.</summary>
    public JsonObject? Fault { get; init; }

    /// <summary>True where pointing the outline out may help: nothing was pointed out, and it was not found, or another thing may have been taken for it.</summary>
    public bool OutlineMayBeWrong { get; init; }

    /// <summary>What to mind with the reagents sprayed, one sentence each.</summary>
    public IReadOnlyList<string> Cautions
    {
        get => field ?? [];
        init;
    } = [];

    /// <summary>What was pointed out on the photograph; null where nothing was.</summary>
    public MarksDocument? Marks { get; init; }

    /// <summary>What the depths look like, each with what would confirm it; empty where they look like nothing in particular.</summary>
    public IReadOnlyList<PatternDocument> Patterns
    {
        get => field ?? [];
        init;
    } = [];

    /// <summary>What makes mean and least depth uncertain, cause by cause; null where it is not asked for, or no depth was read.</summary>
    public IReadOnlyList<BudgetRowDocument>? Budget { get; init; }
}

/// <summary>What the depths of a section look like: a hint, never a finding.</summary>
public sealed record PatternDocument
{
    /// <summary>Which pattern, such as "thin_skin".</summary>
    public required string Kind { get; init; }

    /// <summary>What it looks like, and what it may be.</summary>
    public required string LooksLike { get; init; }

    /// <summary>What would confirm it.</summary>
    public required string WouldConfirm { get; init; }

    /// <summary>Key of the letter that answers a client's question about it; null where there is none.</summary>
    public string? Letter { get; init; }
}

/// <summary>One cause of uncertainty and what it contributes, mm. Causes add in quadrature.</summary>
public sealed record BudgetRowDocument
{
    /// <summary>The cause.</summary>
    public required string Cause { get; init; }

    /// <summary>How large it is taken to be, and of what.</summary>
    public required string Size { get; init; }

    /// <summary>How it was evaluated: "A" from scatter, "B" otherwise (JCGM 100).</summary>
    [JsonConverter(typeof(EvaluationConverter))]
    public required EvaluationType Type { get; init; }

    /// <summary>"published", "common practice" or "from memory".</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>Who says so.</summary>
    public required string Source { get; init; }

    /// <summary>Standard uncertainty of the mean depth from this cause alone, mm.</summary>
    public required double MeanUMm { get; init; }

    /// <summary>The same of the least depth, mm.</summary>
    public required double LeastUMm { get; init; }
}

/// <summary>How the heartwood was found.</summary>
public enum HeartwoodSource
{
    /// <summary>Somebody pointed it out.</summary>
    Shown,

    /// <summary>By a reagent that colours it.</summary>
    Reagent,

    /// <summary>By its own colour on untreated wood.</summary>
    Colour,

    /// <summary>It was not determined.</summary>
    Unknown,
}

/// <summary>The heartwood of a section.</summary>
public sealed record HeartwoodDocument
{
    /// <summary>How it was found: "given", "reagent", "colour" or "not determined".</summary>
    [JsonConverter(typeof(HeartwoodSourceConverter))]
    public required HeartwoodSource DetectedBy { get; init; }

    /// <summary>Standard uncertainty of its border, mm; null where it was not determined.</summary>
    public double? BorderUMm { get; init; }

    /// <summary>Centre of its circle; null where it was not detected.</summary>
    public double[]? PithPx { get; init; }

    /// <summary>Radius of its circle, mm; null likewise.</summary>
    public double? RadiusMm { get; init; }

    /// <summary>Its border as seen, a line each; null likewise.</summary>
    public IReadOnlyList<IReadOnlyList<double[]>>? BorderPx { get; init; }

    /// <summary>The same in a sentence.</summary>
    public required string InWords { get; init; }
}

/// <summary>Sapwood of a section on which no treated wood is seen.</summary>
public sealed record SapwoodDocument
{
    /// <summary>Its share of the section's area, 0 to 1.</summary>
    public required double Share { get; init; }

    /// <summary>Standard uncertainty of the share.</summary>
    public required double ShareU { get; init; }

    /// <summary>Its depth along every face.</summary>
    public required IReadOnlyList<FaceSapwoodDocument> Faces { get; init; }
}

/// <summary>Sapwood along one face.</summary>
public sealed record FaceSapwoodDocument
{
    /// <summary>Number of the face.</summary>
    public required int Number { get; init; }

    /// <summary>Distance between positions, mm.</summary>
    public required double StepMm { get; init; }

    /// <summary>Least depth, mm; null where no heartwood is met behind the face.</summary>
    public required double? LeastMm { get; init; }

    /// <summary>Mean depth, mm, of the positions behind which heartwood is met; null likewise.</summary>
    public required double? MeanMm { get; init; }

    /// <summary>Share of the face at which heartwood lies, 0 to 1.</summary>
    public required double HeartwoodShare { get; init; }

    /// <summary>Depth at which heartwood begins, mm: 0 where it lies at the face, null where none is met before the middle of the piece.</summary>
    public required IReadOnlyList<double?> DepthMm { get; init; }
}

/// <summary>How much of the perimeter reaches a depth, 0 to 1; the same for heartwood that lies open.</summary>
public sealed record RequiredDocument
{
    /// <summary>The depth, mm.</summary>
    public required double DepthMm { get; init; }

    /// <summary>Share of the perimeter that reaches it.</summary>
    public required double ReachedShare { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public required double ReachedShareU { get; init; }

    /// <summary>Share of the open heartwood that is treated; null where none is known to lie open.</summary>
    public double? OpenHeartwoodTreatedShare { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public double? OpenHeartwoodTreatedShareU { get; init; }

    /// <summary>The same for each face.</summary>
    public required IReadOnlyList<RequiredFaceDocument> Faces { get; init; }
}

/// <summary>The same for one face; null where nothing was read, or no heartwood is known to lie open.</summary>
public sealed record RequiredFaceDocument
{
    /// <summary>Number of the face, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Share of the face that reaches the depth.</summary>
    public double? ReachedShare { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public double? ReachedShareU { get; init; }

    /// <summary>Share of the face on which heartwood lies open.</summary>
    public double? OpenHeartwoodShare { get; init; }

    /// <summary>Share of that heartwood that reaches the depth.</summary>
    public double? OpenHeartwoodReachedShare { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public double? OpenHeartwoodReachedShareU { get; init; }

    /// <summary>Standard uncertainty of the share on which heartwood lies open.</summary>
    public double? OpenHeartwoodShareU { get; init; }
}

/// <summary>A finger of preservative at an incision.</summary>
public sealed record FingerDocument
{
    /// <summary>Where along the face it is deepest, mm.</summary>
    public required double PositionMm { get; init; }

    /// <summary>Width along the face, mm.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Depth, mm.</summary>
    public required double DepthMm { get; init; }
}

/// <summary>Depth along one face, at even steps from its start; lists of equal length.</summary>
public sealed record FaceDocument
{
    /// <summary>Number of the face, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Distance from one position to the next, mm.</summary>
    public required double StepMm { get; init; }

    /// <summary>Positions, mm from the start of the face.</summary>
    public required IReadOnlyList<double> PositionsMm { get; init; }

    /// <summary>Depth at each, mm.</summary>
    public required IReadOnlyList<double> DepthMm { get; init; }

    /// <summary>Its standard uncertainty, mm.</summary>
    public required IReadOnlyList<double> UMm { get; init; }

    /// <summary>Whether the position is left out.</summary>
    public required IReadOnlyList<bool> Excluded { get; init; }

    /// <summary>Depth of the sapwood, mm; null where not known.</summary>
    public required IReadOnlyList<double?> SapwoodMm { get; init; }

    /// <summary>Depth to which the wood is treated at least, where no front is seen because it is treated right through; null elsewhere.</summary>
    public IReadOnlyList<double?>? AtLeastMm { get; init; }

    /// <summary>Distance to the nearest untreated wood in any direction; null where it was not read.</summary>
    public IReadOnlyList<double?>? NearestUntreatedMm { get; init; }

    /// <summary>Depth of the border between incisions; null where the piece is not said to be incised.</summary>
    public IReadOnlyList<double>? EnvelopeMm { get; init; }

    /// <summary>Fingers at incisions; null where the piece is not said to be incised.</summary>
    public IReadOnlyList<FingerDocument>? Fingers { get; init; }
}

/// <summary>Depth over the whole section, mm, each with its standard uncertainty, mm.</summary>
public sealed record DepthDocument
{
    /// <summary>Least depth.</summary>
    public required double MinMm { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public required double MinUMm { get; init; }

    /// <summary>5th percentile.</summary>
    public required double P5Mm { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public required double P5UMm { get; init; }

    /// <summary>Median.</summary>
    public required double MedianMm { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public required double MedianUMm { get; init; }

    /// <summary>Mean.</summary>
    public required double MeanMm { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public required double MeanUMm { get; init; }

    /// <summary>Greatest depth.</summary>
    public required double MaxMm { get; init; }

    /// <summary>Its standard uncertainty.</summary>
    public required double MaxUMm { get; init; }
}
