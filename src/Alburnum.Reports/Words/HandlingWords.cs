using Alburnum.Penetration;
using Alburnum.Workflows.Handling;

namespace Alburnum.Reports.Words;

/// <summary>What is said around treated timber: reagents, fixings, moisture, fixation, burning, waste, storage.</summary>
/// <param name="wording">The language.</param>
public sealed class HandlingWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static HandlingWords Current => new(Wording.Current);

    /// <summary>What goes with every reagent.</summary>
    public IReadOnlyList<string> ReagentCautions => [wording.Say("handling.reagent-caution")];

    /// <summary>Which reagents show a preservative, in a sentence.</summary>
    /// <param name="preservative">Its name; null where none was named.</param>
    /// <param name="reagents">Names of the reagents; may be empty.</param>
    /// <param name="notShown">Elements of it that none shows.</param>
    public string Answer(string? preservative, IReadOnlyList<string> reagents, IReadOnlyList<string> notShown)
    {
        ArgumentNullException.ThrowIfNull(reagents);
        ArgumentNullException.ThrowIfNull(notShown);
        if (preservative is null)
            return wording.Say("handling.all-reagents");
        (string, string) name = ("preservative", preservative);
        return reagents.Count == 0 ? wording.Say("handling.no-spray", name)
            : notShown.Count == 0 ? wording.Say("handling.sprays", name, ("reagents", string.Join("; ", reagents)))
            : wording.Say(
                "handling.sprays-in-part",
                name,
                ("reagents", string.Join("; ", reagents)),
                ("elements", string.Join(", ", notShown))
            );
    }

    /// <summary>A limit of detection with its scope; that none is known where none is.</summary>
    public string Detection(DetectionLimit? limit) =>
        limit is null
            ? wording.Say("handling.detection-unknown")
            : wording.Say(
                "handling.detection",
                ("element", limit.Element),
                ("above", Figures.Digits(limit.AboveMgPerKg)),
                ("atMost", Figures.Digits(limit.AtMostMgPerKg)),
                ("scope", limit.Scope),
                ("source", limit.Provenance.Citation)
            );

    /// <summary>What would narrow an answer down, and what governs.</summary>
    /// <param name="answer">What was asked and what is known.</param>
    public IEnumerable<string> Remarks(HandlingAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var question = answer.Question;
        if (answer.Answers.Count == 0)
            yield return wording.Say("handling.nothing-known");
        if (question.Preservative is null)
            yield return wording.Say("handling.say-preservative");
        if (question.Place.Length == 0)
            yield return wording.Say("handling.say-place");
        if (answer.LacksRulesOfPlace)
            yield return wording.Say("handling.place-unknown", ("place", question.Place));
        else if (answer is { LacksRulesOnPreservative: true, Question.Preservative: { } preservative })
            yield return wording.Say(
                "handling.preservative-unknown",
                ("place", question.Place),
                ("preservative", preservative.Name)
            );
        yield return wording.Say("handling.governs");
    }
}
