namespace Alburnum.Reports.Documents;

/// <summary>
/// The result of a case in the form that leaves the program: report.json is this record, and the PDF, the page and the store
/// are read from it. Every field is described in docs/json.md.
/// </summary>
public sealed record CaseDocument(
    string Format,
    int Version,
    string Program,
    string Reference,
    string Title,
    string Client,
    DateOnly SampledOn,
    DateTime RunAt,
    EnquiryDocument Enquiry,
    RequirementDocument Requirement,
    BatchDocument Batch,
    IReadOnlyList<PieceDocument> Pieces,
    RetentionDocument Retention,
    VerdictDocument Verdict,
    string WeakestStanding,
    IReadOnlyList<string> Sources,
    IReadOnlyList<string> Cautions
)
{
    /// <summary>Name of the format, first field of every document.</summary>
    public const string FormatName = "alburnum case report";

    /// <summary>Version of the format; rises when a field changes its meaning or goes.</summary>
    public const int FormatVersion = 1;
}

/// <summary>What was asked.</summary>
public sealed record EnquiryDocument(
    string Component,
    string Section,
    string Form,
    string Species,
    string BotanicalName,
    string UseClass,
    string UseClassInWords,
    int? ServiceLifeYears,
    bool Incised,
    string ExposedHeartwood,
    double? MoisturePercent
);

/// <summary>What the rulebook answers. <c>Outcome</c> is "required", "not permitted" or "not covered".</summary>
public sealed record RequirementDocument(
    string Rulebook,
    string Outcome,
    string Reason,
    string? Penetration,
    string? PenetrationInWords,
    double? DepthMm,
    string? AnalyticalZone,
    double? ZoneDepthMm,
    double? RetentionFactor,
    double? RetentionKgPerM3,
    double? MoistureMaxPercent,
    IReadOnlyList<string> Conditions,
    IReadOnlyList<TraceRowDocument> Trace
);

/// <summary>One row of the trace. <c>Outcome</c> is "applies", or which field kept it from applying.</summary>
public sealed record TraceRowDocument(
    string Row,
    string Says,
    bool Applies,
    string Outcome,
    string Standing,
    string Citation
);

/// <summary>A verdict with its probability (null where nothing could be determined) and reasons.</summary>
public sealed record VerdictDocument(string Verdict, double? Probability, IReadOnlyList<string> Reasons);

/// <summary>One piece cut from the batch. <c>Evidence</c> is "photograph" or "ruler".</summary>
public sealed record PieceDocument(string Name, string Evidence, ReadingDocument Reading, VerdictDocument Verdict);

/// <summary>The batch and the rule by which it is judged.</summary>
public sealed record BatchDocument(
    int PiecesInBatch,
    int PiecesCut,
    string AcceptanceRule,
    double? ConformingShareLowerBound,
    VerdictDocument Verdict
);

/// <summary>Assays against the retention demanded.</summary>
public sealed record RetentionDocument(
    double? RequiredKgPerM3,
    IReadOnlyList<AssayDocument> Assays,
    VerdictDocument Verdict
);

/// <summary>One assay of the analytical zone: a result with its standard uncertainty, or the limit that nothing was found above.</summary>
public sealed record AssayDocument(string Sample, double? RetentionKgPerM3, double? UKgPerM3, double? BelowKgPerM3);
