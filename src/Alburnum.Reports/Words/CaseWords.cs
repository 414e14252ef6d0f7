using Alburnum.Cases;

namespace Alburnum.Reports.Words;

/// <summary>What the verdict on a case rests on beside its pieces and its batch, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class CaseWords(Wording wording)
{
    private readonly RequirementWords _requirements = new(wording);

    /// <summary>The sentence of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no sentence is known for.</exception>
    public string Say(CaseReason reason) =>
        reason switch
        {
            CodeForbids { Answer: var no } => no.Reason,
            RulebookSilent { Answer: var unknown } => _requirements.Answers.Say(unknown.Reason),
            NoDepthKnown => wording.Say("cases.no-depth-known"),
            RetentionUnknown => wording.Say("cases.retention-unknown"),
            RetentionNotStated => wording.Say("cases.retention-not-stated"),
            RetentionNotAssayed => wording.Say("cases.retention-not-assayed"),
            _ => throw ReasonWords.Unknown(reason),
        };
}
