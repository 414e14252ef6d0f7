using System.Text;

namespace Alburnum.Requirements;

/// <summary>A paragraph to paste into a specification.</summary>
public static class SpecificationClause
{
    /// <summary>What must stand below every clause.</summary>
    public const string Caution =
        "Check against the code in force, the preservative's label and its approvals before use; treatment is work for licensed practice.";

    private const string ToBeStated = "to be stated, from the code";

    /// <summary>The clause for a requirement: what is to be supplied, how treated, how shown.</summary>
    public static string Write(Required answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var enquiry = answer.Trace.Enquiry;
        var requirement = answer.Requirement;
        var clause = new StringBuilder();

        var species = enquiry.Species is { } wood
            ? $"{wood.Name} ({string.Join(", ", wood.BotanicalNames)})"
            : "species to be stated";
        var size = enquiry.Section?.Label ?? "size to be stated";
        clause.Append($"{Capital(enquiry.Component?.Name ?? "timber")}, {size}, {Form(enquiry)}, {species}. ");
        clause.Append($"{Capital(Use(answer.Trace))}; {Life(answer.Trace)}. ");
        clause.Append($"Preservative treatment to {answer.Trace.RulebookTitle}: {Penetration(requirement)}. ");
        clause.Append($"Analytical zone: {requirement.Zone?.InWords ?? ToBeStated}. ");
        clause.Append($"Retention in the analytical zone: {Retention(requirement)}. ");
        clause.Append($"Moisture content before treatment: {Moisture(requirement)}. ");
        if (enquiry.IsIncised == true)
            clause.Append("Faces incised before treatment. ");
        clause.Append(
            "Work the timber to its final shape before treatment; treat cut ends, notches and holes made later again, as the preservative's label says, and keep cut ends out of the ground. "
        );
        clause.Append(
            "The certificate names the standard and year, the treater, the date and charge, the batch and number of pieces, the species, the use class, the preservative, the penetration and the retention. "
        );
        foreach (var open in requirement.Open)
            clause.Append($"To be completed: {open} ");
        clause.Append($"Standing of this clause: {answer.Trace.WeakestStanding.InWords()}. ").Append(Caution);
        return clause.ToString();
    }

    private static string Penetration(Requirement requirement) =>
        requirement.Penetration is NoDepth ? requirement.Penetration.InWords
        : requirement.PenetrationName == requirement.Penetration.InWords ? requirement.Penetration.InWords
        : $"penetration {requirement.PenetrationName}, {requirement.Penetration.InWords}";

    private static string Retention(Requirement requirement) =>
        requirement switch
        {
            { RequiredRetention: { } amount } => $"at least {amount.Label}",
            { Retention: { } rule } => FormattableString.Invariant(
                $"at least {rule.Factor:0.##} times the preservative's critical value for the use class"
            ),
            _ => ToBeStated,
        };

    private static string Moisture(Requirement requirement) =>
        requirement.MoistureMaxPercent is { } moisture
            ? FormattableString.Invariant($"at most {moisture:0.#} %")
            : ToBeStated;

    private static string Form(Enquiry enquiry) =>
        enquiry.FormOrFromSection switch
        {
            TimberForm.Sawn => "sawn",
            TimberForm.Round => "round",
            _ => "form to be stated",
        };

    private static string Use(Trace trace) => InWords(trace, Subject.UseClass, "use class to be stated");

    private static string Life(Trace trace)
    {
        var life = InWords(trace, Subject.Life, "");
        return life.Length == 0 ? "desired service life to be stated" : $"desired service life {life}";
    }

    private static string InWords(Trace trace, Subject subject, string otherwise) =>
        trace.Step(subject)?.Finding switch
        {
            Given given => given.InWords,
            Settled settled => settled.Demand.InWords,
            _ => otherwise,
        };

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
