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
            yield return $"  {row.UseClass, -4} "
                + Said(
                    "requirements.use-class.meaning",
                    ("situation", row.Situation),
                    ("moisture", row.Moisture),
                    ("agents", row.Agents),
                    ("standing", Wording.Current.Say(row.Standing)),
                    ("source", row.Source)
                );
        if (answer.DecidedBy is { } decided)
            yield return answer.IsSettled
                ? Said("requirements.use-class.decided-by", ("question", decided))
                : Said("requirements.use-class.decided-so-far", ("question", decided));
        if (answer.AskNext is { } next)
            yield return Said("requirements.use-class.ask-next", ("question", next));
        foreach (var remark in answer.Remarks)
            yield return $"· {remark}";
    }
}
