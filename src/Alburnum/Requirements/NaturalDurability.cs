using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>Whether untreated heartwood will do. Ordered: a greater value is worse.</summary>
public enum DurabilityVerdict
{
    /// <summary>Natural durability is enough ("o").</summary>
    Enough,

    /// <summary>Normally enough; treatment may be wise for some uses ("(o)").</summary>
    NormallyEnough,

    /// <summary>Depends on species, permeability and use ("(o)-(x)").</summary>
    Depends,

    /// <summary>Treatment is normally needed; untreated may do for some uses ("(x)").</summary>
    NormallyTreat,

    /// <summary>Treatment is needed ("x").</summary>
    Treat,
}

/// <summary>One row of the table: a use class, and the verdict for durability classes 1 to 5.</summary>
/// <param name="UseClasses">Use class; both parts where the table does not divide class 3.</param>
/// <param name="Verdicts">Five verdicts, by durability class.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record DurabilityRow(
    IReadOnlyList<UseClass> UseClasses,
    IReadOnlyList<DurabilityVerdict> Verdicts,
    Provenance Provenance
);

/// <summary>Untreated timber in a use class: heartwood and sapwood apart.</summary>
/// <param name="Species">The timber.</param>
/// <param name="UseClass">The use class.</param>
/// <param name="Heartwood">Verdict on the heartwood, by the least durable class of its range; null where its durability is not known, and in salt water, where marine borers decide.</param>
/// <param name="HeartwoodAtBest">Verdict by the most durable class of its range; null where not known.</param>
/// <param name="Sapwood">Verdict on the sapwood, which counts as durability class 5 in every species.</param>
/// <param name="Standing">Weakest standing of what was used.</param>
public sealed record UntreatedTimber(
    Species Species,
    UseClass UseClass,
    DurabilityVerdict? Heartwood,
    DurabilityVerdict? HeartwoodAtBest,
    DurabilityVerdict Sapwood,
    Standing Standing
)
{
    /// <summary>True where the use class is the most severe of several that are possible.</summary>
    public bool IsUseClassOpen { get; init; }
}

/// <summary>Natural durability against use class, as in EN 460:1994.</summary>
public sealed class NaturalDurability
{
    private readonly IReadOnlyList<DurabilityRow> _rows;
    private readonly IReadOnlyList<YearsInGround> _years;

    /// <summary>A table of the given rows, which must cover every use class.</summary>
    /// <param name="rows">Verdicts by use class and durability class.</param>
    /// <param name="years">Years in the ground by durability class; may be empty.</param>
    /// <exception cref="ArgumentException">A use class has no row, or a row has not five verdicts.</exception>
    public NaturalDurability(IReadOnlyList<DurabilityRow> rows, IReadOnlyList<YearsInGround> years)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (!Enum.GetValues<UseClass>().All(each => rows.Any(row => row.UseClasses.Contains(each))))
            throw new ArgumentException("Every use class needs a row.", nameof(rows));
        if (rows.Any(row => row.Verdicts.Count != 5))
            throw new ArgumentException("A row has five verdicts.", nameof(rows));
        (_rows, _years) = (rows, years);
    }

    /// <summary>The verdict for heartwood of one durability class.</summary>
    /// <param name="durability">Durability class, 1 to 5.</param>
    /// <param name="useClass">Use class.</param>
    public Fact<DurabilityVerdict> Verdict(int durability, UseClass useClass)
    {
        Require.InRange(durability, 1, 5, "(class)");
        var row = _rows.First(row => row.UseClasses.Contains(useClass));
        return new Fact<DurabilityVerdict>(row.Verdicts[durability - 1], row.Provenance);
    }

    /// <summary>How long heartwood of the least durable class of the timber's range lasted in the ground; null where its durability or the years are not known.</summary>
    public YearsInGround? InGround(Species species)
    {
        ArgumentNullException.ThrowIfNull(species);
        return Of(species.Durability?.Value.High);
    }

    /// <summary>The same for the most durable class of its range.</summary>
    internal YearsInGround? InGroundAtBest(Species species) => Of(species.Durability?.Value.Low);

    /// <summary>Whether the timber will do untreated, heartwood and sapwood apart.</summary>
    /// <remarks>The classes are against decay. Against marine borers a timber has classes of its own, which are not known here.</remarks>
    public UntreatedTimber Judge(Species species, UseClass useClass)
    {
        ArgumentNullException.ThrowIfNull(species);
        var sapwood = Verdict(Species.SapwoodDurability.High, useClass);
        if (species.Durability is not { } durability || useClass == UseClass.Five)
            return new UntreatedTimber(species, useClass, null, null, sapwood.Value, sapwood.Provenance.Standing);
        return new UntreatedTimber(
            species,
            useClass,
            Verdict(durability.Value.High, useClass).Value,
            Verdict(durability.Value.Low, useClass).Value,
            sapwood.Value,
            Provenance.Weakest([sapwood.Provenance.Standing, durability.Provenance.Standing])
        );
    }

    private YearsInGround? Of(int? durability) => _years.FirstOrDefault(row => row.DurabilityClass == durability);
}
