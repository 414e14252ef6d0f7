using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>A use class as plain lines.</summary>
public static class UseClassText
{
    /// <summary>The class, what EN 335 says of it, what decided it and what to ask next, line by line.</summary>
    public static IEnumerable<string> Lines(UseClassDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        (string, string) classes = ("classes", Wording.Current.Joined("rows.either", answer.UseClasses));
        yield return answer.IsSettled
            ? Said("requirements.use-class.settled", classes)
            : Said("requirements.use-class.not-settled", classes);
        foreach (var row in answer.Meaning)
            yield return $"  {row.UseClass, -4} {Meaning(row)}";
        if (answer.DecidedBy is { } decided)
            yield return answer.IsSettled
                ? Said("requirements.use-class.decided-by", ("question", decided))
                : Said("requirements.use-class.decided-so-far", ("question", decided));
        if (answer.AskNext is { } next)
            yield return Said("requirements.use-class.ask-next", ("question", next));
        foreach (var remark in answer.Remarks)
            yield return $"· {remark}";
    }

    private static string Meaning(UseClassMeaning row)
    {
        (string, string) situation = ("situation", row.Situation);
        (string, string) moisture = ("moisture", row.Moisture);
        (string, string) agents = ("agents", row.Agents);
        (string, string) standing = ("standing", Wording.Current.Say(row.Standing));
        (string, string) source = ("source", row.Source);
        return row.AgentsSource == row.Source && row.AgentsStanding == row.Standing
            ? Said("requirements.use-class.meaning", situation, moisture, agents, standing, source)
            : Said(
                "requirements.use-class.meaning-of-two",
                situation,
                moisture,
                standing,
                source,
                agents,
                ("agentsStanding", Wording.Current.Say(row.AgentsStanding)),
                ("agentsSource", row.AgentsSource)
            );
    }
}
