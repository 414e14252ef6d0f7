namespace Alburnum.Assaying;

/// <summary>How much of one substance holds as much of an element as another does.</summary>
/// <param name="Measured">What was measured.</param>
/// <param name="Counted">What it is counted as.</param>
/// <param name="Factor">Mass of the second for a unit mass of the first.</param>
/// <param name="Sources">Where the atomic masses come from; empty where none was used.</param>
public sealed record SubstanceFactor(
    Compound Measured,
    Compound Counted,
    double Factor,
    IReadOnlyList<Provenance> Sources
)
{
    /// <summary>What was measured, as it was.</summary>
    internal static SubstanceFactor Itself(Compound measured) => new(measured, measured, 1, []);
}

/// <summary>One substance that a product holds.</summary>
/// <param name="Compound">The substance.</param>
/// <param name="Share">Its share of the product's mass, above 0 to 1.</param>
public sealed record ProductPart(Compound Compound, double Share);

/// <summary>What a preservative product holds, as far as a laboratory finds it element by element.</summary>
/// <param name="Key">Short name, such as "cca-c"; the shares as written where a person stated them.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Parts">Its substances. At least one; together at most the whole.</param>
/// <param name="Provenance">Who says so; null where the person who asks stated it.</param>
public sealed record ProductFormula(string Key, string Name, IReadOnlyList<ProductPart> Parts, Provenance? Provenance);

/// <summary>Substances by name and formula, and what one holds of another.</summary>
public sealed class Substances
{
    // What joins the element that matters: two substances that share only these hold nothing in common that was measured.
    private static readonly string[] Carriers = ["H", "O", "C", "N", "Na", "K", "Cl", "S"];

    private readonly IReadOnlyDictionary<string, Fact<double>> _masses;
    private readonly Dictionary<string, Compound> _names;

    /// <summary>Substances made of some elements.</summary>
    /// <param name="masses">Relative atomic mass of each element, by its symbol.</param>
    /// <param name="names">Formulas by other names. Each of elements given.</param>
    /// <param name="products">Formulas of products.</param>
    public Substances(
        IReadOnlyDictionary<string, Fact<double>> masses,
        IReadOnlyDictionary<string, string> names,
        IReadOnlyList<ProductFormula> products
    )
    {
        ArgumentNullException.ThrowIfNull(names);
        _masses = masses;
        _names = names.ToDictionary(
            each => each.Key,
            each => OfFormula(each.Value)!.Called(each.Key),
            StringComparer.OrdinalIgnoreCase
        );
        Products = products;
    }

    /// <summary>Formulas of products.</summary>
    public IReadOnlyList<ProductFormula> Products { get; }

    /// <summary>A substance by its formula, or by another name; null where neither is known.</summary>
    public Compound? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return _names.GetValueOrDefault(name) ?? OfFormula(name);
    }

    /// <summary>The factor from one substance to another, by the one element that they share; null where they share none, or more than one.</summary>
    /// <param name="measured">What was measured.</param>
    /// <param name="counted">What it is counted as.</param>
    /// <remarks>n(measured)·M(counted)/(n(counted)·M(measured)), n the atoms of that element and M the relative masses.</remarks>
    public SubstanceFactor? Between(Compound measured, Compound counted)
    {
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(counted);
        if (measured == counted)
            return SubstanceFactor.Itself(measured);
        var (from, to) = (measured.Atoms, counted.Atoms);
        return Shared(measured, counted) is [var element]
            ? new(
                measured,
                counted,
                from[element] * MassOf(to) / (to[element] * MassOf(from)),
                [
                    .. from
                        .Keys.Union(to.Keys, StringComparer.Ordinal)
                        .Select(each => _masses[each].Provenance)
                        .Distinct(),
                ]
            )
            : null;
    }

    /// <summary>Whether two substances share an element, however many.</summary>
    internal static bool SharesAny(Compound measured, Compound counted) => Shared(measured, counted).Count > 0;

    private static List<string> Shared(Compound measured, Compound counted) =>
        [
            .. measured
                .Atoms.Keys.Intersect(counted.Atoms.Keys, StringComparer.Ordinal)
                .Except(Carriers, StringComparer.Ordinal),
        ];

    private Compound? OfFormula(string formula) =>
        Compound.Parse(formula) is { } compound && compound.Atoms.Keys.All(_masses.ContainsKey) ? compound : null;

    private double MassOf(IReadOnlyDictionary<string, int> atoms) =>
        atoms.Sum(each => each.Value * _masses[each.Key].Value);
}
