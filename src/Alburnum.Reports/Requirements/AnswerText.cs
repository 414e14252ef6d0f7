using System.Globalization;

namespace Alburnum.Reports.Requirements;

/// <summary>Answers as plain lines.</summary>
public static class AnswerText
{
    private const int Width = 96;

    /// <summary>The answer, its reasons and its routes, line by line.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="withAllRows">Every row that failed on one field, in place of the first few of each subject.</param>
    public static IEnumerable<string> Lines(AnswerDocument answer, bool withAllRows = false)
    {
        ArgumentNullException.ThrowIfNull(answer);
        yield return answer.RulebookTitle;
        yield return Asked(answer.Enquiry);
        yield return "";
        foreach (var line in Headline(answer))
            yield return line;
        if (answer.Clause is { } clause)
        {
            yield return "";
            yield return "Specification clause";
            foreach (var line in Wrapped("  ", clause))
                yield return line;
        }
        if (answer.Untreated is { } untreated)
        {
            yield return "";
            foreach (var line in Wrapped("Untreated?  ", $"{untreated.InWords} ({untreated.Standing})"))
                yield return line;
        }
        foreach (var line in Routes(answer))
            yield return line;
        foreach (var line in Why(answer, withAllRows))
            yield return line;
        if (answer.Remarks.Count > 0)
            yield return "";
        foreach (var line in answer.Remarks.SelectMany(remark => Wrapped("· ", remark)))
            yield return line;
    }

    /// <summary>What was asked, in one line.</summary>
    internal static string Asked(AskedDocument asked)
    {
        var parts = new List<string?>
        {
            asked.Component,
            asked.Section,
            asked.Form,
            asked.Species,
            asked.UseClasses.Count > 0 ? $"use class {string.Join(" or ", asked.UseClasses)}" : null,
            asked.LifeYears is { } years ? string.Create(CultureInfo.InvariantCulture, $"{years} years") : null,
            asked.StatedClass is { } stated ? $"asked for as {stated}" : null,
        };
        return string.Join(", ", parts.Where(part => part is not null));
    }

    private static IEnumerable<string> Headline(AnswerDocument answer)
    {
        if (answer.Requirement is not { } demand)
        {
            foreach (var line in Wrapped($"{answer.Outcome.ToUpperInvariant()}  ", answer.Reason ?? ""))
                yield return line;
            yield break;
        }
        foreach (
            var line in Wrapped(
                "REQUIRED  ",
                demand.Penetration == demand.PenetrationInWords
                    ? demand.Penetration
                    : $"{demand.Penetration}: {demand.PenetrationInWords}"
            )
        )
            yield return line;
        if (demand.AnalyticalZone is { } zone)
            yield return $"  analytical zone  {zone}";
        if (demand.Retention is { } amount)
            yield return $"  retention        {amount}";
        else if (demand.RetentionFactor is { } factor)
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"  retention        {factor:0.##} × the preservative's critical value"
            );
        if (demand.MoistureMaxPercent is { } moisture)
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"  moisture         at most {moisture:0.#} % before treatment"
            );
        foreach (var line in demand.Conditions.Concat(demand.Open).SelectMany(sentence => Wrapped("  · ", sentence)))
            yield return line;
    }

    private static IEnumerable<string> Why(AnswerDocument answer, bool withAllRows)
    {
        yield return "";
        yield return $"Why (weakest standing: {answer.WeakestStanding})";
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
                Wrapped("  fact         ", $"{fact.Fact} — {fact.Standing}: {fact.Source}")
            )
        )
            yield return line;
        if (left > 0)
            yield return FormattableString.Invariant($"  {left} more rows failed on one field; --all-rows shows them.");
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
            .. Wrapped($"  {step.Subject, -12} ", step.Finding),
            .. step.Matched.SelectMany(row => Row("=", $"{row.Key} [{row.When}] — {row.Standing}: {row.Source}")),
            .. step.SetAside.SelectMany(row => Row("-", $"{row.Key} gives way to an exception")),
            .. open.SelectMany(miss =>
                Row("?", $"{miss.Row.Key}, if {miss.Field} is {miss.Asked} ({miss.Found}) → {miss.Row.Demand}")
            ),
            .. shown.SelectMany(miss => Row("≠", $"{miss.Row.Key}: {miss.Field} {miss.Asked}, found {miss.Found}")),
        ];
    }

    private static IEnumerable<string> Routes(AnswerDocument answer)
    {
        if (answer.Routes.Count == 0)
            yield break;
        yield return "";
        yield return "What would make it possible (orientation, likeliest first)";
        foreach (var route in answer.Routes)
        foreach (var line in Wrapped($"  {route.Kind, -17} ", $"{route.Change}: {InWords(route)}"))
            yield return line;
    }

    private static string InWords(RouteDocument route) =>
        route switch
        {
            { Requirement: { } demand } => $"{demand.Penetration} ({route.Standing}), {route.Reach}",
            { Untreated: { } untreated } => $"{untreated.Heartwood} ({route.Standing})",
            _ => "the rulebook has no answer; consult the code",
        };

    // Following lines start under the first word.
    private static IEnumerable<string> Wrapped(string lead, string text) =>
        Wrap.Lines(text, Width - lead.Length)
            .Select((line, index) => (index == 0 ? lead : new string(' ', lead.Length)) + line)
            .Select(line => line.TrimEnd());
}
