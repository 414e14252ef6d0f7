using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads the <c>basedOn</c> of a rulebook: what it does not say itself is said by another, which ships.</summary>
internal static class RulebookBasis
{
    /// <summary>The rulebook that another is based on; null where it stands alone.</summary>
    public static Rulebook? Of(FactRow root, RulebookWords words)
    {
        if (!root.Has("basedOn"))
            return null;
        var name = root.Text("basedOn");
        var supplied = words.Supplied.Value;
        if (supplied.Names.Contains(name, StringComparer.OrdinalIgnoreCase))
            return supplied.Named(name);
        root.Refuse("basedOn", name, supplied.MeantBy(name));
        return null;
    }

    /// <summary>The entries of the basis, those of the same name replaced, then the others.</summary>
    /// <param name="basis">Entries of the basis.</param>
    /// <param name="own">Entries that go before them.</param>
    /// <param name="name">Name of an entry.</param>
    public static IReadOnlyList<T> Merged<T>(IReadOnlyList<T> basis, IReadOnlyList<T> own, Func<T, string> name)
        where T : class
    {
        T? OwnOf(T entry) =>
            own.FirstOrDefault(each => string.Equals(name(each), name(entry), StringComparison.Ordinal));
        var replaced = basis.Select(entry => OwnOf(entry) ?? entry).ToList();
        return [.. replaced, .. own.Where(each => !replaced.Exists(entry => ReferenceEquals(entry, each)))];
    }

    /// <summary>Penetration classes by name: those that any rulebook may use, and those that the rows of the basis name.</summary>
    public static IReadOnlyDictionary<string, PenetrationDemand> Classes(Rulebook? basis, RulebookWords words)
    {
        var known = new Dictionary<string, PenetrationDemand>(words.Classes, StringComparer.Ordinal);
        foreach (var demand in basis?.Rows.Select(row => row.Demand).OfType<PenetrationDemand>() ?? [])
            known.TryAdd(demand.Name, demand);
        return known;
    }
}
