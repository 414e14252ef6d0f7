using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Requirements;

/// <summary>Something that a reader of a requirement should know beside it.</summary>
public abstract record RequirementRemark
{
    private protected RequirementRemark() { }
}

/// <summary>Two facts of the enquiry do not go together.</summary>
/// <param name="Discrepancy">Which, and how.</param>
public sealed record FactsAtOdds(Discrepancy Discrepancy) : RequirementRemark;

/// <summary>Nobody said whether heartwood is exposed: where routes were sought, it was taken to be.</summary>
public sealed record HeartwoodTakenAsExposed : RequirementRemark;

/// <summary>The catalogue has a note on the timber.</summary>
/// <param name="Species">The timber with its note.</param>
public sealed record NoteOnSpecies(Species Species) : RequirementRemark;

/// <summary>How long untreated heartwood of the timber's durability class lasted in the ground; of a range, that of its worse end.</summary>
/// <param name="Species">The timber. Its durability is known.</param>
/// <param name="Trial">The trial's row.</param>
public sealed record LastedInGround(Species Species, YearsInGround Trial) : RequirementRemark
{
    /// <summary>True where the timber has a range of classes, and the trial's is the worse end of it.</summary>
    public bool IsOfWorseEnd => Species.Durability is { Value: var range } && range.Low < range.High;

    /// <summary>The weakest of the trial, of the timber's class, and of the choice of an end.</summary>
    public Standing Standing =>
        Provenance.Weakest([
            Trial.Provenance.Standing,
            Species.Durability?.Provenance.Standing ?? Standing.FromMemory,
            IsOfWorseEnd ? Standing.WorkedOut : Standing.Published,
        ]);
}

/// <summary>What scales other than EN 350's say of the timber.</summary>
/// <param name="Species">The timber.</param>
/// <param name="Scales">What each scale says. Never empty.</param>
public sealed record OnOtherScales(Species Species, IReadOnlyList<OtherScale> Scales) : RequirementRemark;

/// <summary>What "usually reached" rests on, where routes are given with it.</summary>
/// <param name="Sources">Where the rows used come from. Never empty.</param>
public sealed record OrientationOnReach(IReadOnlyList<Provenance> Sources) : RequirementRemark;

/// <summary>What readers of this use class get wrong.</summary>
/// <param name="Trap">The trap.</param>
public sealed record TrapOfUseClass(UseClassTrap Trap) : RequirementRemark;

/// <summary>What other systems call the situation, roughly.</summary>
/// <param name="Match">The rough match.</param>
public sealed record ElsewhereCalled(Equivalence Match) : RequirementRemark;

/// <summary>What the preservative that was named cannot do.</summary>
/// <param name="Preservative">The preservative, with its limits.</param>
public sealed record LimitsOfPreservative(Preservative Preservative) : RequirementRemark;

/// <summary>Nothing is predicted: it does not go in as a thin solution in water.</summary>
/// <param name="Preservative">The preservative; its carrier is known.</param>
public sealed record OtherCarrier(Preservative Preservative) : RequirementRemark;

/// <summary>What speaks against the preservative that was named, or restricts it.</summary>
/// <param name="Finding">The finding.</param>
public sealed record OfPreservative(PreservativeFinding Finding) : RequirementRemark;

/// <summary>The class that was stated is a use class, by which the rulebook itself is asked.</summary>
/// <param name="Stated">The class as it was stated.</param>
/// <param name="UseClasses">The use class, or both parts of class 3.</param>
/// <param name="Rulebook">The rulebook.</param>
/// <param name="IsAnswered">Whether the answer is for that class; otherwise what is demanded in it stands with the contract's class.</param>
public sealed record UseClassOfCode(
    string Stated,
    IReadOnlyList<UseClass> UseClasses,
    Rulebook Rulebook,
    bool IsAnswered
) : RequirementRemark;

/// <summary>The class that was stated is none of the rulebook's own: what it is where it comes from.</summary>
/// <param name="Mark">The mark in one system.</param>
/// <param name="Rulebook">The rulebook that was asked.</param>
public sealed record MarkOfOtherSystem(TreatmentMark Mark, Rulebook Rulebook) : RequirementRemark;

/// <summary>The class that was stated is none of the rulebook's own, nor of any system known here.</summary>
/// <param name="Stated">The class as it was stated.</param>
/// <param name="Near">Marks that may have been meant, nearest first.</param>
/// <param name="Rulebook">The rulebook that was asked.</param>
public sealed record MarkNotKnown(string Stated, IReadOnlyList<string> Near, Rulebook Rulebook) : RequirementRemark;

/// <summary>In sea water marine borers attack, of which durability against fungi says nothing.</summary>
public sealed record MarineBorersAttack : RequirementRemark;

/// <summary>The code in force, the label and the approvals govern.</summary>
public sealed record CodeGoverns : RequirementRemark;

/// <summary>An insect is stated that may attack the timber, and no row that holds asks anything against it.</summary>
/// <param name="Insect">The insect.</param>
/// <param name="Rulebook">The rulebook.</param>
public sealed record InsectNotAnswered(Insect Insect, Rulebook Rulebook) : RequirementRemark;

/// <summary>An insect is stated that does not attack such timber.</summary>
/// <param name="Insect">The insect.</param>
/// <param name="Species">The timber.</param>
public sealed record InsectNoThreat(Insect Insect, Species Species) : RequirementRemark;

/// <summary>The preservative diffuses: how deep it gets is not predicted as for those that are pressed in.</summary>
/// <param name="Preservative">The preservative.</param>
public sealed record SpreadsByDiffusion(Preservative Preservative) : RequirementRemark;
