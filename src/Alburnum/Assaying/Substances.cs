using System.Text.RegularExpressions;

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
public sealed record ProductPart(Compound Compound, double Share)
{
    /// <summary>Least share that the product's standard allows; the share where it gives no limits.</summary>
    public double Least { get; init; } = Share;

    /// <summary>Greatest share that it allows; the share where it gives no limits.</summary>
    public double Most { get; init; } = Share;
}

/// <summary>What a preservative product holds.</summary>
/// <param name="Key">Short name, such as "cca-c"; the shares as written where a person stated them.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Parts">Its substances. At least one; together at most the whole.</param>
/// <param name="Provenance">Who says so; null where the person who asks stated it.</param>
public sealed record ProductFormula(string Key, string Name, IReadOnlyList<ProductPart> Parts, Provenance? Provenance);

/// <summary>A substance by its names.</summary>
/// <param name="Names">Its names; the first is the one shown. At least one.</param>
/// <param name="Formula">Its formula, of elements known; null for a mixture without one.</param>
public sealed record NamedSubstance(IReadOnlyList<string> Names, string? Formula);

/// <summary>A name that laboratories write for more than one substance: a question, never an answer.</summary>
/// <param name="Names">The ways to write it. At least one.</param>
/// <param name="MayBe">Names of the substances that it may mean. At least one.</param>
/// <param name="Decides">What decides between them, one sentence.</param>
public sealed record OpenSubstanceName(IReadOnlyList<string> Names, IReadOnlyList<string> MayBe, string Decides);

/// <summary>Substances by name and formula, and what one holds of another.</summary>
public sealed partial class Substances
{
    // What joins the element that matters: two substances that share only these hold nothing in common that was measured.
    private static readonly string[] Carriers = ["H", "O", "C", "N", "Na", "K", "Cl", "S"];

    private readonly IReadOnlyDictionary<string, Fact<double>> _masses;
    private readonly NameIndex<Compound> _suggestions;
    private readonly Dictionary<string, Lookup<Compound>> _names;

    /// <summary>Substances made of some elements.</summary>
    /// <param name="masses">Relative atomic mass of each element, and of each group with a symbol of its own, by its symbol.</param>
    /// <param name="named">Substances by their names. Each of elements given; no name twice.</param>
    /// <param name="open">Names that leave open which substance is meant.</param>
    /// <param name="products">Formulas of products.</param>
    public Substances(
        IReadOnlyDictionary<string, Fact<double>> masses,
        IReadOnlyList<NamedSubstance> named,
        IReadOnlyList<OpenSubstanceName> open,
        IReadOnlyList<ProductFormula> products
    )
    {
        ArgumentNullException.ThrowIfNull(named);
        ArgumentNullException.ThrowIfNull(open);
        _masses = masses;
        var compounds = named.ToDictionary(
            each => each.Names[0],
            each =>
                (each.Formula is { } formula ? OfFormula(formula)! : Compound.Mixture(each.Names[0])).Called(
                    each.Names[0]
                ),
            StringComparer.Ordinal
        );
        _names = named
            .SelectMany(each =>
                each.Names.Select(name => (name, (Lookup<Compound>)new Found<Compound>(compounds[each.Names[0]])))
            )
            .Concat(
                open.SelectMany(each =>
                    each.Names.Select(name => (name, (Lookup<Compound>)new Several<Compound>(each.MayBe, each.Decides)))
                )
            )
            .ToDictionary(each => NameKey.Of(each.Item1), each => each.Item2, StringComparer.Ordinal);
        _suggestions = new(
            compounds.Values,
            compound => named.Where(each => each.Names[0] == compound.Name).SelectMany(each => each.Names)
        );
        Products = products;
    }

    /// <summary>Formulas of products.</summary>
    public IReadOnlyList<ProductFormula> Products { get; }

    /// <summary>A substance by its formula, or by another name; null where neither is known, or where the name leaves open which substance it means.</summary>
    public Compound? Find(string name) => (LookUp(name) as Found<Compound>)?.Value;

    /// <summary>A substance as laboratories write it: by formula or name, by both ("copper (Cu)"), or as what its content is expressed as ("boron as H3BO3").</summary>
    /// <param name="name">As written.</param>
    public Lookup<Compound> LookUp(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var plain = Plain(name);
        var match = Expressed().Match(name.Trim());
        if (plain is not NotFound<Compound> || !match.Success)
            return plain;
        var what = LookUp(match.Groups["what"].Value);
        return (what, Plain(match.Groups["as"].Value)) switch
        {
            (Found<Compound>(var measured), Found<Compound>(var expressed) found) => measured == expressed ? what
            : Between(measured, expressed) is null ? plain
            : match.Groups["said"].Success ? found
            : new Several<Compound>(
                [measured.Name, expressed.Name],
                $"whether the figure is of {measured.Name}, or of that expressed as {expressed.Name}"
            ),
            (Several<Compound> several, Found<Compound>(var expressed) found) => several.Names.Any(each =>
                Find(each) == expressed
            )
                ? found
                : several,
            (Several<Compound>, _) => what,
            _ => plain,
        };
    }

    /// <summary>Molar mass, g/mol; null of a mixture without a formula.</summary>
    /// <param name="compound">The substance.</param>
    public double? MolarMass(Compound compound)
    {
        ArgumentNullException.ThrowIfNull(compound);
        return compound.IsMixture ? null : MassOf(compound.Atoms);
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

    private Lookup<Compound> Plain(string name) =>
        _names.GetValueOrDefault(NameKey.Of(name))
        ?? (
            OfFormula(name.Trim()) is { } compound
                ? new Found<Compound>(compound)
                : new NotFound<Compound>(_suggestions.Near(name))
        );

    private double MassOf(IReadOnlyDictionary<string, int> atoms) =>
        atoms.Sum(each => each.Value * _masses[each.Key].Value);

    [GeneratedRegex(
        @"^(?<what>.{1,60}?)(,?\s+\(?(?<said>((calculated|expressed|reported)\s+)?as|(berechnet\s+|angegeben\s+)?als|(beräknat\s+|beregnet\s+)?som)\s+(?<as>[^()]{1,60}?)\)?|\s*\((?<as>[^()]{1,60})\))$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Expressed();
}
