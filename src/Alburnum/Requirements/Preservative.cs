namespace Alburnum.Requirements;

/// <summary>What attacks wood, or disfigures it.</summary>
public enum Agent
{
    /// <summary>Brown and white rot.</summary>
    Decay,

    /// <summary>Soft rot, in the ground and in water.</summary>
    SoftRot,

    /// <summary>Beetles that attack seasoned timber.</summary>
    Beetles,

    /// <summary>Termites.</summary>
    Termites,

    /// <summary>Shipworm and gribble.</summary>
    MarineBorers,

    /// <summary>Blue stain and mould, which disfigure.</summary>
    Stain,
}

/// <summary>What the law of a place says of a preservative.</summary>
/// <param name="Says">One sentence, which begins with the place.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record Restriction(string Says, Provenance Provenance)
{
    /// <summary>Codes of the countries whose law it is, for instance "british"; empty where no country's code is known here.</summary>
    public IReadOnlyList<string> Where { get; init; } = [];

    /// <summary>True where timber may no longer be treated with it there.</summary>
    public bool ForbidsTreating { get; init; }

    /// <summary>Names of the parts that it is about; empty where it is about all.</summary>
    public IReadOnlyList<string> Parts { get; init; } = [];

    /// <summary>True where the piece is among those that it is about.</summary>
    internal bool IsAbout(Enquiry enquiry) =>
        Parts.Count == 0
        || Parts.Contains(enquiry.Component?.Name, StringComparer.Ordinal)
        || Parts.Contains(enquiry.CalledAs?.Name, StringComparer.Ordinal);
}

/// <summary>A kind of wood preservative; no product.</summary>
/// <param name="Key">Short name that other files of facts use, such as "copper-azole".</param>
/// <param name="Name">Name of the kind.</param>
/// <param name="Codes">Codes by which tables of retention name it.</param>
/// <param name="AlsoCalled">Other names.</param>
/// <param name="Kind">What sort of preservative it is, for instance "waterborne copper".</param>
/// <param name="ActiveElements">Symbols of the elements that an assay looks for; empty where it is organic.</param>
/// <param name="ProtectsAgainst">What it protects against; empty where it is no preservative.</param>
/// <param name="IsFixed">Whether it stays in wood that is wetted.</param>
/// <param name="AppliedBy">How it is put on or in, for instance "vacuum pressure".</param>
/// <param name="IsForSurfaces">True where it is only ever put on the surface.</param>
/// <param name="UseClasses">Use classes that it is meant for; empty where none is known.</param>
/// <param name="Limits">What it cannot do, one sentence each.</param>
/// <param name="Restrictions">What the law says of it.</param>
/// <param name="Provenance">Source and standing of the row.</param>
public sealed record Preservative(
    string Key,
    string Name,
    IReadOnlyList<string> Codes,
    IReadOnlyList<string> AlsoCalled,
    string Kind,
    IReadOnlyList<string> ActiveElements,
    IReadOnlyList<Agent> ProtectsAgainst,
    bool IsFixed,
    IReadOnlyList<string> AppliedBy,
    bool IsForSurfaces,
    IReadOnlyList<UseClass> UseClasses,
    IReadOnlyList<string> Limits,
    IReadOnlyList<Restriction> Restrictions,
    Provenance Provenance
)
{
    /// <summary>True where it keeps up standing timber for a time, in rods, bandages or pastes, and takes the place of no treatment.</summary>
    public bool IsRemedial { get; init; }

    /// <summary>What carries it into the wood in place of water, for instance "hot oil"; null where water does, or nothing.</summary>
    public string? Carrier { get; init; }

    /// <summary>True where it spreads in wet wood by diffusion, whatever the treatability of the wood.</summary>
    public bool Diffuses => AppliedBy.Contains("diffusion", StringComparer.Ordinal);

    /// <summary>Why wood treated with it is not used indoors; null where nothing is known against it.</summary>
    public Restriction? NotIndoors { get; init; }

    /// <summary>Parts for which it is not used wherever they stand, such as those at which children play, and why.</summary>
    public IReadOnlyList<Restriction> NotForParts { get; init; } = [];
}

/// <summary>All kinds of preservative, found by name, code or another name.</summary>
public sealed class PreservativeCatalogue
{
    private readonly NameIndex<Preservative> _names;

    /// <summary>A catalogue of the given kinds.</summary>
    public PreservativeCatalogue(IReadOnlyList<Preservative> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        All = all;
        _names = new(all, each => [each.Name, each.Key, .. each.Codes, .. each.AlsoCalled]);
    }

    /// <summary>Every kind, in the order of the file.</summary>
    public IReadOnlyList<Preservative> All { get; }

    /// <summary>The kind of that name, or what may have been meant.</summary>
    public Lookup<Preservative> Find(string name) => _names.Find(name);

    /// <summary>Every kind of that name; empty where none is.</summary>
    public IReadOnlyList<Preservative> Bearers(string name) => [.. _names.Bearers(name).Select(bearer => bearer.Value)];

    /// <summary>Names that may have been meant, nearest first.</summary>
    public IReadOnlyList<string> Near(string name) => _names.Near(name);
}
