using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>An insect that attacks dry timber.</summary>
/// <param name="Name">Name shown, in the singular.</param>
/// <param name="Synonyms">Other names in use.</param>
/// <param name="Attacks">Conifers or broadleaves; null where it attacks both.</param>
/// <param name="Says">What it attacks and where it lives, to follow the name.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record Insect(
    string Name,
    IReadOnlyList<string> Synonyms,
    WoodType? Attacks,
    string Says,
    Provenance Provenance
)
{
    /// <summary>True where it attacks such timber, or where that is not known.</summary>
    /// <param name="species">The timber; null where it is not known.</param>
    public bool MayAttack(Species? species) => species is null || Attacks is null || Attacks == species.Type;

    /// <summary>Reads "none", or the names of insects with commas or "and" between them.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="known">Insects that may be named.</param>
    /// <returns>The insects, none for "none"; null where a name is not one of those.</returns>
    public static IReadOnlyList<Insect>? Parse(string text, IReadOnlyList<Insect> known)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(known);
        if (string.Equals(text, "none", StringComparison.OrdinalIgnoreCase))
            return [];
        var named = text.Split([",", " and "], StringSplitOptions.TrimEntries)
            .Select(name => Named(name, known))
            .ToList();
        return named.Contains(null) ? null : [.. named.OfType<Insect>().Distinct()];
    }

    private static Insect? Named(string name, IReadOnlyList<Insect> known) =>
        known.FirstOrDefault(each => each.Synonyms.Append(each.Name).Contains(name, StringComparer.OrdinalIgnoreCase));
}
