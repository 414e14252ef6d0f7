using Alburnum.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What is said of timber to be treated, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class TreatingWords(Wording wording)
{
    /// <summary>In English.</summary>
    public static TreatingWords English { get; } = new(Wording.English);

    /// <summary>One sentence for each assumption, in their order.</summary>
    public IReadOnlyList<string> Say(IEnumerable<LogAssumption> assumptions) => [.. assumptions.Select(Say)];

    /// <summary>The sentence of an assumption.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An assumption of a kind that no sentence is known for.</exception>
    public string Say(LogAssumption assumption) =>
        assumption switch
        {
            SapwoodNotDistinct alike => wording.Say(
                "treating.sapwood-not-distinct",
                ("species", alike.Species.Name),
                ("standing", alike.Standing.InWords())
            ),
            SapwoodAsUsual usual => wording.Say(
                "treating.sapwood-as-usual",
                ("width", Figures.Digits(usual.Width.Mm, 1)),
                ("narrowest", Figures.Digits(usual.Width.NarrowestMm, 1)),
                ("widest", Figures.Digits(usual.Width.WidestMm, 1)),
                ("standing", usual.Standing.InWords())
            ),
            PithInTheMiddle => wording.Say("treating.pith-in-the-middle"),
            SmallestLog => wording.Say("treating.smallest-log"),
            _ => throw new ArgumentOutOfRangeException(nameof(assumption), assumption, "Not an assumption."),
        };
}
