using Alburnum.Penetration;

namespace Alburnum.Reports.Words;

/// <summary>Verdicts in words: on a piece or a mean, that it conforms; on a rule, that it is met.</summary>
public static class VerdictWords
{
    /// <summary>A verdict in a word or three.</summary>
    /// <param name="wording">The language.</param>
    /// <param name="verdict">The verdict.</param>
    public static string Say(this Wording wording, Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return verdict switch
        {
            Verdict.Conforms => wording.Say("verdict.conforms"),
            Verdict.DoesNotConform => wording.Say("verdict.does-not-conform"),
            Verdict.Undecided => wording.Say("verdict.undecided"),
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
        };
    }

    /// <summary>Whether a rule is met, in a word or three.</summary>
    /// <param name="wording">The language.</param>
    /// <param name="verdict">The verdict on the rule.</param>
    public static string SayRule(this Wording wording, Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return verdict switch
        {
            Verdict.Conforms => wording.Say("verdict.rule-met"),
            Verdict.DoesNotConform => wording.Say("verdict.rule-not-met"),
            Verdict.Undecided => wording.Say("verdict.undecided"),
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
        };
    }
}
