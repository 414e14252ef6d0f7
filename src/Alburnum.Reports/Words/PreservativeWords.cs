using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>Preservatives and the marks of other systems, in words.</summary>
/// <param name="wording">The language.</param>
/// <param name="rows">How use classes are said.</param>
public sealed class PreservativeWords(Wording wording, RowWords rows)
{
    /// <summary>What speaks against a preservative, or goes with it, with its standing.</summary>
    public string Say(PreservativeFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding switch
        {
            OnlyForUpkeep => wording.Say(
                "preservatives.only-for-upkeep",
                ("name", Wording.Capital(finding.Preservative.Name)),
                ("ways", string.Join(", ", finding.Preservative.AppliedBy)),
                ("standing", wording.Say(finding.Preservative.Provenance.Standing)),
                ("source", finding.Preservative.Provenance.Citation)
            ),
            NotForIndoors { Restriction: var indoors } => NotFor(indoors),
            NotForPart { Restriction: var parts } => NotFor(parts),
            LawNotKnown { Rulebook: var code } => wording.Say(
                "preservatives.law-not-known",
                ("name", Wording.Capital(finding.Preservative.Name)),
                ("rulebook", code.FullTitle)
            ),
            RestrictedByLaw { Restriction: var law } => Limit(finding.Preservative, law.Says, law.Provenance),
            _ => wording.Say(
                "preservatives.ruled-out",
                ("why", Against(finding)),
                ("standing", wording.Say(finding.Preservative.Provenance.Standing)),
                ("source", finding.Preservative.Provenance.Citation)
            ),
        };
    }

    /// <summary>That what it reaches is not predicted, because it does not go in with water.</summary>
    /// <param name="preservative">The preservative; its carrier is known.</param>
    public string NotPredicted(Preservative preservative)
    {
        ArgumentNullException.ThrowIfNull(preservative);
        return wording.Say(
            "preservatives.not-predicted",
            ("name", preservative.Name),
            ("carrier", preservative.Carrier ?? "")
        );
    }

    /// <summary>What a mark is in its own system.</summary>
    public string Say(TreatmentMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return mark.UseClass is { } use
            ? wording.Say(
                "preservatives.mark-with-class",
                ("mark", mark.Name),
                ("system", mark.System),
                ("means", mark.Means),
                ("use", rows.Say([use]))
            )
            : wording.Say("preservatives.mark", ("mark", mark.Name), ("system", mark.System), ("means", mark.Means));
    }

    /// <summary>What attacks wood.</summary>
    public string Say(Agent agent) =>
        agent switch
        {
            Agent.Decay => wording.Say("preservatives.decay"),
            Agent.SoftRot => wording.Say("preservatives.soft-rot"),
            Agent.Beetles => wording.Say("preservatives.beetles"),
            Agent.Termites => wording.Say("preservatives.termites"),
            Agent.MarineBorers => wording.Say("preservatives.marine-borers"),
            Agent.Stain => wording.Say("preservatives.stain"),
            _ => throw new ArgumentOutOfRangeException(nameof(agent), agent, "Nothing that attacks wood."),
        };

    private string NotFor(Restriction why) =>
        wording.Say(
            "preservatives.ruled-out",
            ("why", why.Says),
            ("standing", wording.Say(why.Provenance.Standing)),
            ("source", why.Provenance.Citation)
        );

    private string Against(PreservativeFinding finding)
    {
        var name = ("name", Wording.Capital(finding.Preservative.Name));
        return finding switch
        {
            ProtectsAgainstNothing => wording.Say("preservatives.protects-against-nothing", name),
            NoFungicide => wording.Say(
                "preservatives.no-fungicide",
                name,
                ("agents", string.Join(", ", finding.Preservative.ProtectsAgainst.Select(Say)))
            ),
            WashesOut washed => wording.Say("preservatives.washes-out", name, ("use", rows.Say(washed.Classes))),
            BeyondItsUse beyond => wording.Say(
                "preservatives.beyond-its-use",
                name,
                ("use", rows.Say(beyond.Classes)),
                ("meant", rows.Say(beyond.Preservative.UseClasses))
            ),
            NoGuardAgainstSoftRot soft => wording.Say(
                "preservatives.no-guard-against-soft-rot",
                name,
                ("use", rows.Say(soft.Classes))
            ),
            NoGuardAgainstBorers => wording.Say("preservatives.no-guard-against-borers", name),
            StaysOnSurface surface => wording.Say(
                "preservatives.stays-on-surface",
                name,
                ("ways", string.Join(", ", surface.Preservative.AppliedBy))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding, "Not a finding."),
        };
    }

    /// <summary>A sentence on a preservative, with its standing and source.</summary>
    internal string Limit(Preservative preservative, string says, Provenance from) =>
        wording.Say(
            "preservatives.on",
            ("name", Wording.Capital(preservative.Name)),
            ("says", says.TrimEnd('.')),
            ("standing", wording.Say(from.Standing)),
            ("source", from.Citation)
        );
}
