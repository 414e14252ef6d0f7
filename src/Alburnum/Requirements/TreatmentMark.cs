namespace Alburnum.Requirements;

/// <summary>A class or mark of one system, as it stands on treated timber or its papers.</summary>
/// <param name="Name">The mark, for instance "H4".</param>
/// <param name="System">The system that it belongs to.</param>
/// <param name="Means">What it says there.</param>
/// <param name="UseClass">The use class that it comes nearest to, roughly; null where it says none.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record TreatmentMark(string Name, string System, string Means, UseClass? UseClass, Provenance Provenance);

/// <summary>All marks. One word may be a mark of several systems.</summary>
public sealed class MarkCatalogue
{
    private readonly NameIndex<TreatmentMark> _names;

    /// <summary>A catalogue of the given marks.</summary>
    public MarkCatalogue(IReadOnlyList<TreatmentMark> all) => _names = new(all, mark => [mark.Name]);

    /// <summary>Everything that the mark means, one entry a system; empty where no system here has it.</summary>
    public IReadOnlyList<TreatmentMark> Find(string name) => [.. _names.Bearers(name).Select(bearer => bearer.Value)];

    /// <summary>Marks that may have been meant, nearest first.</summary>
    public IReadOnlyList<string> Near(string name) => _names.Near(name);
}
