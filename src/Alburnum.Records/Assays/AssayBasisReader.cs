using Alburnum.Assaying;
using Alburnum.Facts;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Assays;

/// <summary>Reads how a laboratory's figures become the retention that is required, wherever it is written.</summary>
public static class AssayBasisReader
{
    /// <summary>Reads it; what is wrong is noted with the fields.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="species">The timber; null where it is not known.</param>
    /// <param name="facts">Substances and products by name, and how densities vary.</param>
    public static AssayBasis Read(IFields fields, Species? species, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(facts);
        var substances = facts.Substances;
        var countedAs = fields.Part(AssayFields.CountedAs, text => Compounds(text, substances)) ?? [];
        var product = Product(fields, substances);
        if (product is not null && countedAs.Count > 0)
            fields.Refuse(
                AssayFields.Product,
                product.Key,
                $"one of the two, this or {AssayFields.CountedAs.Key} ({AssayFields.CountedAs.Option})"
            );
        return new()
        {
            CountedAs = countedAs,
            Product = product,
            ProductKind =
                product is not null && facts.Preservatives.Find(product.Key) is Found<Preservative>(var kind)
                    ? kind
                    : null,
            Density =
                fields.Part(AssayFields.ZoneDensity, ContentText.ReadDensity) is { } stated ? stated
                : species is null ? null
                : UsualZoneDensity.Of(species, facts.DensityVariation),
            ZoneDepthMm = fields.Number(TreatmentFields.ZoneDepth),
        };
    }

    private static IReadOnlyList<Compound>? Compounds(string text, Substances substances)
    {
        var all = text.Split('+', StringSplitOptions.TrimEntries).Select(substances.Find).ToList();
        return all.Contains(null) || all.Distinct().Count() < all.Count ? null : [.. all.OfType<Compound>()];
    }

    private static ProductFormula? Product(IFields fields, Substances substances)
    {
        if (fields.Text(AssayFields.Product) is not { } text)
            return null;
        var found = new NameIndex<ProductFormula>(substances.Products, each => [each.Key, each.Name]).Find(text);
        if (found is Found<ProductFormula>(var product))
            return product;
        if (SubstanceFile.Parts(text.Split(','), substances) is { } parts)
            return new(text, text, parts, null);
        fields.Refuse(
            AssayFields.Product,
            text,
            (
                Related(text, substances) is { Count: > 0 } related ? new NotFound<ProductFormula>(related) : found
            ).Expected(
                $"{string.Join(", ", substances.Products.Select(each => each.Key))}; or substances with their shares, such as \"CuO 11.5 %, H3BO3 4 %\""
            )
        );
        return null;
    }

    // The types of a product that is named without one. Where a substance is named in place of a product: what is for the most part one that holds the same element.
    private static IReadOnlyList<string> Related(string text, Substances substances)
    {
        var named = substances.Find(text);
        var begins = NameKey.Of(text) + ' ';
        return
        [
            .. substances
                .Products.Where(each =>
                    named is null
                        ? new[] { each.Key, each.Name }.Any(name =>
                            NameKey.Of(name).StartsWith(begins, StringComparison.Ordinal)
                        )
                        : each.Parts.Any(part =>
                            part.Share > 0.5 && substances.Between(named, part.Compound) is not null
                        )
                )
                .Select(each => each.Key),
        ];
    }
}
