using System.Globalization;
using Alburnum.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>Answers as plain lines.</summary>
public static class AnswerText
{
    private const int Width = 96;
    private const int NearMissesShown = 3;

    /// <summary>The answer, its reasons and its routes, line by line.</summary>
    public static IEnumerable<string> Lines(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        yield return answer.RulebookTitle;
        yield return Asked(answer.Enquiry);
        yield return "";
        foreach (var line in Headline(answer))
            yield return line;
        foreach (var line in Why(answer))
            yield return line;
        if (answer.Untreated is { } untreated)
        {
            yield return "";
            foreach (var line in Wrapped("Untreated?  ", $"{untreated.InWords} ({untreated.Standing})"))
                yield return line;
        }
        foreach (var line in Routes(answer))
            yield return line;
        if (answer.Clause is { } clause)
        {
            yield return "";
            yield return "Specification clause";
            foreach (var line in Wrapped("  ", clause))
                yield return line;
        }
        if (answer.Remarks.Count > 0)
            yield return "";
        foreach (var line in answer.Remarks.SelectMany(remark => Wrapped("· ", remark)))
            yield return line;
    }

    private static string Asked(AskedDocument asked)
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

    private static IEnumerable<string> Why(AnswerDocument answer)
    {
        yield return "";
        yield return $"Why (weakest standing: {answer.WeakestStanding})";
        foreach (var step in answer.Trace)
        {
            foreach (var line in Wrapped($"  {step.Subject, -12} ", step.Finding))
                yield return line;
            foreach (
                var line in step.Matched.SelectMany(row =>
                    Wrapped("               = ", $"{row.Key} [{row.When}] — {row.Standing}: {row.Source}")
                )
            )
                yield return line;
            foreach (var row in step.SetAside)
                yield return $"               - {row.Key} gives way to an exception";
            foreach (
                var line in step.Open.SelectMany(miss =>
                    Wrapped("               ? ", $"{miss.Row.Key}: {miss.Field} {miss.Asked}, {miss.Found}")
                )
            )
                yield return line;
            foreach (
                var line in Shown(step)
                    .Take(NearMissesShown)
                    .SelectMany(miss =>
                        Wrapped("               ≠ ", $"{miss.Row.Key}: {miss.Field} {miss.Asked}, found {miss.Found}")
                    )
            )
                yield return line;
            if (Shown(step).Count > NearMissesShown)
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"               ≠ and {Shown(step).Count - NearMissesShown} more that failed on one field"
                );
        }
        foreach (
            var line in answer.FactsUsed.SelectMany(fact =>
                Wrapped("  fact         ", $"{fact.Fact} — {fact.Standing}: {fact.Source}")
            )
        )
            yield return line;
    }

    // That other components have other rows says nothing; the JSON form has them all.
    private static IReadOnlyList<MissDocument> Shown(StepDocument step) =>
        [.. step.NearMisses.Where(miss => miss.Field != Field.Component.InWords())];

    private static IEnumerable<string> Routes(AnswerDocument answer)
    {
        if (answer.Routes.Count == 0)
            yield break;
        yield return "";
        yield return "What would make it possible (orientation, best first)";
        foreach (var route in answer.Routes)
        {
            var demand = route.Penetration is null
                ? route.PenetrationInWords
                : $"{route.Penetration} ({route.Standing}), {route.Reach}";
            foreach (var line in Wrapped($"  {route.Kind, -17} ", $"{route.Change}: {demand}"))
                yield return line;
        }
    }

    // Breaks between words; following lines start under the first word.
    private static IEnumerable<string> Wrapped(string lead, string text)
    {
        var line = lead;
        var isFresh = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isFresh && line.Length + 1 + word.Length > Width)
            {
                yield return line;
                line = new string(' ', lead.Length);
                isFresh = true;
            }
            line += isFresh ? word : " " + word;
            isFresh = false;
        }
        yield return line.TrimEnd();
    }
}
