using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>A paragraph to paste into a specification.</summary>
public static class SpecificationClause
{
    private static RequirementWords Words => RequirementWords.Current;

    /// <summary>What must stand below every clause.</summary>
    public static string Caution => Words.Say(new CodeGoverns());

    /// <summary>What stands in place of a clause where the contract's class is for another use than the piece's.</summary>
    public static string HeldUpByContract => Said("requirements.clause.held-up");

    /// <summary>What stands in place of a clause where the law of the place forbids the treatment.</summary>
    public static string HeldUpByLaw(Preservative preservative)
    {
        ArgumentNullException.ThrowIfNull(preservative);
        return Said("requirements.clause.held-up-by-law", ("preservative", preservative.Name));
    }

    /// <summary>The clause for a requirement: what is to be supplied, how treated, how shown.</summary>
    /// <param name="answer">What the code demands.</param>
    /// <param name="contract">What becomes of the class that the contract names; null where none is named. One that gives no demand here is named as not judged.</param>
    public static string Write(Required answer, ContractClass? contract = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var (requirement, trace) = (answer.Requirement, answer.Trace);
        return string.Concat(
            (IEnumerable<string>)
                [
                    Piece(trace.Enquiry),
                    UseAndLife(trace),
                    Treatment(requirement, trace, contract),
                    Said(
                        "requirements.clause.zone",
                        (
                            "zone",
                            ContractDocument.Zone(requirement.Zone?.Name, ContractDocument.Of(contract, answer))
                                ?? Said("requirements.clause.to-be-stated")
                        )
                    ),
                    Beside(contract, requirement.PenetrationName),
                    Said("requirements.clause.retention", ("retention", Retention(requirement))),
                    Against(trace.Enquiry),
                    Said("requirements.clause.moisture", ("moisture", Moisture(requirement))),
                    trace.Enquiry.IsIncised == true ? Said("requirements.clause.incised") : "",
                    Said("requirements.clause.cut-ends"),
                    IsInGround(trace) ? Said("requirements.clause.cut-ends-in-ground") : "",
                    Said("requirements.clause.certificate"),
                    .. Words.Answers.Open(requirement).Select(open => Said("requirements.clause.open", ("open", open))),
                    contract is ContractDemand ? Standing(trace, contract) : Standing(trace, requirement),
                    Caution,
                ]
        );
    }

    /// <summary>The clause where no treatment is required: what is to be supplied, and what would change that.</summary>
    /// <param name="answer">What the rulebook says.</param>
    /// <param name="insects">Insects that nobody has ruled out; may be empty.</param>
    /// <param name="contract">As for a requirement: what the contract orders all the same.</param>
    public static string Write(NotNeeded answer, IReadOnlyList<Insect> insects, ContractClass? contract = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var trace = answer.Trace.WithoutTreatment;
        return string.Concat(
            (IEnumerable<string>)
                [
                    Piece(trace.Enquiry),
                    UseAndLife(trace),
                    .. contract is ContractDemand ordered
                        ? OrderedAllTheSame(ordered, trace)
                        : [.. NotOrdered(trace, insects), NotJudged(contract)],
                    Standing(trace, contract),
                    Caution,
                ]
        );
    }

    private static IEnumerable<string> NotOrdered(Trace trace, IReadOnlyList<Insect> insects) =>
        [
            Said("requirements.clause.not-needed", ("rulebook", trace.RulebookTitle)),
            insects.Count > 0 ? Said("requirements.clause.unless", ("insects", Words.Answers.Names(insects))) : "",
            Said("requirements.clause.keep-dry"),
        ];

    // The contract orders what the code does not ask for: the order is the contract's, in every part.
    private static IEnumerable<string> OrderedAllTheSame(ContractDemand contract, Trace trace)
    {
        var requirement = contract.Answer.Requirement;
        return
        [
            ByContract(contract, trace.Enquiry),
            Said("requirements.clause.none-by-code", ("rulebook", trace.RulebookTitle)),
            Said(
                "requirements.clause.zone",
                ("zone", requirement.Zone?.Name ?? Said("requirements.clause.to-be-agreed"))
            ),
            Said(
                "requirements.clause.retention",
                ("retention", Retention(requirement, "requirements.clause.to-be-agreed"))
            ),
            Said(
                "requirements.clause.moisture",
                ("moisture", Moisture(requirement, "requirements.clause.to-be-agreed"))
            ),
            Said("requirements.clause.cut-ends"),
            IsInGround(trace) ? Said("requirements.clause.cut-ends-in-ground") : "",
            Said("requirements.clause.certificate"),
        ];
    }

    // A demand of the contract beside the code's that does not decide alone.
    private static string Beside(ContractClass? contract, string codesName) =>
        contract switch
        {
            ContractDemand { Stricter: StricterDemand.Contract } => "",
            ContractDemand demand => Said(
                "requirements.clause.contract",
                ("contract", Words.Answers.Say(demand, codesName))
            ),
            _ => NotJudged(contract),
        };

    private static string NotJudged(ContractClass? contract) =>
        contract is null ? "" : Said("requirements.clause.contract-not-judged", ("class", contract.Name));

    private static string Against(Enquiry enquiry) =>
        enquiry.Insects.Attacking is { Count: > 0 } there
            ? Said(
                "requirements.clause.insects",
                ("insects", Wording.Current.Joined("depths.and", there.Select(insect => insect.Name)))
            )
            : "";

    // By the kind's own name, whatever it was asked by.
    private static string With(Enquiry enquiry) =>
        enquiry.PreservativeKind is { } kind
            ? Said("requirements.clause.treatment-with", ("preservative", kind.Name))
            : Said("requirements.clause.preservative-treatment");

    private static string ByContract(ContractDemand contract, Enquiry enquiry) =>
        Said(
            "requirements.clause.by-contract",
            ("treatment", Wording.Capital(With(enquiry))),
            ("class", contract.Name),
            ("rulebook", contract.Answer.Trace.RulebookTitle),
            ("standing", Wording.Current.Say(contract.Answer.Trace.PenetrationStanding)),
            ("depth", Words.Depths.Say(contract.Penetration))
        );

    // The depth and the zone are those of one class: that which decides.
    private static string Treatment(Requirement requirement, Trace trace, ContractClass? contract)
    {
        (string, string) rulebook = ("rulebook", trace.RulebookTitle),
            penetration = ("penetration", Penetration(requirement));
        if (contract is ContractDemand { Stricter: StricterDemand.Contract } decides)
            return ByContract(decides, trace.Enquiry)
                + (
                    requirement.IsRecommended
                        ? Said("requirements.clause.more-than-recommended", rulebook, penetration)
                        : Said("requirements.clause.more-than-code", rulebook, penetration)
                );
        return requirement.IsRecommended
            ? Said("requirements.clause.recommended", rulebook, penetration, ("treatment", With(trace.Enquiry)))
            : Said(
                "requirements.clause.treatment",
                ("treatment", Wording.Capital(With(trace.Enquiry))),
                rulebook,
                penetration
            );
    }

    // Without a demand of the contract beside it, each figure of the code has its own standing.
    private static string Standing(Trace trace, Requirement code)
    {
        (string Part, Standing? Standing)[] parts =
        [
            (Words.Rows.Say(Subject.Penetration), trace.PenetrationStanding),
            (Said("answers.sheet.zone"), trace.ZoneStanding),
            (
                Words.Rows.Say(Subject.Retention),
                code.RetentionOpen is null ? trace.StandingOf(Subject.Retention) : null
            ),
        ];
        var known = parts.Where(part => part.Standing is not null).ToList();
        return known.All(part => part.Standing == trace.WeakestStanding)
            ? Standing(trace, contract: null)
            : Said(
                "requirements.clause.standing-by-part",
                ("standing", Wording.Current.Say(trace.WeakestStanding)),
                (
                    "parts",
                    string.Join(
                        ", ",
                        known.Select(part =>
                            Said(
                                "requirements.clause.standing-of-part",
                                ("part", part.Part),
                                ("standing", Wording.Current.Say(part.Standing!.Value))
                            )
                        )
                    )
                )
            );
    }

    private static string Standing(Trace trace, ContractClass? contract) =>
        Said(
            "requirements.clause.standing",
            (
                "standing",
                Wording.Current.Say(
                    contract is ContractDemand demand
                        ? Provenance.Weakest([
                            trace.WeakestStanding,
                            demand.Answer.Trace.PenetrationStanding,
                            demand.Answer.Trace.ZoneStanding ?? demand.Answer.Trace.PenetrationStanding,
                        ])
                        : trace.WeakestStanding
                )
            )
        );

    private static string UseAndLife(Trace trace) =>
        Said("requirements.clause.use", ("use", Wording.Capital(Use(trace))), ("life", Life(trace)));

    // Where that is not known, the ground is ruled out by the use class alone.
    private static bool IsInGround(Trace trace) =>
        trace.AsAnswered.TouchesGround ?? (trace.UseClasses.Count == 0 || trace.UseClasses.Contains(UseClass.Four));

    private static string Piece(Enquiry enquiry) =>
        Said(
            "requirements.clause.piece",
            (
                "component",
                Wording.Capital(
                    enquiry.CalledAs?.Name ?? enquiry.Component?.Name ?? Said("requirements.clause.no-component")
                )
            ),
            ("size", enquiry.Section?.Label ?? Said("requirements.clause.no-size")),
            ("form", enquiry.FormOrFromSection is { } form ? Words.Say(form) : Said("requirements.clause.no-form")),
            (
                "species",
                enquiry.Species is { } wood
                    ? Said(
                        "requirements.clause.species",
                        ("species", wood.Name),
                        ("botanical", string.Join(", ", wood.BotanicalNames))
                    )
                    : Said("requirements.clause.no-species")
            )
        );

    private static string Penetration(Requirement requirement)
    {
        var depth = Words.Depths.Say(requirement.Penetration);
        return requirement.Penetration is NoDepth || requirement.PenetrationName == depth
            ? depth
            : Said("requirements.clause.named-penetration", ("name", requirement.PenetrationName), ("depth", depth));
    }

    private static string Retention(Requirement requirement, string unknown = "requirements.clause.to-be-stated") =>
        requirement switch
        {
            { RequiredRetention: { } amount } => Said("requirements.clause.amount", ("amount", amount.Label)),
            { Retention.Factor: 1 } => Said("requirements.clause.once"),
            { Retention: { } rule } => Said("requirements.clause.multiple", ("factor", Figures.Digits(rule.Factor))),
            _ => Said(unknown),
        };

    private static string Moisture(Requirement requirement, string unknown = "requirements.clause.to-be-stated") =>
        requirement.MoistureMaxPercent is { } moisture
            ? Said("requirements.clause.at-most", ("percent", Figures.Digits(moisture, 1)))
            : Said(unknown);

    private static string Use(Trace trace) =>
        Decided(trace, Subject.UseClass) ?? Said("requirements.clause.no-use-class");

    private static string Life(Trace trace) =>
        Decided(trace, Subject.Life) is { } life
            ? Said("requirements.clause.life", ("life", life))
            : Said("requirements.clause.no-life");

    private static string? Decided(Trace trace, Subject subject) => Words.Answers.Decided(trace.Step(subject)?.Finding);
}
