using System.Text.Json.Serialization;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Documents;
using Alburnum.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>An answer as data: what the code demands, why, how sure that is, and what else is open.</summary>
public sealed record AnswerDocument
{
    /// <summary>"alburnum requirement".</summary>
    public required string Format { get; init; }

    /// <summary>Version of this form, 1.</summary>
    public required int Version { get; init; }

    /// <summary>"required", "recommended, not required", "not needed", "not permitted" or "not covered".</summary>
    [JsonConverter(typeof(AnswerOutcomeConverter))]
    public required AnswerOutcome Outcome { get; init; }

    /// <summary>Why there is no demand; null where there is one.</summary>
    public required string? Reason { get; init; }

    /// <summary>Weakest standing of what says that none is needed, or that it is not permitted; null for any other outcome.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing? ReasonStanding { get; init; }

    /// <summary>What would have to be known of the piece.</summary>
    [JsonConverter(typeof(FieldsConverter))]
    public required IReadOnlyList<Field> Missing { get; init; }

    /// <summary>Name of the rulebook.</summary>
    public required string Rulebook { get; init; }

    /// <summary>Document and edition.</summary>
    public required string RulebookTitle { get; init; }

    /// <summary>The user's own file of it; null for one that ships.</summary>
    public required RulebookCopyDocument? RulebookCopy { get; init; }

    /// <summary>What was asked.</summary>
    public required AskedDocument Enquiry { get; init; }

    /// <summary>The demand; null where there is none.</summary>
    public required DemandDocument? Requirement { get; init; }

    /// <summary>What becomes of the class that the contract names; null where none is named, or where the rulebook answers by it.</summary>
    public required ContractDocument? Contract { get; init; }

    /// <summary>Weakest standing of what the answer rests on.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing WeakestStanding { get; init; }

    /// <summary>How each subject was decided.</summary>
    public required IReadOnlyList<StepDocument> Trace { get; init; }

    /// <summary>Facts outside the rows.</summary>
    public required IReadOnlyList<FactDocument> FactsUsed { get; init; }

    /// <summary>Whether the timber will do untreated; null where species or use class is not known.</summary>
    public required UntreatedDocument? Untreated { get; init; }

    /// <summary>Insects that would make treatment wise although none is required, one sentence each.</summary>
    public required IReadOnlyList<string> Unless { get; init; }

    /// <summary>What pressure treatment is expected to reach; null where no depth is required or too little of the piece is known.</summary>
    public required ExpectedReachDocument? Expected { get; init; }

    /// <summary>What would make it possible, best first; empty where nothing is wrong, and where it is not known what is required.</summary>
    public required IReadOnlyList<RouteDocument> Routes { get; init; }

    /// <summary>What lies near and would not do.</summary>
    public required IReadOnlyList<RouteDocument> WouldNotDo { get; init; }

    /// <summary>Paragraph for a specification; null where it is not known what is required, and where it is held up.</summary>
    public required string? Clause { get; init; }

    /// <summary>What stands in place of the clause, where the contract's class is for another use than the piece's or the law forbids the treatment; otherwise null.</summary>
    public required string? ClauseHeldUp { get; init; }

    /// <summary>The question that narrows the use class down, where the answer depends on it; otherwise null.</summary>
    public required string? AskNext { get; init; }

    /// <summary>What must be known before the demand is read: a class of the contract for another use, classes of other systems, marine borers, the preservative.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>Traps between editions, correspondence with other systems, cautions.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }
}

/// <summary>What was asked; null where not known.</summary>
public sealed record AskedDocument
{
    /// <summary>What the piece is for, as codes speak of it.</summary>
    public required string? Component { get; init; }

    /// <summary>The name that it was asked for by.</summary>
    public required string? CalledAs { get; init; }

    /// <summary>Nominal section.</summary>
    public required string? Section { get; init; }

    /// <summary>"sawn" or "round".</summary>
    [JsonConverter(typeof(FormConverter))]
    public required TimberForm? Form { get; init; }

    /// <summary>The timber.</summary>
    public required string? Species { get; init; }

    /// <summary>Use class, or those possible; empty where none was said.</summary>
    public required IReadOnlyList<string> UseClasses { get; init; }

    /// <summary>The use class as it was written; null where none was.</summary>
    public string? UseClassAsWritten { get; init; }

    /// <summary>Whether it stands in salt water.</summary>
    public required bool? SaltWater { get; init; }

    /// <summary>Whether it touches the ground or fresh water.</summary>
    public required bool? GroundContact { get; init; }

    /// <summary>Whether the weather reaches it.</summary>
    public required bool? Weather { get; init; }

    /// <summary>Whether water can stay on it.</summary>
    public required bool? WaterStays { get; init; }

    /// <summary>Whether it can get damp under cover.</summary>
    public required bool? Damp { get; init; }

    /// <summary>Desired service life, years.</summary>
    public required int? ServiceLifeYears { get; init; }

    /// <summary>Whether heartwood reaches a face.</summary>
    public required bool? ExposedHeartwood { get; init; }

    /// <summary>Whether the faces are incised.</summary>
    public required bool? Incised { get; init; }

    /// <summary>Whether a coating is kept up.</summary>
    public required bool? Coated { get; init; }

    /// <summary>Moisture before treatment, %.</summary>
    public required double? MoisturePercent { get; init; }

    /// <summary>The class that the contract names.</summary>
    public required string? StatedClass { get; init; }

    /// <summary>Code of the preservative.</summary>
    public required string? Preservative { get; init; }

    /// <summary>The critical value with its unit.</summary>
    public required string? CriticalValue { get; init; }

    /// <summary>Insects that live where it is used; empty where none does.</summary>
    public required IReadOnlyList<string>? Insects { get; init; }
}

/// <summary>The demand.</summary>
public sealed record DemandDocument
{
    /// <summary>The code's own name of it.</summary>
    public required string Penetration { get; init; }

    /// <summary>Whether the code only recommends it.</summary>
    public required bool IsRecommended { get; init; }

    /// <summary>The depth in words.</summary>
    public required string PenetrationInWords { get; init; }

    /// <summary>Weakest standing of what the depth rests on, the analytical zone left out.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing PenetrationStanding { get; init; }

    /// <summary>Where retention is assayed; null where not known.</summary>
    public required string? AnalyticalZone { get; init; }

    /// <summary>Standing of the analytical zone; null where that is not known.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing? AnalyticalZoneStanding { get; init; }

    /// <summary>Depth at which the analytical zone begins, mm; 0: at the surface, null: no zone is named.</summary>
    public required double? ZoneFromMm { get; init; }

    /// <summary>Depth at which it ends, mm; null for the whole sapwood.</summary>
    public required double? ZoneDepthMm { get; init; }

    /// <summary>Multiple of the preservative's critical value; null where not known.</summary>
    public required double? RetentionFactor { get; init; }

    /// <summary>The amount; null where not known.</summary>
    public required string? Retention { get; init; }

    /// <summary>Standing of the retention; null where that is not known.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing? RetentionStanding { get; init; }

    /// <summary>Greatest moisture before treatment; null where not known.</summary>
    public required double? MoistureMaxPercent { get; init; }

    /// <summary>Standing of that limit; null where it is not known.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing? MoistureStanding { get; init; }

    /// <summary>Conditions and advice.</summary>
    public required IReadOnlyList<string> Conditions { get; init; }

    /// <summary>Parts that the rulebook cannot answer.</summary>
    public required IReadOnlyList<string> Open { get; init; }
}

/// <summary>How one subject was decided.</summary>
public sealed record StepDocument
{
    /// <summary>What was decided, for instance "penetration".</summary>
    [JsonConverter(typeof(SubjectConverter))]
    public required Subject Subject { get; init; }

    /// <summary>What it came to, in words.</summary>
    public required string Finding { get; init; }

    /// <summary>Rows that hold and count.</summary>
    public required IReadOnlyList<RowDocument> Matched { get; init; }

    /// <summary>Rows that hold but yield to an exception.</summary>
    public required IReadOnlyList<RowDocument> SetAside { get; init; }

    /// <summary>Rows that could hold if something were known.</summary>
    public required IReadOnlyList<MissDocument> Open { get; init; }

    /// <summary>Rows that failed on one field.</summary>
    public required IReadOnlyList<MissDocument> NearMisses { get; init; }
}

/// <summary>A row of the rulebook.</summary>
public sealed record RowDocument
{
    /// <summary>Key of the row.</summary>
    public required string Key { get; init; }

    /// <summary>When it holds, in words.</summary>
    public required string When { get; init; }

    /// <summary>What it demands, in words.</summary>
    public required string Demand { get; init; }

    /// <summary>Standing of the source.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The source.</summary>
    public required string Source { get; init; }
}

/// <summary>A row that just failed, or that stayed open, on one field.</summary>
public sealed record MissDocument
{
    /// <summary>The row.</summary>
    public required RowDocument Row { get; init; }

    /// <summary>The field.</summary>
    [JsonConverter(typeof(FieldConverter))]
    public required Field Field { get; init; }

    /// <summary>What the row asks of it.</summary>
    public required string Asked { get; init; }

    /// <summary>What is known of it.</summary>
    public required string Found { get; init; }
}

/// <summary>A fact outside the rows.</summary>
public sealed record FactDocument
{
    /// <summary>The fact in words.</summary>
    public required string Fact { get; init; }

    /// <summary>Standing of the source.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The source.</summary>
    public required string Source { get; init; }
}

/// <summary>Whether the timber will do untreated.</summary>
public sealed record UntreatedDocument
{
    /// <summary>Verdict on the heartwood, by the least durable class of its range; null where its durability is not known.</summary>
    public required string? Heartwood { get; init; }

    /// <summary>Verdict by the most durable class of its range; null where its durability is not known.</summary>
    public required string? HeartwoodAtBest { get; init; }

    /// <summary>Verdict on the sapwood.</summary>
    public required string Sapwood { get; init; }

    /// <summary>All of it in one sentence.</summary>
    public required string InWords { get; init; }

    /// <summary>Standing of the source.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }
}

/// <summary>What pressure treatment is expected to reach: a prediction with the usual schedule, and what is usual in such timber.</summary>
public sealed record ExpectedReachDocument
{
    /// <summary>Share of pieces that meet the demand everywhere, or what it asks of the part named, with its spread between batches.</summary>
    public required Estimate PieceShare { get; init; }

    /// <summary>The wood that the shares are of, where more is asked than of it: at most so many pieces meet the demand. Null where they are of the whole demand.</summary>
    [JsonConverter(typeof(WoodZoneConverter))]
    public required WoodZone? Part { get; init; }

    /// <summary>Share of pieces that meet the demand where no heartwood reaches a face; null where it is known whether any does, and where nothing is asked of it.</summary>
    public required Estimate? PieceShareWithoutHeartwood { get; init; }

    /// <summary>Share of cores that meet it.</summary>
    public required Estimate CoreShare { get; init; }

    /// <summary>Least depth of a piece.</summary>
    public required Spread LeastDepthMm { get; init; }

    /// <summary>Whether the demand is usually met, by treatability and incising alone.</summary>
    [JsonConverter(typeof(ReachConverter))]
    public required ReachVerdict Usual { get; init; }

    /// <summary>True where the two point different ways.</summary>
    public required bool Differ { get; init; }

    /// <summary>All of it, one sentence each.</summary>
    public required IReadOnlyList<string> InWords { get; init; }
}

/// <summary>One way to make it possible.</summary>
public sealed record RouteDocument
{
    /// <summary>What is changed, for instance "incise".</summary>
    [JsonConverter(typeof(RouteKindConverter))]
    public required RouteKind Kind { get; init; }

    /// <summary>The change in words.</summary>
    public required string Change { get; init; }

    /// <summary>Whether the demand is usually met then.</summary>
    [JsonConverter(typeof(ReachConverter))]
    public required ReachVerdict Reach { get; init; }

    /// <summary>Whether it is usually met by treatability and incising alone, where the prediction says otherwise; null where the two agree.</summary>
    [JsonConverter(typeof(ReachConverter))]
    public required ReachVerdict? UsualAgainstPrediction { get; init; }

    /// <summary>Share of pieces that are predicted to meet the demand then, 0 to 1; null where that cannot be predicted.</summary>
    public required double? ExpectedPieceShare { get; init; }

    /// <summary>The wood that the share is of, where more is asked than of it: at most so many pieces meet the demand. Null where the share is of the whole demand.</summary>
    [JsonConverter(typeof(WoodZoneConverter))]
    public required WoodZone? ExpectedPart { get; init; }

    /// <summary>That the timber is commonly sold for the component, or that this is not known; null where no other timber is proposed.</summary>
    public required string? CommonlySold { get; init; }

    /// <summary>How long such heartwood lasted in the ground, and whether it lasts as long as is asked; null where neither matters.</summary>
    public required string? Lasted { get; init; }

    /// <summary>Why the rulebook has no demand then; null where it has one or none is needed.</summary>
    public required string? Reason { get; init; }

    /// <summary>The demand then; null where the rulebook is silent or no preservative is needed.</summary>
    public required DemandDocument? Requirement { get; init; }

    /// <summary>The contract's class, where it decides on the depth or must be met as well; null otherwise.</summary>
    public required string? StatedClass { get; init; }

    /// <summary>The verdict on untreated heartwood, where that is the route.</summary>
    public required UntreatedDocument? Untreated { get; init; }

    /// <summary>Weakest standing of what the route rests on.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>How each subject was decided, without the rows that failed.</summary>
    public required IReadOnlyList<StepDocument> Trace { get; init; }
}
