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
            ComponentInOtherClass(var component, var stated, var code, var rulebook) => wording.Say(
                "discrepancies.component",
                ("component", component.Name),
                ("stated", Classes(stated)),
                ("code", code.Label),
                ("rulebook", rulebook)
            ),
            NameInOtherClass(var name, var stated, var usual) => wording.Say(
                "discrepancies.name",
                ("name", name.Name),
                ("stated", Classes(stated)),
                ("usual", Classes(usual))
            ),
            ContractForOtherUse odd => Say(odd),
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

    private string Say(ContractForOtherUse odd)
    {
        (string, string) named = ("class", odd.StatedClass),
            @for = ("for", odd.For.Label),
            use = ("use", Classes(odd.Use));
        var said = odd.By switch
        {
            null => wording.Say("discrepancies.contract-of-use", named, @for, use),
            { RulebookTitle: { } title } by => wording.Say(
                "discrepancies.contract-of-code",
                named,
                @for,
                use,
                ("component", by.Name),
                ("rulebook", title)
            ),
            var by => wording.Say("discrepancies.contract-of-name", named, @for, use, ("name", by.Name)),
        };
        return odd.IsTooWeak ? wording.Say("discrepancies.contract-too-weak", ("said", said)) : said;
    }

    private string Classes(IReadOnlyList<UseClass> classes) =>
        wording.Joined("rows.either", classes.Select(each => each.Label()));
}
