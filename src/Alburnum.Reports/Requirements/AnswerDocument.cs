namespace Alburnum.Reports.Requirements;

/// <summary>An answer as data: what the code demands, why, how sure that is, and what else is open.</summary>
/// <param name="Format">"alburnum requirement".</param>
/// <param name="Version">Version of this form, 1.</param>
/// <param name="Outcome">"required", "not permitted" or "not covered".</param>
/// <param name="Reason">Why there is no demand; null where there is one.</param>
/// <param name="Missing">What would have to be known of the piece.</param>
/// <param name="Rulebook">Name of the rulebook.</param>
/// <param name="RulebookTitle">Document and edition.</param>
/// <param name="Enquiry">What was asked.</param>
/// <param name="Requirement">The demand; null where there is none.</param>
/// <param name="WeakestStanding">Weakest standing of what the answer rests on.</param>
/// <param name="Trace">How each subject was decided.</param>
/// <param name="FactsUsed">Facts outside the rows.</param>
/// <param name="Untreated">Whether the timber will do untreated; null where species or use class is not known.</param>
/// <param name="Routes">What would make it possible, best first; empty where nothing is wrong.</param>
/// <param name="Clause">Paragraph for a specification; null where there is no demand.</param>
/// <param name="Remarks">Traps between editions, correspondence with other systems, cautions.</param>
public sealed record AnswerDocument(
    string Format,
    int Version,
    string Outcome,
    string? Reason,
    IReadOnlyList<string> Missing,
    string Rulebook,
    string RulebookTitle,
    AskedDocument Enquiry,
    DemandDocument? Requirement,
    string WeakestStanding,
    IReadOnlyList<StepDocument> Trace,
    IReadOnlyList<FactDocument> FactsUsed,
    UntreatedDocument? Untreated,
    IReadOnlyList<RouteDocument> Routes,
    string? Clause,
    IReadOnlyList<string> Remarks
);

/// <summary>What was asked; null where not known.</summary>
public sealed record AskedDocument(
    string? Component,
    string? Section,
    string? Form,
    string? Species,
    IReadOnlyList<string> UseClasses,
    int? LifeYears,
    bool? ExposedHeartwood,
    bool? Incised,
    bool? Coated,
    double? MoisturePercent,
    string? StatedClass,
    string? Preservative,
    string? CriticalValue
);

/// <summary>The demand.</summary>
/// <param name="Penetration">The code's own name of it.</param>
/// <param name="PenetrationInWords">The depth in words.</param>
/// <param name="AnalyticalZone">Where retention is assayed; null where not known.</param>
/// <param name="RetentionFactor">Multiple of the preservative's critical value; null where not known.</param>
/// <param name="Retention">The amount; null where not known.</param>
/// <param name="MoistureMaxPercent">Greatest moisture before treatment; null where not known.</param>
/// <param name="Conditions">Conditions and advice.</param>
/// <param name="Open">Parts that the rulebook cannot answer.</param>
public sealed record DemandDocument(
    string Penetration,
    string PenetrationInWords,
    string? AnalyticalZone,
    double? RetentionFactor,
    string? Retention,
    double? MoistureMaxPercent,
    IReadOnlyList<string> Conditions,
    IReadOnlyList<string> Open
);

/// <summary>How one subject was decided.</summary>
public sealed record StepDocument(
    string Subject,
    string Finding,
    IReadOnlyList<RowDocument> Matched,
    IReadOnlyList<RowDocument> SetAside,
    IReadOnlyList<MissDocument> Open,
    IReadOnlyList<MissDocument> NearMisses
);

/// <summary>A row of the rulebook.</summary>
public sealed record RowDocument(string Key, string When, string Demand, string Standing, string Source);

/// <summary>A row that just failed, or that stayed open, on one field.</summary>
public sealed record MissDocument(RowDocument Row, string Field, string Asked, string Found);

/// <summary>A fact outside the rows.</summary>
public sealed record FactDocument(string Fact, string Standing, string Source);

/// <summary>Whether the timber will do untreated.</summary>
public sealed record UntreatedDocument(string? Heartwood, string Sapwood, string InWords, string Standing);

/// <summary>One way to make it possible.</summary>
/// <param name="Kind">What is changed, for instance "incise".</param>
/// <param name="Change">The change in words.</param>
/// <param name="Reach">Whether the demand is usually met then.</param>
/// <param name="Reason">Why the rulebook has no demand then; null where it has one or none is needed.</param>
/// <param name="Requirement">The demand then; null where the rulebook is silent or no preservative is needed.</param>
/// <param name="Untreated">The verdict on untreated heartwood, where that is the route.</param>
/// <param name="Standing">Weakest standing of what the route rests on.</param>
/// <param name="Trace">How each subject was decided, without the rows that failed.</param>
public sealed record RouteDocument(
    string Kind,
    string Change,
    string Reach,
    string? Reason,
    DemandDocument? Requirement,
    UntreatedDocument? Untreated,
    string Standing,
    IReadOnlyList<StepDocument> Trace
);
