using Alburnum.Cases;

namespace Alburnum.Reports.Words;

/// <summary>What the verdict on a case rests on beside its pieces and its batch, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class CaseWords(Wording wording)
{
    private readonly RequirementWords _requirements = new(wording);

    /// <summary>In the language chosen.</summary>
    public static CaseWords Current => new(Wording.Current);

    /// <summary>What a case is about.</summary>
    /// <param name="component">The component.</param>
    /// <param name="section">Its size.</param>
    /// <param name="species">The species.</param>
    /// <param name="useClass">Use class.</param>
    public string Subject(string component, string section, string species, string useClass) =>
        wording.Say(
            "cases.subject",
            ("component", component),
            ("section", section),
            ("species", species),
            ("useClass", useClass)
        );

    /// <summary>What the code demands.</summary>
    /// <param name="rulebook">The code.</param>
    /// <param name="penetration">Its name for the penetration.</param>
    /// <param name="depth">The same in words.</param>
    /// <param name="weakest">Weakest standing touched.</param>
    public string Demanded(string rulebook, string penetration, string depth, Standing weakest) =>
        wording.Say(
            "cases.demanded",
            ("rulebook", rulebook),
            ("penetration", penetration),
            ("depth", depth),
            ("standing", wording.Say(weakest))
        );

    /// <summary>Why the code demands nothing.</summary>
    /// <param name="rulebook">The code.</param>
    /// <param name="outcome">Its answer, in a few words.</param>
    /// <param name="reason">Why, a sentence.</param>
    public string NoDemand(string rulebook, string outcome, string reason) =>
        wording.Say("cases.no-demand", ("rulebook", rulebook), ("outcome", outcome), ("reason", reason));

    /// <summary>The batch and its rule.</summary>
    /// <param name="pieces">Pieces in the batch.</param>
    /// <param name="cut">Pieces cut.</param>
    /// <param name="rule">The acceptance rule.</param>
    public string Batch(int pieces, int cut, string rule) =>
        wording.Say("cases.batch", ("pieces", Figures.Whole(pieces)), ("cut", Figures.Whole(cut)), ("rule", rule));

    /// <summary>That a piece was last read with marks that are not in its folder.</summary>
    /// <param name="piece">Name of the piece.</param>
    public string OtherMarks(string piece) => wording.Say("cases.other-marks", ("piece", piece));

    /// <summary>The sentence of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no sentence is known for.</exception>
    public string Say(CaseReason reason) =>
        reason switch
        {
            CodeAsksForNone { Answer: var none } => wording.Say("cases.code-asks-for-none", ("reason", none.Reason)),
            CodeForbids { Answer: var no } => no.Reason,
            RulebookSilent { Answer: var unknown } => _requirements.Answers.Say(unknown.Reason),
            NoDepthKnown => wording.Say("cases.no-depth-known"),
            RetentionUnknown => wording.Say("cases.retention-unknown"),
            RetentionNotStated => wording.Say("cases.retention-not-stated"),
            RetentionNotAssayed => wording.Say("cases.retention-not-assayed"),
            MoistureNotStated moisture => wording.Say(
                "cases.moisture-not-stated",
                ("percent", Figures.Digits(moisture.MaxPercent))
            ),
            TwoDemands two => wording.Say(
                "cases.two-demands",
                ("contract", two.ByContract.Name),
                ("byContract", wording.SayRule(two.ByContract.Penetration.Verdict)),
                ("code", two.ByCode.Name),
                ("byCode", wording.SayRule(two.ByCode.Penetration.Verdict)),
                ("which", _requirements.Answers.Say(two.Contract, two.ByCode.Name))
            ),
            ContractNotJudged stated => _requirements.Answers.Say(stated.Class, codesName: null),
            NothingJudged => wording.Say("cases.nothing-judged"),
            _ => throw ReasonWords.Unknown(reason),
        };
}
