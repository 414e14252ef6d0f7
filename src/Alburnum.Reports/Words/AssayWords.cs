using Alburnum.Acceptance;
using Alburnum.Assaying;

namespace Alburnum.Reports.Words;

/// <summary>How a laboratory's figures became a retention, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class AssayWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static AssayWords Current => new(Wording.Current);

    /// <summary>What the retention counts; of a product that was analysed in part, from what it is worked out.</summary>
    public string Counted(CountedRetention counted)
    {
        ArgumentNullException.ThrowIfNull(counted);
        return counted.Basis.Product is not { } product ? Parts(counted)
            : IsWhole(counted.ShareOfProduct) ? product.Name
            : wording.Say("assay.counted-in-part", ("product", product.Name), ("parts", Parts(counted)));
    }

    /// <summary>What was done, one sentence each.</summary>
    public IEnumerable<string> Steps(CountedRetention counted)
    {
        ArgumentNullException.ThrowIfNull(counted);
        List<SubstanceFactor> factors =
        [
            .. counted.Parts.Select(part => part.Factor).Where(factor => factor.Sources.Count > 0),
        ];
        foreach (var factor in factors)
            yield return wording.Say(
                "assay.factor",
                ("measured", factor.Measured.Name),
                ("counted", factor.Counted.Name),
                ("factor", Figures.Digits(factor.Factor, 4))
            );
        if (factors.Count > 0)
            yield return wording.Say(
                "assay.atomic-masses",
                ("source", string.Join("; ", factors.SelectMany(factor => factor.Sources).Distinct().Select(Source)))
            );
        if (counted.Basis.Product is { } product)
            yield return Product(counted, product);
        foreach (var step in Basis(counted.Basis))
            yield return step;
    }

    /// <summary>What the figures of a case count as, and how they became kg/m³, one sentence each.</summary>
    public IEnumerable<string> Conversion(AssayBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Product is { } product)
            yield return product.Provenance is { } source
                ? wording.Say("assay.case-product", ("product", product.Name), ("source", Source(source)))
            : product.Parts.Sum(part => part.Share) is var share && IsWhole(share)
                ? wording.Say("assay.case-product-stated", ("product", product.Name))
            : wording.Say(
                "assay.case-product-stated-in-part",
                ("product", product.Name),
                ("share", Figures.Percent(share, wording))
            );
        else if (basis.CountedAs.Count > 0)
            yield return wording.Say(
                "assay.case-counted-as",
                ("counted", string.Join(" + ", basis.CountedAs.Select(each => each.Name)))
            );
        else
            yield return wording.Say("assay.case-as-measured");
        foreach (var step in Basis(basis))
            yield return step;
    }

    private IEnumerable<string> Basis(AssayBasis basis)
    {
        switch (basis.Density)
        {
            case StatedZoneDensity { IsUncertaintyKnown: false, Stated.Value: var density }:
                yield return wording.Say("assay.density-stated-bare", ("density", Figures.Number(density, 0)));
                break;
            case StatedZoneDensity stated:
                yield return wording.Say("assay.density-stated", ("density", Density(stated)));
                break;
            case UsualZoneDensity usual:
                yield return wording.Say(
                    "assay.density-usual",
                    ("density", Density(usual)),
                    ("species", usual.Species.Name),
                    ("at12", Figures.Number(usual.Density.Value.TypicalKgPerM3, 0)),
                    ("source", Source(usual.Density.Provenance)),
                    ("dry", Figures.Number(usual.InVolumeAt12KgPerM3, 0)),
                    ("green", Figures.Number(usual.InGreenVolumeKgPerM3, 0)),
                    ("spread", Spread(usual)),
                    ("volume", Figures.Number(usual.VolumeKgPerM3, 0))
                );
                break;
        }
        if (basis.ZoneDepthMm is { } depth)
            yield return wording.Say("assay.zone-depth", ("depth", Figures.Mm(depth)));
    }

    /// <summary>What is missing and what to mind, one sentence each.</summary>
    public IEnumerable<string> Remarks(CountedRetention counted)
    {
        ArgumentNullException.ThrowIfNull(counted);
        if (counted.KgPerM3 is null)
            yield return counted.Parts[0].Reported.Unit == ContentUnit.GPerM2
                ? wording.Say("assay.zone-depth-missing")
                : wording.Say("assay.density-missing");
        if (!counted.IsBelowDetection)
            foreach (var part in counted.Parts.Where(part => part.Reported.IsBelowDetection))
                yield return wording.Say("assay.part-below", ("substance", part.Reported.Measured.Name));
        if (counted.NotAnalysed is { Count: > 0 } missing)
            yield return wording.Say("assay.not-analysed", ("parts", Names(missing)));
        if (!counted.IsLaboratoryUncertaintyKnown)
            yield return wording.Say("assay.uncertainty-missing");
        if (counted is { IsDensityUncertaintyKnown: false, IsVolumeUncertaintyKnown: false })
            yield return wording.Say("assay.density-uncertainty-missing");
        if (counted is { Basis.Product: { } product, PartsOffFormula: { Count: > 0 } parts })
            yield return OffFormula(product, parts);
        yield return wording.Say("assay.speaks-for");
    }

    /// <summary>The zone that was cut.</summary>
    public string Zone(AssayedZone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return zone.DepthMm is { } depth
            ? wording.Say("assay.zone-cut", ("depth", Figures.Mm(depth)))
            : wording.Say("assay.sapwood-cut");
    }

    /// <summary>That parts of a product do not stand to each other as its formula says, one sentence.</summary>
    public string OffFormula(ProductFormula product, IReadOnlyList<PartOffFormula> parts)
    {
        ArgumentNullException.ThrowIfNull(product);
        ArgumentNullException.ThrowIfNull(parts);
        return wording.Say(
            "assay.parts-off-formula",
            ("product", product.Name),
            ("source", product.Provenance is { } source ? Source(source) : wording.Say("assay.as-stated")),
            ("parts", string.Join("; ", parts.Select(OffFormula)))
        );
    }

    private string OffFormula(PartOffFormula part)
    {
        (string, string) substance = ("substance", part.Compound.Name);
        (string, string) found = ("found", Found(part));
        (string, string) expected = ("expected", Figures.Percent(part.Expected, wording));
        return part.Least < part.Most
            ? wording.Say(
                "assay.part-off-limits",
                substance,
                found,
                expected,
                ("least", Figures.Percent(part.Least, wording)),
                ("most", Figures.Percent(part.Most, wording))
            )
            : wording.Say("assay.part-off-formula", substance, found, expected);
    }

    private string Found(PartOffFormula part) =>
        part.IsAtMost ? wording.Say("assay.part-not-found", ("found", Figures.Percent(part.Found.Value, wording)))
        : !part.IsUncertaintyKnown ? Figures.Percent(part.Found.Value, wording)
        : Figures.Measured(part.Found.Value * 100, part.Found.StandardUncertainty * 100, "%");

    private string Spread(UsualZoneDensity usual)
    {
        (string, string) spread = ("spread", Figures.Number(usual.SpreadKgPerM3, 0));
        return usual is { IsSpreadByEnds: true, Density.Value: { LowKgPerM3: { } low, HighKgPerM3: { } high } }
            ? wording.Say(
                "assay.spread-by-ends",
                spread,
                ("low", Figures.Number(low, 0)),
                ("high", Figures.Number(high, 0))
            )
            : wording.Say(
                "assay.spread-by-variation",
                spread,
                ("percent", Figures.Percent(usual.Variation.Value, wording)),
                ("source", Source(usual.Variation.Provenance))
            );
    }

    private string Product(CountedRetention counted, ProductFormula product)
    {
        (string, string) name = ("product", product.Name);
        (string, string) parts = ("parts", Parts(counted));
        (string, string) share = ("share", Figures.Percent(counted.ShareOfProduct, wording));
        var isWhole = IsWhole(counted.ShareOfProduct);
        return (product.Provenance, isWhole) switch
        {
            ({ } source, true) => wording.Say("assay.product", name, parts, ("source", Source(source))),
            ({ } source, false) => wording.Say("assay.product-in-part", name, parts, share, ("source", Source(source))),
            (null, true) => wording.Say("assay.product-stated", parts),
            (null, false) => wording.Say("assay.product-stated-in-part", parts, share),
        };
    }

    private static string Parts(CountedRetention counted) =>
        string.Join(" + ", counted.Parts.Select(part => part.Factor.Counted.Name));

    private static bool IsWhole(double share) => share > 1 - 1e-9;

    private static string Names(IEnumerable<Compound> compounds) =>
        string.Join(", ", compounds.Select(compound => compound.Name));

    private static string Density(ZoneDensity density) =>
        Figures.Measured(density.KgPerM3.Value, density.KgPerM3.StandardUncertainty, "kg/m³");

    private string Source(Provenance source) =>
        wording.Say("assay.source", ("citation", source.Citation), ("standing", wording.Say(source.Standing)));
}
