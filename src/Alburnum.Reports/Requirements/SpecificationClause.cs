using System.Globalization;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>A paragraph to paste into a specification.</summary>
public static class SpecificationClause
{
    /// <summary>What must stand below every clause.</summary>
    public static string Caution => RequirementWords.Say(new CodeGoverns());

    /// <summary>The clause for a requirement: what is to be supplied, how treated, how shown.</summary>
    public static string Write(Required answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var (requirement, trace) = (answer.Requirement, answer.Trace);
        return string.Concat(
            (IEnumerable<string>)
                [
                    Piece(trace.Enquiry),
                    Say("requirements.clause.use", ("use", Capital(Use(trace))), ("life", Life(trace))),
                    Say(
                        "requirements.clause.treatment",
                        ("rulebook", trace.RulebookTitle),
                        ("penetration", Penetration(requirement))
                    ),
                    Say(
                        "requirements.clause.zone",
                        ("zone", requirement.Zone?.InWords ?? Say("requirements.clause.to-be-stated"))
                    ),
                    Say("requirements.clause.retention", ("retention", Retention(requirement))),
                    Say("requirements.clause.moisture", ("moisture", Moisture(requirement))),
                    trace.Enquiry.IsIncised == true ? Say("requirements.clause.incised") : "",
                    Say("requirements.clause.cut-ends"),
                    Say("requirements.clause.certificate"),
                    .. requirement.Open.Select(open => Say("requirements.clause.open", ("open", open))),
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
            ("component", Capital(enquiry.Component?.Name ?? Say("requirements.clause.no-component"))),
            ("size", enquiry.Section?.Label ?? Say("requirements.clause.no-size")),
            (
                "form",
                enquiry.FormOrFromSection is { } form ? RequirementWords.Say(form) : Say("requirements.clause.no-form")
            ),
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

    private static string Penetration(Requirement requirement) =>
        requirement.Penetration is NoDepth || requirement.PenetrationName == requirement.Penetration.InWords
            ? requirement.Penetration.InWords
            : Say(
                "requirements.clause.named-penetration",
                ("name", requirement.PenetrationName),
                ("depth", requirement.Penetration.InWords)
            );

    private static string Retention(Requirement requirement) =>
        requirement switch
        {
            { RequiredRetention: { } amount } => Say("requirements.clause.amount", ("amount", amount.Label)),
            { Retention: { } rule } => Say(
                "requirements.clause.multiple",
                ("factor", rule.Factor.ToString("0.##", CultureInfo.InvariantCulture))
            ),
            _ => Say("requirements.clause.to-be-stated"),
        };

    private static string Moisture(Requirement requirement) =>
        requirement.MoistureMaxPercent is { } moisture
            ? Say("requirements.clause.at-most", ("percent", moisture.ToString("0.#", CultureInfo.InvariantCulture)))
            : Say("requirements.clause.to-be-stated");

    private static string Use(Trace trace) =>
        Decided(trace, Subject.UseClass) ?? Say("requirements.clause.no-use-class");

    private static string Life(Trace trace) =>
        Decided(trace, Subject.Life) is { } life
            ? Say("requirements.clause.life", ("life", life))
            : Say("requirements.clause.no-life");

    private static string? Decided(Trace trace, Subject subject) =>
        trace.Step(subject)?.Finding switch
        {
            Given given => given.InWords,
            Settled settled => settled.Demand.InWords,
            _ => null,
        };

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
