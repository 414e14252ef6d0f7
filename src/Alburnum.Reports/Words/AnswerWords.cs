using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What a rulebook answers, in words.</summary>
/// <param name="wording">The language.</param>
/// <param name="rows">How rows are said.</param>
public sealed class AnswerWords(Wording wording, RowWords rows)
{
    /// <summary>"required", "not permitted" or "not covered".</summary>
    public string Say(AnswerOutcome outcome) =>
        outcome switch
        {
            AnswerOutcome.Required => wording.Say("answers.required"),
            AnswerOutcome.NotPermitted => wording.Say("answers.not-permitted"),
            AnswerOutcome.NotCovered => wording.Say("answers.not-covered"),
            _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Not an outcome."),
        };

    /// <summary>Why there is no demand; null where there is one, or no answer at all.</summary>
    public string? Reason(Answer? answer) =>
        answer switch
        {
            NotPermitted no => no.Reason,
            NotCovered open => Say(open.Reason),
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
            NoRowHolds { NearestFailOn.Count: 0 } => wording.Say("answers.no-row"),
            NoRowHolds none => wording.Say("answers.no-row-near", ("fields", rows.Say(none.NearestFailOn))),
            DependsOn unknown => wording.Say("answers.depends", ("fields", rows.Say(unknown.Fields))),
            RowsContradict clash => wording.Say(
                "answers.contradiction",
                ("rows", string.Join(", ", clash.Rows.Select(row => wording.Say("answers.quoted", ("row", row.Key)))))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason."),
        };

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
            _ => [wording.Say("answers.retention-no-row")],
        };
    }

    /// <summary>What goes with a demand.</summary>
    public string Say(RequirementCondition condition) =>
        condition switch
        {
            OtherUseClass other => wording.Say(
                "answers.other-use-class",
                ("code", rows.Say(other.Code)),
                ("asked", rows.Say([other.Asked]))
            ),
            RowAdvises advice => rows.Say(advice.Row.Demand),
            TooWet wet => wording.Say(
                "answers.too-wet",
                ("moisture", Figures.Digits(wet.MoisturePercent, 1)),
                ("most", Figures.Digits(wet.MaxPercent, 1))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Not a condition."),
        };

    /// <summary>A fact of the species that the answer leans on.</summary>
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
            { Finding: Given given } => GivenLead + Say(given),
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
            Settled settled => rows.Say(settled.Demand),
            _ => null,
        };

    /// <summary>The demand in a few words, or "not permitted", or "not covered".</summary>
    public string Short(Answer answer) =>
        answer switch
        {
            Required { Requirement: var requirement } => string.Join(", ", Parts(requirement)),
            { Outcome: var outcome } => Say(outcome),
            _ => throw new ArgumentNullException(nameof(answer)),
        };

    private IEnumerable<string> Parts(Requirement requirement)
    {
        yield return requirement.PenetrationName;
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
            GivenUseClass use => rows.Say(use.Classes),
            GivenLife life => rows.Say(life.Life),
            _ => throw new ArgumentOutOfRangeException(nameof(given), given, "Not given."),
        };

    private static string Years(IEnumerable<int> years) => string.Join(", ", years.Select(Figures.Whole));
}
