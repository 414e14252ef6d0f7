using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>Where the product of a treatment stays, and what makes its account uncertain, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class ProductWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static ProductWords Current => new(Wording.Current);

    /// <summary>Heading of what is expected of the product.</summary>
    public string Title => wording.Say("product.title");

    /// <summary>Heading of what is expected over depth.</summary>
    public string OverDepth => wording.Say("product.over-depth");

    /// <summary>Heading of the parts of an uncertainty.</summary>
    public string Budget => wording.Say("product.budget");

    /// <summary>What the walls take up, as a heading.</summary>
    public string Walls(WallsBasis basis) =>
        basis switch
        {
            WallsBasis.Nothing => wording.Say("product.walls-nothing"),
            WallsBasis.Given => wording.Say("product.walls-given"),
            WallsBasis.ForComparison => wording.Say("product.walls-for-comparison"),
            WallsBasis.Everything => wording.Say("product.walls-everything"),
            _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a basis."),
        };

    /// <summary>That the product beside a charge's readings is that of the uptake expected.</summary>
    /// <param name="uptakeLPerM3">The uptake, L/m³.</param>
    public string OfExpected(Estimate uptakeLPerM3) =>
        wording.Say(
            "product.of-expected",
            ("uptake", Figures.Measured(uptakeLPerM3.Value, uptakeLPerM3.StandardUncertainty, "L/m³"))
        );

    /// <summary>Name of the product in the zone, kg/m³.</summary>
    public string Zone => wording.Say("product.zone");

    /// <summary>Name of the product in the whole timber, kg/m³.</summary>
    public string Mean => wording.Say("product.mean");

    /// <summary>Name of the product's mean depth, mm.</summary>
    public string Depth => wording.Say("product.depth");

    /// <summary>Name of the product kept beyond what the solution kept carries.</summary>
    public string Beyond => wording.Say("product.selective");

    /// <summary>Name of the strength of what is left in the tank.</summary>
    public string StrengthAfter => wording.Say("product.strength-after");

    /// <summary>Headings over the bands of depth: two columns for every assumption of the walls.</summary>
    public IReadOnlyList<string> BandHeadings(IEnumerable<WallsBasis> walls) =>
        [
            wording.Say("product.band"),
            .. walls.SelectMany(basis =>
                new[]
                {
                    wording.Say("product.in-band", ("walls", Walls(basis))),
                    wording.Say("product.assay", ("walls", Walls(basis))),
                }
            ),
        ];

    /// <summary>A band of depth.</summary>
    /// <param name="fromMm">Where it begins, mm.</param>
    /// <param name="toMm">Where it ends, mm.</param>
    public string Band(double fromMm, double toMm) =>
        wording.Say("product.from-to", ("from", Figures.Digits(fromMm)), ("to", Figures.Digits(toMm)));

    /// <summary>What the figures mean and rest on, one sentence each.</summary>
    /// <param name="walls">Assumptions of the walls.</param>
    /// <param name="coefficient">Name of the field that says how much the walls take up, where it was written.</param>
    /// <param name="most">Name of the field that says how much they take up at most, likewise.</param>
    /// <param name="hasBands">Whether there is a table over depth.</param>
    public IEnumerable<string> Notes(
        IEnumerable<WallsBasis> walls,
        string coefficient,
        string most,
        bool hasBands = true
    )
    {
        if (walls.Contains(WallsBasis.ForComparison))
            yield return wording.Say("product.not-known", ("coefficient", coefficient), ("most", most));
        yield return wording.Say("product.held-back");
        yield return hasBands ? wording.Say("product.bands") : wording.Say("product.no-bands");
    }

    /// <summary>That a plan goes by walls that take up nothing.</summary>
    public string Planned => wording.Say("product.planned");

    /// <summary>What a charge took beyond what its solution carried, beside what was expected.</summary>
    /// <param name="measured">As a share of what the solution kept carried at the strength before.</param>
    /// <param name="least">Least that was expected of it, likewise.</param>
    /// <param name="most">Most that was expected of it, likewise.</param>
    public string Selective(Estimate measured, double least, double most) =>
        wording.Say(
            "product.selective-measured",
            ("measured", Figures.Measured(100 * measured.Value, 100 * measured.StandardUncertainty, "%")),
            ("least", Figures.WholePercent(least, wording)),
            ("most", Figures.WholePercent(most, wording))
        );

    /// <summary>That more product is gone from the tank than walls could take up.</summary>
    /// <param name="most">The most they could add, as a share of the product of the solution kept.</param>
    public string SelectiveBeyond(double most) =>
        wording.Say("product.selective-beyond", ("most", Figures.WholePercent(most, wording)));

    /// <summary>What a cause of uncertainty is.</summary>
    public string Say(ChargeCause cause) =>
        cause switch
        {
            ChargeCause.Strength => wording.Say("product.cause.strength"),
            ChargeCause.StrengthBefore => wording.Say("product.cause.strength-before"),
            ChargeCause.StrengthAfter => wording.Say("product.cause.strength-after"),
            ChargeCause.TankBefore => wording.Say("product.cause.tank-before"),
            ChargeCause.TankAfter => wording.Say("product.cause.tank-after"),
            ChargeCause.Weighing => wording.Say("product.cause.weighing"),
            ChargeCause.TankAgainstScales => wording.Say("product.cause.tank-against-scales"),
            ChargeCause.SolutionDensity => wording.Say("product.cause.solution-density"),
            ChargeCause.TimberVolume => wording.Say("product.cause.timber-volume"),
            _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "Not a cause."),
        };

    /// <summary>Headings of the parts of an uncertainty: cause, kg/m³, share of the variance.</summary>
    public IReadOnlyList<string> BudgetHeadings =>
        ["", wording.Say("product.part"), wording.Say("product.share-of-variance")];

    /// <summary>One part of an uncertainty.</summary>
    /// <param name="cause">What it is.</param>
    /// <param name="kgPerM3">Standard uncertainty from it alone, kg/m³.</param>
    /// <param name="combined">That of all parts together, kg/m³.</param>
    public IReadOnlyList<string> Part(string cause, double kgPerM3, double combined) =>
        [
            cause,
            Figures.Number(kgPerM3, 3),
            Figures.WholePercent(combined > 0 ? kgPerM3 * kgPerM3 / (combined * combined) : 0, wording),
        ];

    /// <summary>Name of all parts together.</summary>
    public string Together => wording.Say("product.together");

    /// <summary>A value in the middle and its range.</summary>
    /// <param name="spread">The value.</param>
    /// <param name="decimals">Decimals.</param>
    public string Said(Spread spread, int decimals = 2) =>
        wording.Say(
            "product.spread",
            ("middle", Figures.Number(spread.Middle, decimals)),
            ("low", Figures.Number(Math.Min(spread.Low, Math.Min(spread.Middle, spread.High)), decimals)),
            ("high", Figures.Number(Math.Max(spread.Low, Math.Max(spread.Middle, spread.High)), decimals))
        );
}
