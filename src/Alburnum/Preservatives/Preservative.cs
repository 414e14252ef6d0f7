namespace Alburnum.Preservatives;

/// <summary>What a law or an approval says of a preservative's use, in one sentence.</summary>
/// <param name="Says">The sentence.</param>
/// <param name="Provenance">Where it comes from.</param>
public sealed record Restriction(string Says, Provenance Provenance);

/// <summary>A kind of wood preservative; no product.</summary>
/// <param name="Key">Short name, such as "copper-azole".</param>
/// <param name="Name">Name for people.</param>
/// <param name="OtherNames">Codes and other names in use.</param>
/// <param name="Kind">What kind it is, in words.</param>
/// <param name="ActiveElements">Symbols of the elements that a laboratory or a reagent finds; empty where it is organic.</param>
/// <param name="Provenance">Where the row comes from.</param>
public sealed record Preservative(
    string Key,
    string Name,
    IReadOnlyList<string> OtherNames,
    string Kind,
    IReadOnlyList<string> ActiveElements,
    Provenance Provenance
)
{
    /// <summary>What it protects against, in words.</summary>
    public required IReadOnlyList<string> ProtectsAgainst { get; init; }

    /// <summary>Whether it stays in wet wood.</summary>
    public required bool IsFixed { get; init; }

    /// <summary>How it is put in, in words.</summary>
    public required IReadOnlyList<string> AppliedBy { get; init; }

    /// <summary>Use classes that it is meant for, as they are written: "3.1".</summary>
    public required IReadOnlyList<string> UseClasses { get; init; }

    /// <summary>What it cannot do, one sentence each.</summary>
    public required IReadOnlyList<string> Limits { get; init; }

    /// <summary>What law and approvals say.</summary>
    public required IReadOnlyList<Restriction> Restrictions { get; init; }
}

/// <summary>All preservatives, found by any of their names.</summary>
public sealed class PreservativeCatalogue
{
    private readonly NameIndex<Preservative> _names;

    /// <summary>A catalogue of the given preservatives.</summary>
    public PreservativeCatalogue(IReadOnlyList<Preservative> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        All = all;
        _names = new NameIndex<Preservative>(all, each => [each.Name, each.Key, .. each.OtherNames]);
    }

    /// <summary>Every preservative, in the order of the file.</summary>
    public IReadOnlyList<Preservative> All { get; }

    /// <summary>The preservative of that name, or what may have been meant.</summary>
    public Lookup<Preservative> Find(string name) => _names.Find(name);
}
