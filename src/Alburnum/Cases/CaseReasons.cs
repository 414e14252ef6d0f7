using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>What the verdict on a case rests on beside its pieces and its batch.</summary>
public abstract record CaseReason : Reason
{
    private protected CaseReason() { }
}

/// <summary>The code of practice asks for no preservative: there is nothing to judge against.</summary>
/// <param name="Answer">What the rulebook answers.</param>
public sealed record CodeAsksForNone(NotNeeded Answer) : CaseReason;

/// <summary>The code of practice does not allow it.</summary>
/// <param name="Answer">What the rulebook answers.</param>
public sealed record CodeForbids(NotPermitted Answer) : CaseReason;

/// <summary>The code of practice recommends what is judged against, and does not require it.</summary>
/// <param name="Answer">What the rulebook answers.</param>
public sealed record CodeOnlyRecommends(Required Answer) : CaseReason;

/// <summary>The rulebook has no answer.</summary>
/// <param name="Answer">What the rulebook answers.</param>
public sealed record RulebookSilent(NotCovered Answer) : CaseReason;

/// <summary>The code asks for no preservative against decay, and is silent on insects that may attack the timber.</summary>
/// <param name="There">The insects.</param>
public sealed record CodeSilentOnInsects(InsectsAtWork There) : CaseReason;

/// <summary>There is no depth to judge a piece against.</summary>
public sealed record NoDepthKnown : CaseReason;

/// <summary>Retention is not judged: no figure is known that the assays must meet.</summary>
public sealed record RetentionUnknown : CaseReason;

/// <summary>Retention is not judged: neither the rulebook nor the contract gives a figure in kg/m³.</summary>
public sealed record RetentionNotStated : CaseReason;

/// <summary>Retention is not judged: no assay was given.</summary>
public sealed record RetentionNotAssayed : CaseReason;

/// <summary>The code limits the moisture before treatment, and the case does not say how moist the timber was.</summary>
/// <param name="MaxPercent">Greatest moisture content before treatment, %.</param>
public sealed record MoistureNotStated(double MaxPercent) : CaseReason;

/// <summary>Code and contract each have a demand; the verdict follows the stricter.</summary>
/// <param name="Contract">The contract's demand.</param>
/// <param name="ByContract">The batch against it.</param>
/// <param name="ByCode">The batch against the code's.</param>
public sealed record TwoDemands(ContractDemand Contract, DemandJudged ByContract, DemandJudged ByCode) : CaseReason;

/// <summary>No demand of the code is known; the verdict follows the contract's alone.</summary>
/// <param name="Contract">The contract's demand.</param>
/// <param name="Code">What the code answers.</param>
public sealed record OnlyContractDemands(ContractDemand Contract, Answer Code) : CaseReason;

/// <summary>What the code demands is open; it is judged by the least that it demands in any event.</summary>
/// <param name="Demand">The least of the demands possible.</param>
public sealed record LeastOfCode(Required Demand) : CaseReason;

/// <summary>Each retention that is asked for, where it is not the code's alone, or no depth is judged beside it: of those of one zone the verdict follows the greatest, and each zone has to hold its own.</summary>
/// <param name="Each">The assays against each, one or more.</param>
public sealed record RetentionsJudged(IReadOnlyList<RetentionJudged> Each) : CaseReason
{
    /// <summary>In how many zones they are asked for.</summary>
    public ZonesAskedFor Zones { get; init; }
}

/// <summary>In how many zones retentions are asked for.</summary>
public enum ZonesAskedFor
{
    /// <summary>In one, or held against the same assays.</summary>
    One,

    /// <summary>In more than one.</summary>
    Several,

    /// <summary>It is not known of each in which.</summary>
    NotKnown,
}

/// <summary>Nothing is judged against a retention of the code's own: no figure of it is known.</summary>
public sealed record RetentionOfCodeNotKnown : CaseReason;

/// <summary>Not every assay says which zone was cut: they are taken to be of the one in which the retention is required.</summary>
/// <param name="Zone">The zone, as the rulebook names it; null where it is not known.</param>
public sealed record ZoneTakenForGranted(string? Zone) : CaseReason;

/// <summary>Nothing is judged against the retention of the contract's class: no figure of it is known.</summary>
/// <param name="Class">Name of the class.</param>
public sealed record RetentionOfClassNotKnown(string Class) : CaseReason;

/// <summary>Nothing is judged against the class that the contract names.</summary>
/// <param name="Class">The class, and why.</param>
public sealed record ContractNotJudged(ContractClass Class) : CaseReason;

/// <summary>Judged by a class that the contract names for a milder use than that of the component: what the component's own use asks for is not judged.</summary>
/// <param name="Of">The class, what it is for, and where the component belongs.</param>
public sealed record UseNotJudged(UseClassesDiffer Of) : CaseReason;

/// <summary>No piece was judged: there is no depth to judge it by, though the batch's retention was.</summary>
public sealed record DepthNotJudged : CaseReason;

/// <summary>Neither pieces nor batch were judged: there is no demand to judge them by.</summary>
public sealed record NothingJudged : CaseReason;
