using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>One case as it was put to the technologist: what is asked, of which batch, and by which rule it is to be judged.</summary>
/// <param name="Reference">The technologist's own reference, unique among the cases.</param>
/// <param name="Title">What the case is about.</param>
/// <param name="Client">Who asked.</param>
/// <param name="SampledOn">Day on which the sections were cut.</param>
/// <param name="Enquiry">What is known of the component.</param>
/// <param name="BatchSize">Pieces in the batch, 1 or more.</param>
/// <param name="Acceptance">How many of the pieces cut may fail.</param>
/// <param name="Assays">Assays of the analytical zone; may be empty.</param>
/// <param name="StatedRetentionKgPerM3">Retention that the contract itself names, kg/m³; null to take the rulebook's.</param>
/// <param name="StatedSapwoodMm">
/// Sapwood depth that the technologist states for every face where a section shows no border, mm; null where none is stated.
/// </param>
public sealed record Case(
    string Reference,
    string Title,
    string Client,
    DateOnly SampledOn,
    Enquiry Enquiry,
    int BatchSize,
    AcceptanceRule Acceptance,
    IReadOnlyList<Assay> Assays,
    double? StatedRetentionKgPerM3,
    double? StatedSapwoodMm
);

/// <summary>How a piece was read.</summary>
public enum EvidenceKind
{
    /// <summary>From a photograph of its sprayed cut end.</summary>
    Photograph,

    /// <summary>With a ruler, at some positions.</summary>
    Ruler,
}

/// <summary>What was measured on one piece.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="Kind">How it was read.</param>
/// <param name="Profile">Its depth profile; null where none could be determined.</param>
/// <param name="NotDetermined">Why not, one sentence each; empty where it was determined.</param>
public sealed record PieceEvidence(
    string Piece,
    EvidenceKind Kind,
    DepthProfile? Profile,
    IReadOnlyList<string> NotDetermined
);

/// <summary>One piece with its judgement.</summary>
/// <param name="Evidence">What was measured, with the sapwood as stated filled in.</param>
/// <param name="Judgement">What is said of it.</param>
public sealed record PieceResult(PieceEvidence Evidence, Judgement Judgement);

/// <summary>A case from enquiry to verdict.</summary>
/// <param name="Case">The case.</param>
/// <param name="Answer">What the rulebook says, with its trace.</param>
/// <param name="Pieces">Every piece in the order given.</param>
/// <param name="Batch">The batch's judgement; null where the rulebook demands nothing that could be judged.</param>
/// <param name="RequiredKgPerM3">Retention that the assays were judged against, kg/m³; null where none is known.</param>
/// <param name="Overall">What is said of the whole.</param>
public sealed record CaseResult(
    Case Case,
    Answer Answer,
    IReadOnlyList<PieceResult> Pieces,
    BatchJudgement? Batch,
    double? RequiredKgPerM3,
    Judgement Overall
);
