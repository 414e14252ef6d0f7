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
                    Say("use", ("use", Capital(Use(trace))), ("life", Life(trace))),
                    Say("treatment", ("rulebook", trace.RulebookTitle), ("penetration", Penetration(requirement))),
                    Say("zone", ("zone", requirement.Zone?.InWords ?? Say("to-be-stated"))),
                    Say("retention", ("retention", Retention(requirement))),
                    Say("moisture", ("moisture", Moisture(requirement))),
                    trace.Enquiry.IsIncised == true ? Say("incised") : "",
                    Say("cut-ends"),
                    Say("certificate"),
                    .. requirement.Open.Select(open => Say("open", ("open", open))),
                    Say("standing", ("standing", trace.WeakestStanding.InWords())),
                    Caution,
                ]
        );
    }

    private static string Say(string key, params ReadOnlySpan<(string Name, string Value)> values) =>
        Wording.English.Say("requirements.clause." + key, values);

    private static string Piece(Enquiry enquiry) =>
        Say(
            "piece",
            ("component", Capital(enquiry.Component?.Name ?? Say("no-component"))),
            ("size", enquiry.Section?.Label ?? Say("no-size")),
            ("form", enquiry.FormOrFromSection is { } form ? RequirementWords.Say(form) : Say("no-form")),
            (
                "species",
                enquiry.Species is { } wood
                    ? Say("species", ("species", wood.Name), ("botanical", string.Join(", ", wood.BotanicalNames)))
                    : Say("no-species")
            )
        );

    private static string Penetration(Requirement requirement) =>
        requirement.Penetration is NoDepth || requirement.PenetrationName == requirement.Penetration.InWords
            ? requirement.Penetration.InWords
            : Say(
                "named-penetration",
                ("name", requirement.PenetrationName),
                ("depth", requirement.Penetration.InWords)
            );

    private static string Retention(Requirement requirement) =>
        requirement switch
        {
            { RequiredRetention: { } amount } => Say("amount", ("amount", amount.Label)),
            { Retention: { } rule } => Say(
                "multiple",
                ("factor", rule.Factor.ToString("0.##", CultureInfo.InvariantCulture))
            ),
            _ => Say("to-be-stated"),
        };

    private static string Moisture(Requirement requirement) =>
        requirement.MoistureMaxPercent is { } moisture
            ? Say("at-most", ("percent", moisture.ToString("0.#", CultureInfo.InvariantCulture)))
            : Say("to-be-stated");

    private static string Use(Trace trace) => Decided(trace, Subject.UseClass) ?? Say("no-use-class");

    private static string Life(Trace trace) =>
        Decided(trace, Subject.Life) is { } life ? Say("life", ("life", life)) : Say("no-life");

    private static string? Decided(Trace trace, Subject subject) =>
        trace.Step(subject)?.Finding switch
        {
            Given given => given.InWords,
            Settled settled => settled.Demand.InWords,
            _ => null,
        };

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
