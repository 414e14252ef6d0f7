using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>A paragraph to paste into a specification.</summary>
public static class SpecificationClause
{
    private static RequirementWords Words => RequirementWords.English;

    /// <summary>What must stand below every clause.</summary>
    public static string Caution => Words.Say(new CodeGoverns());

    /// <summary>The clause for a requirement: what is to be supplied, how treated, how shown.</summary>
    public static string Write(Required answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var (requirement, trace) = (answer.Requirement, answer.Trace);
        return string.Concat(
            (IEnumerable<string>)
                [
                    Piece(trace.Enquiry),
                    Say("requirements.clause.use", ("use", Wording.Capital(Use(trace))), ("life", Life(trace))),
                    Say(
                        "requirements.clause.treatment",
                        ("rulebook", trace.RulebookTitle),
                        ("penetration", Penetration(requirement))
                    ),
                    Say(
                        "requirements.clause.zone",
                        ("zone", requirement.Zone?.Name ?? Say("requirements.clause.to-be-stated"))
                    ),
                    Say("requirements.clause.retention", ("retention", Retention(requirement))),
                    Say("requirements.clause.moisture", ("moisture", Moisture(requirement))),
                    trace.Enquiry.IsIncised == true ? Say("requirements.clause.incised") : "",
                    Say("requirements.clause.cut-ends"),
                    Say("requirements.clause.certificate"),
                    .. Words.Answers.Open(requirement).Select(open => Say("requirements.clause.open", ("open", open))),
                    Say("requirements.clause.standing", ("standing", trace.WeakestStanding.InWords())),
                    Caution,
                ]
        );
    }

    private static string Say(string key, params ReadOnlySpan<(string Name, string Value)> values) =>
        Wording.English.Say(key, values);

    private static string Piece(Enquiry enquiry) =>
        Say(
            "requirements.clause.piece",
            ("component", Wording.Capital(enquiry.Component?.Name ?? Say("requirements.clause.no-component"))),
            ("size", enquiry.Section?.Label ?? Say("requirements.clause.no-size")),
            ("form", enquiry.FormOrFromSection is { } form ? Words.Say(form) : Say("requirements.clause.no-form")),
            (
                "species",
                enquiry.Species is { } wood
                    ? Say(
                        "requirements.clause.species",
                        ("species", wood.Name),
                        ("botanical", string.Join(", ", wood.BotanicalNames))
                    )
                    : Say("requirements.clause.no-species")
            )
        );

    private static string Penetration(Requirement requirement)
    {
        var depth = Words.Depths.Say(requirement.Penetration);
        return requirement.Penetration is NoDepth || requirement.PenetrationName == depth
            ? depth
            : Say("requirements.clause.named-penetration", ("name", requirement.PenetrationName), ("depth", depth));
    }

    private static string Retention(Requirement requirement) =>
        requirement switch
        {
            { RequiredRetention: { } amount } => Say("requirements.clause.amount", ("amount", amount.Label)),
            { Retention: { } rule } => Say("requirements.clause.multiple", ("factor", Figures.Digits(rule.Factor))),
            _ => Say("requirements.clause.to-be-stated"),
        };

    private static string Moisture(Requirement requirement) =>
        requirement.MoistureMaxPercent is { } moisture
            ? Say("requirements.clause.at-most", ("percent", Figures.Digits(moisture, 1)))
            : Say("requirements.clause.to-be-stated");

    private static string Use(Trace trace) =>
        Decided(trace, Subject.UseClass) ?? Say("requirements.clause.no-use-class");

    private static string Life(Trace trace) =>
        Decided(trace, Subject.Life) is { } life
            ? Say("requirements.clause.life", ("life", life))
            : Say("requirements.clause.no-life");

    private static string? Decided(Trace trace, Subject subject) => Words.Answers.Decided(trace.Step(subject)?.Finding);
}
