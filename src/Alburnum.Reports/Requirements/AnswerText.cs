using Alburnum.Reports.Words;
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
        yield return AnswerParts.Code(answer);
        yield return AnswerParts.Asked(answer.Enquiry);
        yield return "";
        foreach (var line in answer.Warnings.SelectMany(warning => Wrapped("! ", warning)))
            yield return line;
        if (answer.Warnings.Count > 0)
            yield return "";
        foreach (var line in Headline(answer))
            yield return line;
        foreach (var line in Section(Said("answers.sheet.unless"), answer.Unless))
            yield return line;
        if (AnswerParts.Clause(answer) is { } clause)
        {
            yield return "";
            yield return Said("answers.sheet.clause");
            foreach (var line in Wrapped("  ", clause))
                yield return line;
        }
        if (answer.Untreated is { } untreated)
        {
            yield return "";
            foreach (var line in Wrapped(Said("answers.sheet.untreated") + "  ", AnswerParts.Untreated(untreated)))
                yield return line;
        }
        foreach (var line in Section(Said("answers.sheet.expected"), answer.Expected?.InWords ?? []))
            yield return line;
        foreach (var line in Routes(Said("answers.sheet.routes"), answer.Routes))
            yield return line;
        foreach (var line in Routes(Said("answers.sheet.would-not-do"), answer.WouldNotDo))
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

    private static IEnumerable<string> Headline(AnswerDocument answer)
    {
        var (outcome, says) = AnswerParts.Headline(answer);
        foreach (var line in Wrapped(outcome.ToUpperInvariant() + "  ", says))
            yield return line;
        foreach (var line in answer.Contract is { } contract ? Wrapped("  · ", contract.InWords) : [])
            yield return line;
        foreach (var line in AnswerParts.Amounts(answer).SelectMany(each => Wrapped($"  {each.Name, -17}", each.Says)))
            yield return line;
        if (answer.Requirement is not { } demand)
        {
            if (AnswerParts.AskNext(answer) is { } next)
                yield return "  " + next;
            yield break;
        }
        foreach (var line in demand.Conditions.Concat(demand.Open).SelectMany(sentence => Wrapped("  · ", sentence)))
            yield return line;
    }

    private static IEnumerable<string> Why(AnswerDocument answer, bool withAllRows, string allRowsOption)
    {
        yield return "";
        yield return AnswerParts.Why(answer);
        foreach (var step in answer.Trace)
        {
            var lead = Lead(RequirementWords.Current.Rows.Say(step.Subject));
            var rows = AnswerParts.Rows(step, withAllRows);
            foreach (
                var line in Wrapped(lead, step.Finding)
                    .Concat(rows.SelectMany(row => Wrapped($"               {row.Sign} ", row.Says)))
            )
                yield return line;
        }
        foreach (
            var line in answer.FactsUsed.SelectMany(fact =>
                Wrapped(Lead(Said("answers.sheet.fact")), AnswerParts.Fact(fact))
            )
        )
            yield return line;
        var left = answer.Trace.Sum(step => AnswerParts.NotShown(step, withAllRows));
        if (left > 0)
            yield return "  "
                + Said("answers.sheet.more-rows", ("count", Figures.Whole(left)), ("option", allRowsOption));
    }

    private static string Lead(string name) => $"  {name, -12} ";

    private static IEnumerable<string> Routes(string heading, IReadOnlyList<RouteDocument> routes)
    {
        if (routes.Count == 0)
            yield break;
        yield return "";
        yield return heading;
        foreach (var (kind, says) in routes.Select(AnswerParts.Route))
        foreach (var line in Wrapped($"  {kind, -17} ", says))
            yield return line;
    }

    // Following lines start under the first word.
    private static IEnumerable<string> Wrapped(string lead, string text) =>
        Wrap.Lines(text, Width - lead.Length)
            .Select((line, index) => (index == 0 ? lead : new string(' ', lead.Length)) + line)
            .Select(line => line.TrimEnd());
}
