using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Handling;

/// <summary>What is known of a question about treated timber.</summary>
/// <param name="Question">The question.</param>
/// <param name="Answers">Statements that nothing said rules out, in their order: a rule stands before its exceptions.</param>
/// <param name="LacksRulesOfPlace">Whether rules of other places are known on it, and none of the place's own.</param>
/// <param name="LacksRulesOnPreservative">Whether rules of other places are known on the preservative in particular, and none of the place's own.</param>
public sealed record HandlingAnswer(
    HandlingQuestion Question,
    IReadOnlyList<HandlingAdvice> Answers,
    bool LacksRulesOfPlace,
    bool LacksRulesOnPreservative
);

/// <summary>Answers a question that comes with treated timber beside its treatment: fixings, moisture, fixation, leaching, burning, waste, storage.</summary>
public static class AskHandling
{
    /// <summary>Answers it.</summary>
    /// <param name="question">The question.</param>
    /// <param name="facts">What is known.</param>
    public static HandlingAnswer Run(HandlingQuestion question, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(facts);
        return new(
            question,
            [.. facts.Handling.Rows.Where(row => row.Answers(question))],
            facts.Handling.LacksRulesOf(question),
            facts.Handling.LacksRulesOnPreservative(question)
        );
    }
}
