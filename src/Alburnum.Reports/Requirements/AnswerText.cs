using Alburnum.Reports.Words;
using Alburnum.Requirements;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>Answers as plain lines.</summary>
public static class AnswerText
{
    private const int Width = 96;

    /// <summary>The answer, its reasons and its routes, line by line.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="withAllRows">Every row that failed on one field, in place of the first few of each subject.</param>
    /// <param name="allRowsOption">What asks for every row, as the reader writes it.</param>
    public static IEnumerable<string> Lines(AnswerDocument answer, bool withAllRows, string allRowsOption)
    {
        ArgumentNullException.ThrowIfNull(answer);
        yield return answer.RulebookTitle;
        yield return Asked(answer.Enquiry);
        yield return "";
        foreach (var line in answer.Warnings.SelectMany(warning => Wrapped("! ", warning)))
            yield return line;
        if (answer.Warnings.Count > 0)
            yield return "";
        foreach (var line in Headline(answer))
            yield return line;
        foreach (var line in Section(Said("answers.sheet.unless"), answer.Unless))
            yield return line;
        if (answer.Clause is { } clause)
        {
            yield return "";
            yield return Said("answers.sheet.clause");
            foreach (var line in Wrapped("  ", clause))
                yield return line;
        }
        if (answer.Untreated is { } untreated)
        {
            yield return "";
            foreach (
                var line in Wrapped(
                    Said("answers.sheet.untreated") + "  ",
                    Said("answers.sheet.with-standing", ("what", untreated.InWords), Standing(untreated.Standing))
                )
            )
                yield return line;
        }
        foreach (var line in Section(Said("answers.sheet.expected"), answer.Expected?.InWords ?? []))
            yield return line;
        foreach (var line in Routes(answer))
            yield return line;
        foreach (var line in Why(answer, withAllRows, allRowsOption))
            yield return line;
        if (answer.Remarks.Count > 0)
            yield return "";
        foreach (var line in answer.Remarks.SelectMany(remark => Wrapped("· ", remark)))
            yield return line;
    }

    private static IEnumerable<string> Section(string heading, IReadOnlyList<string> sentences) =>
        sentences.Count == 0 ? [] : ["", heading, .. sentences.SelectMany(sentence => Wrapped("  · ", sentence))];

    /// <summary>What was asked, in one line.</summary>
    internal static string Asked(AskedDocument asked)
    {
        var parts = new List<string?>
        {
            RequirementWords.Current.Answers.Component(asked.CalledAs, asked.Component),
            asked.Section,
            asked.Form is { } form ? RequirementWords.Current.Say(form) : null,
            asked.Species,
            asked.UseClasses.Count > 0
                ? Said("rows.use-class", ("classes", Wording.Current.Joined("rows.either", asked.UseClasses)))
                : null,
            asked.ServiceLifeYears is { } years ? Said("rows.years", ("years", Figures.Whole(years))) : null,
            asked.StatedClass is { } stated ? Said("answers.sheet.asked-as", ("class", stated)) : null,
        };
        return string.Join(", ", parts.Where(part => part is not null));
    }

    private static IEnumerable<string> Headline(AnswerDocument answer)
    {
        var lead = RequirementWords.Current.Answers.Say(answer.Outcome).ToUpperInvariant() + "  ";
        if (answer.Requirement is not { } demand)
        {
            foreach (var line in Wrapped(lead, answer.Reason ?? "").Concat(Contract(answer)))
                yield return line;
            if (answer.AskNext is { } next)
                yield return "  " + Said("requirements.use-class.ask-next", ("question", next));
            yield break;
        }
        foreach (
            var line in Wrapped(
                    lead,
                    demand.Penetration == demand.PenetrationInWords
                        ? demand.Penetration
                        : Said("rows.named-depth", ("name", demand.Penetration), ("depth", demand.PenetrationInWords))
                )
                .Concat(Contract(answer))
        )
            yield return line;
        if (demand.AnalyticalZone is { } zone)
            yield return Part(Said("answers.sheet.zone"), zone);
        if (demand.Retention is { } amount)
            yield return Part(Said("answers.sheet.retention"), amount);
        else if (demand.RetentionFactor is { } factor)
            yield return Part(
                Said("answers.sheet.retention"),
                Said("answers.sheet.factor", ("factor", Figures.Digits(factor)))
            );
        if (demand.MoistureMaxPercent is { } moisture)
            yield return Part(
                Said("answers.sheet.moisture"),
                Said("answers.sheet.moisture-max", ("percent", Figures.Digits(moisture, 1)))
            );
        foreach (var line in demand.Conditions.Concat(demand.Open).SelectMany(sentence => Wrapped("  · ", sentence)))
            yield return line;
    }

    private static IEnumerable<string> Contract(AnswerDocument answer) =>
        answer.Contract is { } contract ? Wrapped("  · ", contract.InWords) : [];

    private static string Part(string name, string says) => $"  {name, -17}{says}";

    private static IEnumerable<string> Why(AnswerDocument answer, bool withAllRows, string allRowsOption)
    {
        yield return "";
        yield return Said("answers.sheet.why", Standing(answer.WeakestStanding));
        var left = 0;
        foreach (var step in answer.Trace)
        {
            var shown = withAllRows ? step.NearMisses : AnswerMapping.Nearest(step);
            left += step.NearMisses.Count - shown.Count;
            // Advice that could hold, if more were known, decides nothing.
            var open = withAllRows || !AnswerMapping.IsAdvice(step) ? step.Open : [];
            foreach (var line in Step(step, open, shown))
                yield return line;
        }
        foreach (
            var line in answer.FactsUsed.SelectMany(fact =>
                Wrapped(
                    Lead(Said("answers.sheet.fact")),
                    Said(
                        "answers.sheet.fact-used",
                        ("fact", fact.Fact),
                        Standing(fact.Standing),
                        ("source", fact.Source)
                    )
                )
            )
        )
            yield return line;
        if (left > 0)
            yield return "  "
                + Said("answers.sheet.more-rows", ("count", Figures.Whole(left)), ("option", allRowsOption));
    }

    private static IEnumerable<string> Step(
        StepDocument step,
        IReadOnlyList<MissDocument> open,
        IReadOnlyList<MissDocument> shown
    )
    {
        static IEnumerable<string> Row(string sign, string text) => Wrapped($"               {sign} ", text);

        return
        [
            .. Wrapped(Lead(RequirementWords.Current.Rows.Say(step.Subject)), step.Finding),
            .. step.Matched.SelectMany(row => Row("=", Matched(row))),
            .. step.SetAside.SelectMany(row => Row("-", Said("answers.sheet.gives-way", ("row", row.Key)))),
            .. open.SelectMany(miss => Row("?", Open(miss))),
            .. shown.SelectMany(miss => Row("≠", Failed(miss))),
        ];
    }

    private static string Lead(string name) => $"  {name, -12} ";

    private static string Matched(RowDocument row) =>
        Said("answers.sheet.row", ("row", row.Key), ("when", row.When), Standing(row.Standing), ("source", row.Source));

    private static string Open(MissDocument miss) =>
        Said(
            "answers.sheet.open-row",
            ("row", miss.Row.Key),
            ("field", RequirementWords.Current.Rows.Say(miss.Field)),
            ("asked", miss.Asked),
            ("found", miss.Found),
            ("demand", miss.Row.Demand)
        );

    /// <summary>A row that failed on one field, and on what.</summary>
    internal static string Failed(MissDocument miss) =>
        Said(
            "answers.sheet.failed-row",
            ("row", miss.Row.Key),
            ("field", RequirementWords.Current.Rows.Say(miss.Field)),
            ("asked", miss.Asked),
            ("found", miss.Found)
        );

    private static IEnumerable<string> Routes(AnswerDocument answer)
    {
        if (answer.Routes.Count == 0)
            yield break;
        yield return "";
        yield return Said("answers.sheet.routes");
        foreach (var route in answer.Routes)
        foreach (var line in Wrapped($"  {RequirementWords.Current.Routes.Say(route.Kind), -17} ", InWords(route)))
            yield return line;
    }

    private static string InWords(RouteDocument route) =>
        string.Join(
            ", ",
            new[]
            {
                Then(route),
                route.ExpectedPieceShare is { } share ? RequirementWords.Current.Routes.Expected(share) : null,
                route.Lasted,
                route.CommonlySold,
            }.Where(part => part is not null)
        );

    private static string Then(RouteDocument route) =>
        route switch
        {
            { Requirement: { } demand } => Said(
                "answers.sheet.route",
                ("change", route.Change),
                ("penetration", demand.Penetration),
                Standing(route.Standing),
                ("reach", RequirementWords.Current.Routes.Say(route.Reach))
            ),
            { Untreated.Heartwood: { } heartwood } => Said(
                "answers.sheet.untreated-route",
                ("change", route.Change),
                ("heartwood", heartwood),
                Standing(route.Standing)
            ),
            { Untreated: not null } => Said("answers.sheet.untreated-route-open", ("change", route.Change)),
            { Reach: ReachVerdict.Likely, Reason: { } reason } => Said(
                "answers.sheet.free-route",
                ("change", route.Change),
                ("reason", reason)
            ),
            _ => Said("answers.sheet.silent-route", ("change", route.Change)),
        };

    private static (string, string) Standing(Standing standing) => ("standing", Wording.Current.Say(standing));

    // Following lines start under the first word.
    private static IEnumerable<string> Wrapped(string lead, string text) =>
        Wrap.Lines(text, Width - lead.Length)
            .Select((line, index) => (index == 0 ? lead : new string(' ', lead.Length)) + line)
            .Select(line => line.TrimEnd());
}
