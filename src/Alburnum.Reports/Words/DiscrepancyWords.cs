using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>Facts that do not go together, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class DiscrepancyWords(Wording wording)
{
    private readonly RowWords _rows = new(wording, new(wording));

    /// <summary>The sentence of a discrepancy.</summary>
    /// <exception cref="ArgumentOutOfRangeException">One of a kind that no sentence is known for.</exception>
    public string Say(Discrepancy discrepancy) =>
        discrepancy switch
        {
            UseClassesDiffer differ => Say(differ),
            CoatingAgainstClass(true) => wording.Say("discrepancies.coated-3u"),
            CoatingAgainstClass => wording.Say("discrepancies.uncoated-3c"),
            CoatingAgainstCode(var component, var code, var isCoated) => wording.Say(
                isCoated ? "discrepancies.coated-against-code" : "discrepancies.uncoated-against-code",
                ("component", component.Name),
                ("code", code.Label)
            ),
            LifeBeyondUsual(var component, var asked, var usual) => wording.Say(
                "discrepancies.life",
                ("component", component.Name),
                ("asked", _rows.Say(asked)),
                ("usual", _rows.Say(usual))
            ),
            LifeNotOfCode(var name, var asked, var usual, null, var rulebook) => wording.Say(
                "discrepancies.life-of-name",
                ("name", name),
                ("asked", _rows.Say(asked)),
                ("usual", _rows.Say(usual)),
                ("rulebook", rulebook)
            ),
            LifeNotOfCode(var name, var asked, var usual, { } by, var rulebook) => wording.Say(
                "discrepancies.life-of-other-code",
                ("name", name),
                ("asked", _rows.Say(asked)),
                ("usual", _rows.Say(usual)),
                ("by", by),
                ("rulebook", rulebook)
            ),
            TooMoist(var stated, var most) => wording.Say(
                "discrepancies.moisture",
                ("stated", Figures.Digits(stated, 1)),
                ("most", Figures.Digits(most, 1))
            ),
            HeartwoodOnRound(null) => wording.Say("discrepancies.round-form"),
            HeartwoodOnRound(var section) => wording.Say("discrepancies.round", ("section", section.Label)),
            _ => throw new ArgumentOutOfRangeException(nameof(discrepancy), discrepancy, "Not a discrepancy."),
        };

    // The contract's class is named first: the rest of the sentence is held against it.
    private string Say(UseClassesDiffer differ)
    {
        var said = wording.Say(
            "discrepancies.classes",
            ("first", Wording.Capital(Say(differ.Contract ?? differ.Answering))),
            ("second", Say(differ.Other))
        );
        return differ.IsContractTooWeak ? wording.Say("discrepancies.contract-too-weak", ("said", said)) : said;
    }

    private string Say(UseClassGiven given)
    {
        var label = ("class", _rows.Label(given));
        return given switch
        {
            UseClassStated => wording.Say("discrepancies.class.stated", label),
            UseClassByPlace => wording.Say("discrepancies.class.by-place", label),
            UseClassByContract contract => wording.Say(
                "discrepancies.class.by-contract",
                label,
                ("name", contract.StatedClass)
            ),
            UseClassByCode { Component: { } component } code => wording.Say(
                "discrepancies.class.by-code",
                label,
                ("component", component),
                ("rulebook", code.RulebookTitle)
            ),
            UseClassByName name => wording.Say("discrepancies.class.by-name", label, ("name", name.Name)),
            _ => throw new ArgumentOutOfRangeException(nameof(given), given, "Not held against another."),
        };
    }
}
