namespace Alburnum.Timber;

/// <summary>Conifer or broadleaf.</summary>
public enum WoodType
{
    /// <summary>Wood of a conifer.</summary>
    Softwood,

    /// <summary>Wood of a broadleaf.</summary>
    Hardwood,
}

/// <summary>Width of the sapwood band, in the bands of EN 350.</summary>
public enum SapwoodBand
{
    /// <summary>Under 20 mm ("vs").</summary>
    VerySmall,

    /// <summary>20 to 50 mm ("s").</summary>
    Small,

    /// <summary>50 to 100 mm ("m").</summary>
    Medium,

    /// <summary>Over 100 mm ("b").</summary>
    Broad,

    /// <summary>No clear border between sapwood and heartwood ("x").</summary>
    NotDistinct,
}

/// <summary>Sapwood width of a species: one band, or from one band to the next.</summary>
/// <param name="Narrowest">Narrower band.</param>
/// <param name="Widest">Wider band; the same where there is one.</param>
public readonly record struct SapwoodWidth(SapwoodBand Narrowest, SapwoodBand Widest)
{
    /// <summary>True where sapwood can be told from heartwood by eye.</summary>
    public bool IsDistinct => Narrowest != SapwoodBand.NotDistinct;
}

/// <summary>Density of a species at 12 % moisture, kg/m³. At least one figure is given.</summary>
/// <param name="LowKgPerM3">Low end; null where not given.</param>
/// <param name="MeanKgPerM3">Mean; null where only the ends are given.</param>
/// <param name="HighKgPerM3">High end; null where not given.</param>
public sealed record DensityRange(double? LowKgPerM3, double? MeanKgPerM3, double? HighKgPerM3)
{
    /// <summary>The mean, or the middle of the ends where no mean is given, kg/m³.</summary>
    public double TypicalKgPerM3 =>
        MeanKgPerM3 ?? (LowKgPerM3 ?? HighKgPerM3 ?? 0) / 2 + (HighKgPerM3 ?? LowKgPerM3 ?? 0) / 2;
}

/// <summary>What is known of a timber. A fact that is not known is null, never a guess.</summary>
/// <param name="Name">Common name, with the origin where it matters.</param>
/// <param name="BotanicalNames">Botanical names that the row stands for. Never empty.</param>
/// <param name="Type">Conifer or broadleaf.</param>
/// <param name="Durability">Natural durability of the heartwood against fungi, 1 (very durable) to 5 (not durable).</param>
/// <param name="HeartwoodTreatability">Treatability of the heartwood, 1 (easy) to 4 (extremely difficult).</param>
/// <param name="SapwoodTreatability">Treatability of the sapwood, 1 to 4.</param>
/// <param name="SapwoodWidth">Width of the sapwood.</param>
/// <param name="Density">Density at 12 % moisture.</param>
/// <param name="Notes">What a reader should know: conflicts between sources, origin.</param>
public sealed record Species(
    string Name,
    IReadOnlyList<string> BotanicalNames,
    WoodType Type,
    Fact<ClassRange>? Durability,
    Fact<ClassRange>? HeartwoodTreatability,
    Fact<ClassRange>? SapwoodTreatability,
    Fact<SapwoodWidth>? SapwoodWidth,
    Fact<DensityRange>? Density,
    string Notes
)
{
    /// <summary>Genera of the botanical names.</summary>
    public IReadOnlyList<string> Genera { get; } =
    [.. BotanicalNames.Select(name => name.Split(' ')[0]).Distinct(StringComparer.Ordinal)];

    /// <summary>Sapwood counts as durability class 5 in every species.</summary>
    public static ClassRange SapwoodDurability { get; } = new(5, 5);
}
