using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What a rulebook answers, in words.</summary>
/// <param name="wording">The language.</param>
/// <param name="rows">How rows are said.</param>
/// <param name="exposure">How exposures are said.</param>
public sealed class AnswerWords(Wording wording, RowWords rows, ExposureWords exposure)
{
    /// <summary>What a piece is for: the name that was asked for, with the component of codes where that is another; null where neither is known.</summary>
    public string? Component(Enquiry enquiry)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        return Component(enquiry.CalledAs?.Name, enquiry.Component?.Name);
    }

    /// <summary>The same of the two names.</summary>
    /// <param name="calledAs">The name that was asked for.</param>
    /// <param name="component">The component of codes.</param>
    internal string? Component(string? calledAs, string? component) =>
        calledAs is { } called && component is { } known && called != known
            ? wording.Say("answers.called", ("name", called), ("component", known))
            : component ?? calledAs;

    /// <summary>"required", "recommended, not required", "not needed", "not permitted" or "not covered".</summary>
    public string Say(AnswerOutcome outcome) =>
        outcome switch
        {
            AnswerOutcome.Required => wording.Say("answers.required"),
            AnswerOutcome.Recommended => wording.Say("answers.recommended"),
            AnswerOutcome.NotNeeded => wording.Say("answers.not-needed"),
            AnswerOutcome.NotPermitted => wording.Say("answers.not-permitted"),
            AnswerOutcome.Open => wording.Say("answers.open"),
            AnswerOutcome.NotCovered => wording.Say("answers.not-covered"),
            _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Not an outcome."),
        };

    /// <summary>The same, with what would change it where nobody has ruled insects out.</summary>
    /// <param name="outcome">Which kind of answer it is.</param>
    /// <param name="isUnlessInsects">Whether none is needed only where no insects live that attack the timber.</param>
    public string Say(AnswerOutcome outcome, bool isUnlessInsects) =>
        outcome == AnswerOutcome.NotNeeded && isUnlessInsects ? wording.Say("answers.not-needed-unless") : Say(outcome);

    /// <summary>What is demanded, with its own standing behind it; without, where that is not known.</summary>
    public string WithStanding(string what, Standing? standing) =>
        standing is { } known
            ? wording.Say("answers.sheet.with-standing", ("what", what), ("standing", wording.Say(known)))
            : what;

    /// <summary>Why there is no demand; null where there is one, or no answer at all.</summary>
    public string? Reason(Answer? answer) =>
        answer switch
        {
            NotNeeded none => none.Reason,
            NotPermitted no => no.Reason,
            NotCovered open => Say(open),
            _ => null,
        };

    /// <summary>Why there is no answer, and what each would be in the cases that are open.</summary>
    public string Say(NotCovered open)
    {
        ArgumentNullException.ThrowIfNull(open);
        return open.Possible.Count == 0
            ? Say(open.Reason)
            : wording.Say(
                "answers.possible",
                ("reason", Say(open.Reason)),
                ("answers", string.Join("; ", open.Possible.Select(Say)))
            );
    }

    private string Say(PossibleAnswer possible) =>
        wording.Say(
            "answers.possible-one",
            ("answer", Short(possible.Answer)),
            (
                "where",
                string.Join(
                    ", ",
                    possible.Where.Select(each =>
                        wording.Say("rows.condition", ("field", rows.Say(each.Field)), ("asked", rows.Say(each)))
                    )
                )
            )
        );

    /// <summary>The code's own name of its demand, or of the demands possible ("NP5 or NP6"); null where none is known.</summary>
    public string? Demanded(Answer code) =>
        code switch
        {
            Required { Requirement.PenetrationName: var name } => name,
            NotCovered { Least: not null, Possible: var possible } => wording.Joined(
                "rows.either",
                possible
                    .Select(each => (each.Answer as Required)?.Requirement.PenetrationName)
                    .OfType<string>()
                    .Distinct(StringComparer.Ordinal)
            ),
            _ => null,
        };

    /// <summary>Why a rulebook has no answer.</summary>
    public string Say(NotCoveredReason reason) =>
        reason switch
        {
            LifeNotKnown { NextYears: { } next } life => wording.Say(
                "answers.life-not-known-next",
                ("known", Years(life.KnownYears)),
                ("asked", Figures.Whole(life.AskedYears)),
                ("next", Figures.Whole(next))
            ),
            LifeNotKnown life => wording.Say(
                "answers.life-not-known",
                ("known", Years(life.KnownYears)),
                ("asked", Figures.Whole(life.AskedYears))
            ),
            CellNotRead cell => wording.Say("answers.cell-not-read", ("note", cell.Note)),
            TimberNotCovered timber => wording.Say("answers.timber-not-covered", ("covers", timber.Covers)),
            NoRowHolds { NearestFailOn.Count: 0 } => wording.Say("answers.no-row"),
            NoRowHolds none => wording.Say("answers.no-row-near", ("fields", rows.Say(none.NearestFailOn))),
            InsectsAtWork there => wording.Say("answers.insects-at-work", ("insects", Names(there.Insects))),
            NotOneSpecies { Timber: { LeastTreatable: { } least, Kind: Timber.TimberKind.Mixture } mix } => wording.Say(
                "answers.mixture",
                ("name", mix.Name),
                ("says", mix.Says.TrimEnd('.')),
                ("species", wording.Joined("rows.either", mix.Is.Select(species => species.Name))),
                ("least", least.Name)
            ),
            NotOneSpecies { Timber: { Is.Count: > 1, Kind: Timber.TimberKind.Mixture } mix } => wording.Say(
                "answers.mixture-open",
                ("name", mix.Name),
                ("says", mix.Says.TrimEnd('.')),
                ("species", wording.Joined("rows.either", mix.Is.Select(species => species.Name)))
            ),
            NotOneSpecies { Timber: var timber } => wording.Say(
                "answers.not-one-species",
                ("name", timber.Name),
                ("says", timber.Says.TrimEnd('.'))
            ),
            DependsOn unknown => wording.Say("answers.depends", ("fields", rows.Say(unknown.Fields))),
            ClassNotStated => wording.Say("answers.class-not-stated"),
            RowsContradict clash => wording.Say(
                "answers.contradiction",
                ("rows", string.Join(", ", clash.Rows.Select(row => wording.Say("answers.quoted", ("row", row.Key)))))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason."),
        };

    /// <summary>What becomes of the class that a contract names.</summary>
    /// <param name="contract">The class.</param>
    /// <param name="codesName">The code's name of its own demand; null where it has none.</param>
    /// <param name="code">What the code answers where it has no demand; null where it has one.</param>
    public string Say(ContractClass contract, string? codesName, AnswerOutcome? code = null) =>
        contract switch
        {
            ContractDemand
            {
                OfStandard: { Requirement.Penetration: var depth, Trace.RulebookTitle: var standard }
            } demand => wording.Say(
                "answers.contract.of-standard",
                ("demanded", Demanded(demand, codesName ?? "", code)),
                ("class", demand.Name),
                ("rulebook", standard),
                ("depth", new DepthRuleWords(wording).Say(depth))
            ),
            ContractDemand demand => Demanded(demand, codesName ?? "", code),
            ContractClassNotKnown => wording.Say("answers.contract.not-known", ("class", contract.Name)),
            ContractClassOfSeveral { WrittenOut: { Count: > 0 } ways } several => wording.Say(
                "answers.contract.of-several-written",
                ("several", OfSeveral(several)),
                ("ways", wording.Joined("rows.either", ways))
            ),
            ContractClassOfSeveral several => OfSeveral(several),
            ContractClassNotAnswered { Answer: NotCovered { Reason: NoRowHolds } uncovered } => wording.Say(
                "answers.contract.not-covered",
                ("class", contract.Name),
                ("rulebook", uncovered.Trace.RulebookTitle)
            ),
            ContractClassNotAnswered silent => wording.Say(
                "answers.contract.not-answered",
                ("class", contract.Name),
                ("rulebook", silent.Answer.Trace.RulebookTitle),
                ("reason", Reason(silent.Answer) ?? "")
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(contract), contract, "Not a class of a contract."),
        };

    private string Demanded(ContractDemand demand, string codesName, AnswerOutcome? outcome)
    {
        (string, string) name = ("class", demand.Name),
            code = ("code", codesName),
            depth = ("depth", new DepthRuleWords(wording).Say(demand.Penetration)),
            rulebook = ("rulebook", demand.Answer.Trace.RulebookTitle),
            standing = ("standing", wording.Say(demand.Answer.Trace.PenetrationStanding));
        return demand.Stricter switch
        {
            StricterDemand.Contract => wording.Say("answers.contract.stricter", name, depth, rulebook, standing, code),
            StricterDemand.Code => wording.Say("answers.contract.looser", name, depth, rulebook, standing, code),
            StricterDemand.Neither when demand.IsSameForWantOfHeartwood => wording.Say(
                "answers.contract.same-without-heartwood",
                name,
                depth,
                rulebook,
                standing,
                code
            ),
            StricterDemand.Neither => wording.Say("answers.contract.same", name, depth, rulebook, standing, code),
            StricterDemand.NotComparable => wording.Say(
                "answers.contract.not-comparable",
                name,
                depth,
                rulebook,
                standing,
                code
            ),
            null => wording.Say(
                outcome switch
                {
                    AnswerOutcome.NotNeeded => "answers.contract.alone-asks",
                    AnswerOutcome.NotPermitted => "answers.contract.alone-forbidden",
                    _ => "answers.contract.alone",
                },
                name,
                depth,
                rulebook,
                standing
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(demand), demand, "Not an order."),
        };
    }

    private string OfSeveral(ContractClassOfSeveral several) =>
        wording.Say(
            "answers.contract.of-several",
            ("class", several.Name),
            ("rulebooks", string.Join("; ", several.Rulebooks))
        );

    /// <summary>What the demand leaves open, one sentence each.</summary>
    public IReadOnlyList<string> Open(Requirement requirement)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        return requirement.RetentionOpen switch
        {
            null => [],
            CellNotRead cell => [wording.Say("answers.retention-not-read", ("note", cell.Note))],
            DependsOn unknown => [wording.Say("answers.retention-depends", ("fields", rows.Say(unknown.Fields)))],
            RowsContradict => [wording.Say("answers.retention-contradiction")],
            TimberNotCovered outside => [wording.Say("answers.retention-outside-scope", ("covers", outside.Covers))],
            _ => [wording.Say("answers.retention-no-row")],
        };
    }

    /// <summary>What goes with an answer that is no demand, one sentence each: conditions where none is needed, advice where the cell is not known.</summary>
    public IEnumerable<string> Beside(Answer answer) =>
        answer switch
        {
            NotNeeded { Conditions: var conditions } => conditions.Select(Say),
            NotCovered { Advice: var advice } => advice.Select(Say),
            _ => [],
        };

    /// <summary>The analytical zone where the contract's class gives a demand: that of the demand that decides, named, with the other's beside it.</summary>
    /// <param name="code">The code's zone; null where it is not known.</param>
    /// <param name="contract">The contract's; null likewise.</param>
    /// <param name="name">The contract's class.</param>
    /// <param name="stricter">Which of the two demands asks for more; null where there are not two.</param>
    public string? Zone(string? code, string? contract, string name, StricterDemand? stricter)
    {
        var unknown = wording.Say("answers.zone.not-known");
        (string, string) ofContract = ("zone", contract ?? unknown),
            ofClass = ("class", name),
            ofCode = ("code", code ?? unknown);
        return stricter switch
        {
            StricterDemand.Contract => wording.Say("answers.zone.contract-decides", ofContract, ofClass, ofCode),
            StricterDemand.NotComparable => wording.Say("answers.zone.both", ofContract, ofClass, ofCode),
            null => wording.Say("answers.from-contract", ("what", contract ?? unknown), ofClass),
            _ => code,
        };
    }

    /// <summary>A retention: the amount, or a multiple of the critical value; null where neither is known.</summary>
    public string? Retention(Requirement requirement)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        return requirement switch
        {
            { RequiredRetention: { } amount } => amount.Label,
            { Retention.Factor: var factor } => wording.Say("answers.sheet.factor", ("factor", Figures.Digits(factor))),
            _ => null,
        };
    }

    /// <summary>What goes with a demand.</summary>
    public string Say(RequirementCondition condition) =>
        condition switch
        {
            RowAdvises advice => rows.Say(advice.Row.Demand),
            TooWet wet => wording.Say(
                "answers.too-wet",
                ("moisture", Figures.Digits(wet.MoisturePercent, 1)),
                ("most", Figures.Digits(wet.MaxPercent, 1))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Not a condition."),
        };

    /// <summary>An insect that would make treatment wise.</summary>
    public string Say(Insect insect)
    {
        ArgumentNullException.ThrowIfNull(insect);
        return wording.Say(
            "answers.sheet.insect",
            ("insect", insect.Name),
            ("says", insect.Says),
            ("standing", wording.Say(insect.Provenance.Standing)),
            ("source", insect.Provenance.Citation)
        );
    }

    /// <summary>Some insects by name: "furniture beetle or termites".</summary>
    public string Names(IEnumerable<Insect> insects) =>
        wording.Joined("rows.either", insects.Select(insect => insect.Name));

    /// <summary>A fact outside the rows that the answer leans on.</summary>
    public string Say(FactUsed fact) =>
        fact switch
        {
            SapwoodTreatabilityUsed sapwood => wording.Say(
                "answers.sapwood-treatability",
                ("species", sapwood.Species.Name),
                ("treatability", sapwood.Treatability.Value.Label)
            ),
            HeartwoodTreatabilityUsed heartwood => wording.Say(
                "answers.heartwood-treatability",
                ("species", heartwood.Species.Name),
                ("treatability", heartwood.Treatability.Value.Label)
            ),
            DurabilityUsed heartwood => wording.Say(
                "answers.durability-used",
                ("species", heartwood.Species.Name),
                ("durability", heartwood.Durability.Value.Label)
            ),
            SpeciesGroupUsed member => wording.Say(
                "answers.species-group",
                ("species", member.Species.Name),
                ("group", member.Group.Name)
            ),
            PenetrationClassUsed used => wording.Say("answers.class-used", ("name", used.Name)),
            AnalyticalZoneUsed(var name, var zone) => wording.Say(
                "answers.zone-used",
                ("name", name),
                ("zone", zone.Value.Name)
            ),
            ExposureOfNameUsed { Name: var name } => wording.Say(
                "answers.exposure-of-name",
                ("name", name.Name),
                ("says", exposure.Say(name.Exposure))
            ),
            LifeOfNameUsed(var name, var life) => wording.Say(
                "answers.life-of-name",
                ("name", name.Name),
                ("life", rows.Say(life.Value))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(fact), fact, "Not a fact."),
        };

    /// <summary>What the rows of one subject came to.</summary>
    public string Say(TraceStep step) =>
        step switch
        {
            { Subject: Subject.Advice, Matched.Count: > 0 } => wording.Say(
                "answers.rows-hold",
                ("count", Figures.Whole(step.Matched.Count))
            ),
            { Finding: Settled settled } => rows.Say(settled.Demand),
            { Finding: UseClassOfExposure exposed } => Say(exposed),
            { Finding: UseClassOfContract contract } => Say((Given)contract),
            { Finding: Given given } => GivenLead + Say(given),
            { Finding: UsualLifeOfName usual } => wording.Say(
                "answers.usual-of-name",
                ("life", rows.Say(usual.Life)),
                ("name", usual.Name.Name)
            ),
            { Subject: Subject.Life, Finding: Silent } => wording.Say("answers.ask-life"),
            { Finding: Silent } => wording.Say("answers.silent"),
            { Finding: Contradicted } => wording.Say("answers.contradicted"),
            { Finding: Depends depends } => wording.Say("answers.depends-on", ("fields", rows.Say(depends.Fields))),
            _ => throw new ArgumentOutOfRangeException(nameof(step), step, "Not a finding."),
        };

    /// <summary>What a finding begins with where the enquiry itself gave it.</summary>
    internal string GivenLead => wording.Say("answers.given", ("what", ""));

    /// <summary>What was decided on a subject, by the enquiry or by a row; null where nothing was.</summary>
    internal string? Decided(Finding? finding) =>
        finding switch
        {
            Given given => Say(given),
            UsualLifeOfName usual => rows.Say(usual.Life),
            Settled settled => rows.Say(settled.Demand),
            _ => null,
        };

    /// <summary>The demand in a few words, or "not permitted", or "not covered".</summary>
    public string Short(Answer answer) =>
        answer switch
        {
            Required { Requirement: var requirement } => string.Join(", ", Parts(requirement)),
            NotCovered { Possible: { Count: > 0 } possible } => string.Join("; ", possible.Select(Say)),
            { Outcome: var outcome } => Say(outcome),
            _ => throw new ArgumentNullException(nameof(answer)),
        };

    private IEnumerable<string> Parts(Requirement requirement)
    {
        yield return requirement.IsRecommended
            ? wording.Say("answers.short-recommended", ("penetration", requirement.PenetrationName))
            : requirement.PenetrationName;
        if (requirement.RequiredRetention is { } amount)
            yield return amount.Label;
        else if (requirement.Retention is { } rule)
            yield return wording.Say("answers.short-factor", ("factor", Figures.Digits(rule.Factor)));
        if (requirement.MoistureMaxPercent is { } moisture)
            yield return wording.Say("answers.short-moisture", ("percent", Figures.Digits(moisture, 1)));
    }

    private string Say(Given given) =>
        given switch
        {
            GivenUseClass { Use: var use } => wording.Say("rows.use-class", ("classes", rows.Label(use))),
            UseClassOfExposure { Answer.Classes: var classes } => rows.Say(classes),
            UseClassOfContract contract => wording.Say(
                "answers.of-contract",
                ("use", rows.Say(contract.Demand)),
                ("class", contract.StatedClass)
            ),
            GivenLife life => rows.Say(life.Life),
            _ => throw new ArgumentOutOfRangeException(nameof(given), given, "Not given."),
        };

    // What decided it, or what is still to be asked.
    private string Say(UseClassOfExposure exposed) =>
        exposed.Answer switch
        {
            { NextQuestion: { } next } open => wording.Say(
                "answers.exposed-so-far",
                ("use", rows.Say(open.Classes)),
                ("question", exposure.Say(next))
            ),
            { DecidedBy: { } question } settled => wording.Say(
                "answers.exposed",
                ("use", rows.Say(settled.Classes)),
                ("question", exposure.Say(question))
            ),
            var other => rows.Say(other.Classes),
        };

    private static string Years(IEnumerable<int> years) => string.Join(", ", years.Select(Figures.Whole));
}
