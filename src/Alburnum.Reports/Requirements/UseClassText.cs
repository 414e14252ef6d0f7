using Alburnum.Reports.Words;

namespace Alburnum.Reports.Requirements;

/// <summary>A use class as plain lines.</summary>
public static class UseClassText
{
    /// <summary>The class, what EN 335 says of it, what decided it and what to ask next, line by line.</summary>
    public static IEnumerable<string> Lines(UseClassDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        (string, string) classes = ("classes", Wording.English.Joined("rows.either", answer.UseClasses));
        yield return answer.IsSettled
            ? Say("requirements.use-class.settled", classes)
            : Say("requirements.use-class.not-settled", classes);
        foreach (var row in answer.Meaning)
            yield return $"  {row.UseClass, -4} "
                + Say(
                    "requirements.use-class.meaning",
                    ("situation", row.Situation),
                    ("moisture", row.Moisture),
                    ("agents", row.Agents),
                    ("standing", row.Standing.InWords()),
                    ("source", row.Source)
                );
        if (answer.DecidedBy is { } decided)
            yield return answer.IsSettled
                ? Say("requirements.use-class.decided-by", ("question", decided))
                : Say("requirements.use-class.decided-so-far", ("question", decided));
        if (answer.AskNext is { } next)
            yield return Say("requirements.use-class.ask-next", ("question", next));
        foreach (var remark in answer.Remarks)
            yield return $"· {remark}";
    }

    private static string Say(string key, params ReadOnlySpan<(string Name, string Value)> values) =>
        Wording.English.Say(key, values);
}
