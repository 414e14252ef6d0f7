using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>timber/names.yaml</c>: what timbers, and what is no single species, are called.</summary>
internal static class TimberNameFile
{
    private static readonly (string, TimberKind)[] Kinds =
    [
        ("species", TimberKind.Species),
        ("glued", TimberKind.Glued),
        ("board", TimberKind.Board),
        ("modified", TimberKind.Modified),
        ("mixture", TimberKind.Mixture),
    ];

    public static IReadOnlyList<TimberName> Read(FactRow root, IReadOnlyList<Species> species)
    {
        var known = species.ToDictionary(each => each.Name, StringComparer.Ordinal);
        return root.Rows("names").Named("a species of timber/species.yaml", known, "is", Name);
    }

    private static TimberName Name(FactRow row, string name, IReadOnlyList<Species> species)
    {
        var kind = row.Has("kind") ? row.Word("kind", Kinds) : TimberKind.Species;
        var decides = row.OptionalText("decides");
        if (kind == TimberKind.Species && species.Count == 0 && decides.Length == 0)
            row.Refuse("is", "nothing", "the species that it means, or what decides between them");
        if (kind == TimberKind.Species && species.Count > 1 && decides.Length == 0)
            row.Refuse("decides", "nothing", "what decides between the species");
        return new(
            name,
            species,
            kind,
            decides,
            kind == TimberKind.Species ? row.OptionalText("says") : row.Text("says"),
            row.Texts("where"),
            row.Provenance()
        );
    }
}
