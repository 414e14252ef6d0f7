using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Reports.Documents;

/// <summary>
/// The result of a case in the form that leaves the program: report.json is this record, and the PDF, the page and the store
/// are read from it. Every field is described in docs/json.md.
/// </summary>
public sealed record CaseDocument
{
    /// <summary>Name of the format, first field of every document.</summary>
    public const string FormatName = "alburnum case report";

    /// <summary>Version of the format; rises when a field changes its meaning or goes.</summary>
    public const int FormatVersion = 3;

    /// <summary>Name of the format.</summary>
    public required string Format { get; init; }

    /// <summary>Version of the format.</summary>
    public required int Version { get; init; }

    /// <summary>Program and version that made the result.</summary>
    public required string Program { get; init; }

    /// <summary>Reference of the case.</summary>
    public required string Reference { get; init; }

    /// <summary>What the case is about.</summary>
    public required string Title { get; init; }

    /// <summary>Whom it is for.</summary>
    public required string Client { get; init; }

    /// <summary>Day on which the sections were cut.</summary>
    public required DateOnly SampledOn { get; init; }

    /// <summary>When the result was made, UTC.</summary>
    public required DateTime RunAt { get; init; }

    /// <summary>What was asked.</summary>
    public required EnquiryDocument Enquiry { get; init; }

    /// <summary>What the rulebook answers.</summary>
    public required RequirementDocument Requirement { get; init; }

    /// <summary>What the timber was expected to reach; null where the case does not ask, or it is not known.</summary>
    public CasePredictionDocument? Prediction { get; init; }

    /// <summary>The charge that it was planned in; null where the case names none.</summary>
    public CaseChargeDocument? Charge { get; init; }

    /// <summary>
    /// What a reader should know beside the verdict, one sentence each: facts that do not go together, sizes taken on trust, what was expected and not met; null where there
    /// is nothing.
    /// </summary>
    public IReadOnlyList<string>? Remarks { get; init; }

    /// <summary>The batch and the rule by which it is judged.</summary>
    public required BatchDocument Batch { get; init; }

    /// <summary>Each piece cut.</summary>
    public required IReadOnlyList<PieceDocument> Pieces { get; init; }

    /// <summary>Photographs that the case leaves out of its verdict; empty where it leaves out none, and in documents kept before they were listed.</summary>
    // A report kept by an older version has none of these lists: what reads it leaves them null, here as below.
    public IReadOnlyList<LeftOutDocument> LeftOut
    {
        get => field ?? [];
        init;
    } = [];

    /// <summary>The verdict on the rule with all of them that could be read; null where that is no more than one, or more pieces than the batch has.</summary>
    public VerdictDocument? VerdictWithLeftOut { get; init; }

    /// <summary>What would be found with all of them, in one sentence; null likewise, and in documents kept before it was written down.</summary>
    public string? WithLeftOut { get; init; }

    /// <summary>Assays against the retention demanded.</summary>
    public required RetentionDocument Retention { get; init; }

    /// <summary>Whether everything that is required is met.</summary>
    public required RuleDocument Verdict { get; init; }

    /// <summary>The headline and the three findings; null in reports that were kept before version 3.</summary>
    public FindingsDocument? Findings { get; init; }

    /// <summary>Weakest standing of a fact used.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing WeakestStanding { get; init; }

    /// <summary>Sources with their standing, each once.</summary>
    public required IReadOnlyList<string> Sources { get; init; }

    /// <summary>What goes with the result whenever it is shown.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>What was asked.</summary>
public sealed record EnquiryDocument
{
    /// <summary>What the piece is for; "not stated" where nobody said.</summary>
    public required string Component { get; init; }

    /// <summary>Nominal section; "not stated" likewise.</summary>
    public required string Section { get; init; }

    /// <summary>Sawn or round.</summary>
    [JsonConverter(typeof(FormConverter))]
    public required TimberForm Form { get; init; }

    /// <summary>The timber; "not stated" likewise.</summary>
    public required string Species { get; init; }

    /// <summary>Its botanical names; empty where the timber is not stated.</summary>
    public required string BotanicalName { get; init; }

    /// <summary>Use class, or those possible: as asked, otherwise the code's own for the component; "not stated" where neither is known.</summary>
    public required string UseClass { get; init; }

    /// <summary>Whether the use class is the code's own for the component.</summary>
    public bool UseClassByCode { get; init; }

    /// <summary>The contract's class, where the use class is what that class is for; null otherwise.</summary>
    public string? UseClassByContract { get; init; }

    /// <summary>The situation that the use class stands for.</summary>
    public required string UseClassInWords { get; init; }

    /// <summary>Desired service life, years: as asked, otherwise the code's usual one for the component; null where neither is known.</summary>
    public int? ServiceLifeYears { get; init; }

    /// <summary>Whether the service life is the code's own for the component.</summary>
    public bool ServiceLifeByCode { get; init; }

    /// <summary>Whether the faces are incised; null where not known.</summary>
    public required bool? Incised { get; init; }

    /// <summary>Whether heartwood reaches a face; null where not known.</summary>
    [JsonConverter(typeof(YesNoConverter))]
    public bool? ExposedHeartwood { get; init; }

    /// <summary>Moisture content before treatment, %; null where not stated.</summary>
    public double? MoisturePercent { get; init; }

    /// <summary>Class that the contract names; null where none is stated.</summary>
    public string? StatedClass { get; init; }
}

/// <summary>What the rulebook answers. All but rulebook, outcome, reason and trace is null or empty where nothing is demanded.</summary>
public sealed record RequirementDocument
{
    /// <summary>Document and edition.</summary>
    public required string Rulebook { get; init; }

    /// <summary>The user's own file of it; null for one that ships, and in documents that were kept before this was written down.</summary>
    public RulebookCopyDocument? RulebookCopy { get; init; }

    /// <summary>Which kind of answer it gives.</summary>
    [JsonConverter(typeof(AnswerOutcomeConverter))]
    public required AnswerOutcome Outcome { get; init; }

    /// <summary>Why there is no demand; null where there is one.</summary>
    public required string? Reason { get; init; }

    /// <summary>The code's own name of the penetration.</summary>
    public string? Penetration { get; init; }

    /// <summary>The penetration in words.</summary>
    public string? PenetrationInWords { get; init; }

    /// <summary>Standing of the depth, the analytical zone left out; null likewise, and in documents that were kept before this was written down.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public Standing? PenetrationStanding { get; init; }

    /// <summary>What becomes of the class that the contract names; null where none is named, or where the rulebook answers by it.</summary>
    public ContractDocument? Contract { get; init; }

    /// <summary>Depth demanded all round by the stricter of code and contract, mm; null where something else is demanded.</summary>
    public double? DepthMm { get; init; }

    /// <summary>Where retention is assayed; null where the rulebook does not say.</summary>
    public string? AnalyticalZone { get; init; }

    /// <summary>Standing of the zone; null where none is named, and in documents as above.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public Standing? AnalyticalZoneStanding { get; init; }

    /// <summary>Depth at which the analytical zone begins, mm; 0: at the surface, null: no zone is named.</summary>
    public double? ZoneFromMm { get; init; }

    /// <summary>Depth at which it ends, mm; null for the whole sapwood.</summary>
    public double? ZoneDepthMm { get; init; }

    /// <summary>Multiple of the preservative's critical value; null where the contract names a figure.</summary>
    public double? RetentionFactor { get; init; }

    /// <summary>Standing of that multiple; null where there is none, and in documents as above.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public Standing? RetentionStanding { get; init; }

    /// <summary>Retention in the analytical zone, kg/m³.</summary>
    public double? RetentionKgPerM3 { get; init; }

    /// <summary>Greatest moisture content before treatment, %.</summary>
    public double? MoistureMaxPercent { get; init; }

    /// <summary>What must be known before the demand is read; null in documents that were kept before this was written down.</summary>
    public IReadOnlyList<string>? Warnings { get; init; }

    /// <summary>Standing of that limit; null where there is none, and in documents as above.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public Standing? MoistureStanding { get; init; }

    /// <summary>Insects that would make treatment wise although none is required, one sentence each; empty likewise, and in documents as above.</summary>
    public IReadOnlyList<string> Unless
    {
        get => field ?? [];
        init;
    } = [];

    /// <summary>Conditions that go with the demand, and what it leaves open.</summary>
    public required IReadOnlyList<string> Conditions { get; init; }

    /// <summary>Rows that apply or nearly do.</summary>
    public required IReadOnlyList<TraceRowDocument> Trace { get; init; }
}

/// <summary>How a row of the rulebook fares.</summary>
public enum TraceOutcome
{
    /// <summary>It applies.</summary>
    Applies,

    /// <summary>It would apply, but gives way to an exception.</summary>
    GivesWay,

    /// <summary>Something that it asks is not known.</summary>
    Open,

    /// <summary>It fails on one field.</summary>
    Fails,
}

/// <summary>One row of the trace.</summary>
public sealed record TraceRowDocument
{
    /// <summary>Key of the row.</summary>
    public required string Row { get; init; }

    /// <summary>Its conditions and its demand.</summary>
    public required string Says { get; init; }

    /// <summary>Whether it applies.</summary>
    public required bool Applies { get; init; }

    /// <summary>How it fares; null in documents that were kept before this was written down.</summary>
    [JsonConverter(typeof(TraceOutcomeConverter))]
    public TraceOutcome? Kind { get; init; }

    /// <summary>"applies", or which field kept it from applying.</summary>
    public required string Outcome { get; init; }

    /// <summary>Its standing.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>Its source.</summary>
    public required string Citation { get; init; }
}

/// <summary>A verdict with its reasons.</summary>
public sealed record VerdictDocument
{
    /// <summary>conforms, does not conform or undecided.</summary>
    [JsonConverter(typeof(VerdictConverter))]
    public required Verdict Verdict { get; init; }

    /// <summary>Probability of conformity, 0 to 1; null where nothing could be determined.</summary>
    public double? Probability { get; init; }

    /// <summary>Least probability that the evidence allows; null likewise.</summary>
    public double? ProbabilityLow { get; init; }

    /// <summary>Greatest probability that the evidence allows; null likewise.</summary>
    public double? ProbabilityHigh { get; init; }

    /// <summary>Why, one sentence each.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>The same as data, one object for each reason, in their order: docs/json/reasons.md.</summary>
    public IReadOnlyList<JsonObject> Grounds
    {
        get => field ?? [];
        init;
    } = [];
}

/// <summary>One piece cut from the batch.</summary>
public sealed record PieceDocument
{
    /// <summary>Name of the piece.</summary>
    public required string Name { get; init; }

    /// <summary>How it was read.</summary>
    [JsonConverter(typeof(EvidenceConverter))]
    public required EvidenceKind Evidence { get; init; }

    /// <summary>What was read.</summary>
    public required ReadingDocument Reading { get; init; }

    /// <summary>What is said of it.</summary>
    public required VerdictDocument Verdict { get; init; }
}

/// <summary>A photograph that the case leaves out of its verdict.</summary>
public sealed record LeftOutDocument
{
    /// <summary>Name of the photograph.</summary>
    public required string File { get; init; }

    /// <summary>SHA-256 of the photograph; null where it could not be opened.</summary>
    public string? Sha256 { get; init; }

    /// <summary>Why it is left out, as the case says.</summary>
    public required string Reason { get; init; }

    /// <summary>Name of the piece that it shows; that of the file where the case does not say.</summary>
    public required string Piece { get; init; }

    /// <summary>What was read from it; null where it could not be opened, or is no photograph.</summary>
    public ReadingDocument? Reading { get; init; }

    /// <summary>What would be said of the piece; null likewise, and where the batch has no more pieces.</summary>
    public VerdictDocument? PieceVerdict { get; init; }

    /// <summary>What the verdict on the case would be with it; null likewise.</summary>
    public VerdictDocument? VerdictWithIt { get; init; }

    /// <summary>The same in words.</summary>
    public required string InWords { get; init; }
}

/// <summary>The batch and the rule by which it is judged.</summary>
public sealed record BatchDocument
{
    /// <summary>Pieces in the batch.</summary>
    public required int PiecesInBatch { get; init; }

    /// <summary>Pieces cut and read.</summary>
    public required int PiecesCut { get; init; }

    /// <summary>The rule, in words.</summary>
    public required string AcceptanceRule { get; init; }

    /// <summary>Whether the rule is met; with the stricter demand where code and contract have one each.</summary>
    public required RuleDocument Verdict { get; init; }

    /// <summary>The rule with the contract's demand and with the code's, each by itself; empty where there are not two.</summary>
    public IReadOnlyList<DemandJudgedDocument> ByDemand
    {
        get => field ?? [];
        init;
    } = [];
}

/// <summary>A batch against one of two demands.</summary>
public sealed record DemandJudgedDocument
{
    /// <summary>"contract" or "code".</summary>
    public required string By { get; init; }

    /// <summary>Name of the demand.</summary>
    public required string Name { get; init; }

    /// <summary>The depth in words.</summary>
    public required string PenetrationInWords { get; init; }

    /// <summary>Whether the rule is met.</summary>
    public required RuleDocument Verdict { get; init; }
}

/// <summary>Assays against the retention demanded.</summary>
public sealed record RetentionDocument
{
    /// <summary>Retention demanded, kg/m³; null where none is.</summary>
    public double? RequiredKgPerM3 { get; init; }

    /// <summary>Assays of the analytical zone.</summary>
    public required IReadOnlyList<AssayDocument> Assays { get; init; }

    /// <summary>How the laboratory's figures became retentions, one sentence each; empty where they were given as what is required.</summary>
    public IReadOnlyList<string> Conversion
    {
        get => field ?? [];
        init;
    } = [];

    /// <summary>Whether the retention is met; where several are asked for, whether each is.</summary>
    public required RuleDocument Verdict { get; init; }

    /// <summary>The assays against each retention that is asked for, where it is not the code's alone; empty otherwise, and in documents kept before it was written down.</summary>
    public IReadOnlyList<RetentionJudgedDocument> ByDemand
    {
        get => field ?? [];
        init;
    } = [];
}

/// <summary>The assays against one of the retentions that are asked for.</summary>
public sealed record RetentionJudgedDocument
{
    /// <summary>Who asks for how much, and in which zone, in words.</summary>
    public required string Demand { get; init; }

    /// <summary>Retention asked for, kg/m³.</summary>
    public required double KgPerM3 { get; init; }

    /// <summary>Zone in which it is asked for; null where it is not known.</summary>
    public string? Zone { get; init; }

    /// <summary>Whether it is met.</summary>
    public required RuleDocument Verdict { get; init; }
}

/// <summary>One assay of the analytical zone: a result with its standard uncertainty, or the limit that nothing was found above.</summary>
public sealed record AssayDocument
{
    /// <summary>Name of the sample.</summary>
    public required string Sample { get; init; }

    /// <summary>The laboratory; null where none is named.</summary>
    public string? Laboratory { get; init; }

    /// <summary>Number of its report; null where none is given.</summary>
    public string? Report { get; init; }

    /// <summary>Method of the analysis; null where none is named.</summary>
    public string? Method { get; init; }

    /// <summary>Analyses that the result is the mean of; null in a report kept before they were asked for.</summary>
    public int? SubSamples { get; init; }

    /// <summary>The zone that was cut, in words; null where nobody says.</summary>
    public string? Zone { get; init; }

    /// <summary>The figures as the laboratory wrote them; null where they were in kg/m³ of what is required.</summary>
    public string? AsReported { get; init; }

    /// <summary>The result, kg/m³.</summary>
    public double? RetentionKgPerM3 { get; init; }

    /// <summary>Its standard uncertainty, kg/m³.</summary>
    public double? UKgPerM3 { get; init; }

    /// <summary>Part of it that comes from the density of the zone, kg/m³; null in a report kept before it was known.</summary>
    public double? UOfDensityKgPerM3 { get; init; }

    /// <summary>The limit of detection that it stayed below, kg/m³.</summary>
    public double? BelowKgPerM3 { get; init; }
}
