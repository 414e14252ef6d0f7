using Alburnum.Impregnation.Charging;

namespace Alburnum.Reports.Words;

/// <summary>What is said of a charge, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class ChargeWords(Wording wording)
{
    /// <summary>In English.</summary>
    public static ChargeWords English { get; } = new(Wording.English);

    /// <summary>What to mind with every charge, one sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; } =
    [
        wording.Say("charge.caution.label"),
        wording.Say("charge.caution.licence"),
        wording.Say("charge.caution.drip"),
        wording.Say("charge.caution.protection"),
        wording.Say("charge.caution.uptake"),
    ];

    /// <summary>What a drying time rests on.</summary>
    public string Diffusion =>
        wording.Say(
            "charge.diffusion",
            ("diffusion", Figures.Digits(1e10 * DryingTime.SoftwoodDiffusionM2PerS.Value, 1)),
            ("standing", DryingTime.SoftwoodDiffusionM2PerS.Provenance.Standing.InWords())
        );

    /// <summary>One sentence for each finding, in their order.</summary>
    public IReadOnlyList<string> Say(IEnumerable<ChargeFinding> findings) => [.. findings.Select(Say)];

    /// <summary>That the timber must dry first.</summary>
    /// <param name="days">Least days.</param>
    public string TooWet(double days) => wording.Say("charge.too-wet", ("days", Figures.Number(days, 0)));

    /// <summary>Whether the uptake is what was expected.</summary>
    /// <param name="expectedLPerM3">Net uptake that was expected, L/m³.</param>
    /// <param name="isAsExpected">Whether it is.</param>
    public string Expectation(Estimate expectedLPerM3, bool isAsExpected)
    {
        var expected = Figures.Measured(expectedLPerM3.Value, expectedLPerM3.StandardUncertainty, "L/m³");
        return isAsExpected
            ? wording.Say("charge.within", ("expected", expected))
            : wording.Say("charge.outside", ("expected", expected));
    }

    private string Say(ChargeFinding finding) =>
        finding switch
        {
            TankAndWeightAgree => wording.Say("charge.agree"),
            TankLostMore { Litres: var litres } => wording.Say(
                "charge.tank-lost-more",
                ("litres", Figures.Number(litres, 0))
            ),
            TimberGainedMore { Litres: var litres } => wording.Say(
                "charge.timber-gained-more",
                ("litres", Figures.Number(litres, 0))
            ),
            NotWeighed => wording.Say("charge.not-weighed"),
            KeptMoreThanAtPeak => wording.Say("charge.kept-more"),
            SolutionLostStrength { Percent: var percent } => wording.Say(
                "charge.lost-strength",
                ("percent", Figures.Number(percent, 0))
            ),
            SolutionGainedStrength { Percent: var percent } => wording.Say(
                "charge.gained-strength",
                ("percent", Figures.Number(percent, 0))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding, "Not a finding."),
        };
}
