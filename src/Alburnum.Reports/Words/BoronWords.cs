using System.Globalization;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What is said of boron spreading in a piece, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class BoronWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static BoronWords Current => new(Wording.Current);

    /// <summary>Said of every piece: how it was reckoned, and what to mind.</summary>
    /// <param name="section">The piece's section.</param>
    public IReadOnlyList<string> Cautions(Section section) =>
        [
            wording.Say(
                section switch
                {
                    RectangularSection => "boron.model-sawn",
                    RoundSection => "boron.model-round",
                    _ => "boron.model-sheet",
                }
            ),
            wording.Say("boron.not-measured"),
            wording.Say("boron.caution"),
        ];

    /// <summary>Name of the depth that has the target loading, mm.</summary>
    public string Depth => wording.Say("boron.depth");

    /// <summary>Name of the loading in the middle of the piece, kg/m³.</summary>
    public string Middle => wording.Say("boron.middle");

    /// <summary>Name of the share that running water takes.</summary>
    public string WashedOut => wording.Say("boron.washed-out");

    /// <summary>Name of the loading that running water leaves in the middle, kg/m³.</summary>
    public string MiddleThen => wording.Say("boron.middle-then");

    /// <summary>What the numbers mean and rest on, one sentence each.</summary>
    public IEnumerable<string> Notes(BoronSpread spread)
    {
        ArgumentNullException.ThrowIfNull(spread);
        if (spread.IsTooThin)
            yield return wording.Say("boron.too-thin", ("even", Figures.Number(spread.EvenKgPerM3, 2)));
        if (spread.IsTooThinAsReckoned)
            yield return wording.Say(
                "boron.too-thin-between-faces",
                ("between", Figures.Number(spread.AsReckonedKgPerM3, 2)),
                ("even", Figures.Number(spread.EvenKgPerM3, 2))
            );
        yield return wording.Say(
            "boron.coefficient",
            ("coefficient", Power(spread.M2PerS)),
            ("moisture", Figures.Number(spread.Asked.MoisturePercent, 0)),
            ("celsius", Figures.Number(spread.Asked.Celsius, 0)),
            ("factor", Figures.Digits(spread.Law.Factor, 1)),
            ("source", spread.Law.Provenance.Citation),
            ("standing", wording.Say(spread.Law.Provenance.Standing))
        );
        if (spread.SoakedM2PerS is { } soaked)
            yield return wording.Say(
                "boron.soaked",
                ("coefficient", Power(soaked)),
                ("moisture", Figures.Number(spread.Law.MostMoisturePercent, 0))
            );
    }

    private static string Power(double coefficient) => coefficient.ToString("0.0e0", CultureInfo.InvariantCulture);
}
