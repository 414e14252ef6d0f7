using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Requirements;

/// <summary>Something that a reader of a requirement should know beside it.</summary>
public abstract record RequirementRemark
{
    private protected RequirementRemark() { }
}

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

/// <summary>The code in force, the label and the approvals govern.</summary>
public sealed record CodeGoverns : RequirementRemark;
