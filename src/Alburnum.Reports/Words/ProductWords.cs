using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Impregnation;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>Where the product of a treatment stays, and what makes its account uncertain, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class ProductWords(Wording wording)
{
    // Printed as 0.00, kg/m³.
    private const double Nothing = 0.005;

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

    /// <summary>Rows of what is expected of a charge, each with a cell for every assumption of the walls.</summary>
    public IEnumerable<IReadOnlyList<string>> Rows(IReadOnlyList<ChargeProductDocument> products)
    {
        ArgumentNullException.ThrowIfNull(products);
        yield return Row("product.zone", product => Measured(product.ZoneKgPerM3));
        yield return Row("product.mean", product => Measured(product.MeanKgPerM3));
        yield return Row("product.depth", product => Figures.Number(product.DepthMm, 1));
        yield return Row("product.selective", product => Figures.WholePercent(product.SelectiveShare, wording));
        if (products.Any(product => product.StrengthAfterPercent is not null))
            yield return Row(
                "product.strength-after",
                product => product.StrengthAfterPercent is { } after ? Measured(after) : ""
            );

        IReadOnlyList<string> Row(string name, Func<ChargeProductDocument, string> cell) =>
            [wording.Say(name), .. products.Select(cell)];
    }

    /// <summary>Rows of what is expected of one piece among many, likewise.</summary>
    public IEnumerable<IReadOnlyList<string>> Rows(IReadOnlyList<PieceProductDocument> products)
    {
        ArgumentNullException.ThrowIfNull(products);
        yield return [wording.Say("product.zone"), .. products.Select(product => Said(product.ZoneKgPerM3))];
        yield return [wording.Say("product.mean"), .. products.Select(product => Said(product.MeanKgPerM3))];
        yield return [wording.Say("product.depth"), .. products.Select(product => Said(product.DepthMm, 1))];
    }

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

    /// <summary>Rows over depth, down to the first that holds nothing: the band, and in it and from the face to its end what is expected with each assumption of the walls.</summary>
    public IEnumerable<IReadOnlyList<string>> BandRows(IReadOnlyList<IReadOnlyList<ProductBandDocument>> bands)
    {
        ArgumentNullException.ThrowIfNull(bands);
        return bands[0]
            .Take(
                1
                    + Enumerable
                        .Range(0, bands[0].Count)
                        .Count(n =>
                            bands.Any(each =>
                                each[n].KgPerM3 is var woods
                                && Math.Max(woods.Low, Math.Max(woods.Middle, woods.High)) >= Nothing
                            )
                        )
            )
            .Select(
                (band, n) =>
                    (IReadOnlyList<string>)
                        [
                            wording.Say(
                                "product.from-to",
                                ("from", Figures.Digits(band.FromMm)),
                                ("to", Figures.Digits(band.ToMm))
                            ),
                            .. bands.SelectMany(each => new[] { Range(each[n].KgPerM3), Range(each[n].AssayKgPerM3) }),
                        ]
            );
    }

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
    /// <param name="expected">What was expected of it.</param>
    public string Selective(Estimate measured, IReadOnlyList<ChargeProductDocument> expected)
    {
        ArgumentNullException.ThrowIfNull(expected);
        return wording.Say(
            "product.selective-measured",
            ("measured", Figures.Measured(100 * measured.Value, 100 * measured.StandardUncertainty, "%")),
            ("least", Figures.WholePercent(expected.Min(product => product.SelectiveShare), wording)),
            ("most", Figures.WholePercent(expected.Max(product => product.SelectiveShare), wording))
        );
    }

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

    private string Said(Spread spread, int decimals = 2) =>
        wording.Say(
            "product.spread",
            ("middle", Figures.Number(spread.Middle, decimals)),
            ("low", Figures.Number(spread.Low, decimals)),
            ("high", Figures.Number(spread.High, decimals))
        );

    // Slow wood may hold more than fast, or less.
    private string Range(Spread woods) =>
        Said(
            new(
                Math.Min(woods.Low, Math.Min(woods.Middle, woods.High)),
                woods.Middle,
                Math.Max(woods.Low, Math.Max(woods.Middle, woods.High))
            )
        );

    private static string Measured(Estimate value) =>
        value.StandardUncertainty > 0
            ? Figures.Measured(value.Value, value.StandardUncertainty, "")
            : Figures.Number(value.Value, 2);
}
