using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;

namespace Alburnum.Workflows.Acceptance;

/// <summary>What is asked when a lot is to be sampled.</summary>
/// <param name="Lot">Pieces in the lot, 1 or more; null where none is stated.</param>
/// <param name="Seed">Seed of the random positions.</param>
public abstract record SamplingRequest(int? Lot, ulong Seed);

/// <summary>The plan of a standard's tables.</summary>
/// <param name="Pieces">Pieces in the lot; 1 or more.</param>
/// <param name="Level">Inspection level.</param>
/// <param name="AqlPercent">The AQL, %.</param>
/// <param name="Severity">Normal, tightened or reduced.</param>
/// <param name="Seed">Seed of the random positions.</param>
public sealed record SampleByTables(int Pieces, InspectionLevel Level, double AqlPercent, Severity Severity, ulong Seed)
    : SamplingRequest(Pieces, Seed)
{
    /// <summary>Source of the AQL where it is the code's; null where it was asked for.</summary>
    public Provenance? AqlFrom { get; init; }
}

/// <summary>A stated number of pieces, of which a share must pass.</summary>
/// <param name="Rule">The share.</param>
/// <param name="Cut">Pieces to cut, 1 to the lot.</param>
/// <param name="Level">Inspection level of the plan indexed at the same figure, which stands beside it.</param>
/// <param name="Lot">Pieces in the lot; null where none is stated.</param>
/// <param name="Seed">Seed of the random positions.</param>
public sealed record SampleByShare(ShareMustPass Rule, int Cut, InspectionLevel Level, int? Lot, ulong Seed)
    : SamplingRequest(Lot, Seed);

/// <summary>How a plan for two risks goes to work.</summary>
public enum RiskPlan
{
    /// <summary>The smallest single plan.</summary>
    Smallest,

    /// <summary>In two samples.</summary>
    Double,

    /// <summary>Piece by piece (Wald).</summary>
    Sequential,

    /// <summary>By measured values.</summary>
    Variables,
}

/// <summary>A plan designed for two risks.</summary>
/// <param name="Plan">How it goes to work.</param>
/// <param name="Risks">The risks.</param>
/// <param name="Lot">Pieces in the lot; null where none is stated.</param>
/// <param name="Seed">Seed of the random positions.</param>
public sealed record SampleForRisks(RiskPlan Plan, RiskPoints Risks, int? Lot, ulong Seed) : SamplingRequest(Lot, Seed);

/// <summary>Pieces to cut so that a conforming share is shown.</summary>
/// <param name="Share">Share to be shown, above 0, below 1.</param>
/// <param name="Confidence">One-sided confidence.</param>
/// <param name="Failures">Failures that are borne.</param>
/// <param name="Lot">Pieces in the lot; null where none is stated.</param>
/// <param name="Seed">Seed of the random positions.</param>
public sealed record SampleToShow(double Share, double Confidence, int Failures, int? Lot, ulong Seed)
    : SamplingRequest(Lot, Seed);

/// <summary>A plan for one lot that stands alone, by its limiting quality.</summary>
/// <param name="Pieces">Pieces in the lot; 1 or more.</param>
/// <param name="LimitingShare">Failing share that is hardly ever to be accepted.</param>
/// <param name="Risk">Greatest probability of accepting it.</param>
/// <param name="Failures">Failures that are borne.</param>
/// <param name="Level">Inspection level of the plan of the tables that protects as well, which stands beside it.</param>
/// <param name="Seed">Seed of the random positions.</param>
public sealed record SampleIsolated(
    int Pieces,
    double LimitingShare,
    double Risk,
    int Failures,
    InspectionLevel Level,
    ulong Seed
) : SamplingRequest(Pieces, Seed);
