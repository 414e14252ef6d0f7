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

/// <summary>How a durability verdict is written.</summary>
public static class DurabilityVerdictWords
{
    /// <summary>The verdicts and their signs in the table.</summary>
    public static IReadOnlyList<(string Sign, DurabilityVerdict Verdict)> Signs { get; } =
    [
        ("o", DurabilityVerdict.Enough),
        ("(o)", DurabilityVerdict.NormallyEnough),
        ("(o)-(x)", DurabilityVerdict.Depends),
        ("(x)", DurabilityVerdict.NormallyTreat),
        ("x", DurabilityVerdict.Treat),
    ];

    /// <summary>The verdict in words.</summary>
    public static string InWords(this DurabilityVerdict verdict) =>
        verdict switch
        {
            DurabilityVerdict.Enough => "natural durability is enough",
            DurabilityVerdict.NormallyEnough => "normally enough; treatment may be wise for some uses",
            DurabilityVerdict.Depends => "depends on species, permeability and use",
            DurabilityVerdict.NormallyTreat => "treatment is normally needed",
            DurabilityVerdict.Treat => "treatment is needed",
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
        };
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
/// <param name="Heartwood">Verdict on the heartwood, by the least durable class of its range; null where its durability is not known.</param>
/// <param name="HeartwoodAtBest">Verdict by the most durable class of its range; null where not known.</param>
/// <param name="Sapwood">Verdict on the sapwood, which counts as durability class 5 in every species.</param>
/// <param name="Standing">Weakest standing of what was used.</param>
/// <param name="InWords">The result in words.</param>
public sealed record UntreatedTimber(
    DurabilityVerdict? Heartwood,
    DurabilityVerdict? HeartwoodAtBest,
    DurabilityVerdict Sapwood,
    Standing Standing,
    string InWords
);

/// <summary>Natural durability against use class, as in EN 460:1994.</summary>
public sealed class NaturalDurability
{
    private readonly IReadOnlyList<DurabilityRow> rows;

    /// <summary>A table of the given rows, which must cover every use class.</summary>
    /// <exception cref="ArgumentException">A use class has no row, or a row has not five verdicts.</exception>
    public NaturalDurability(IReadOnlyList<DurabilityRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (!Enum.GetValues<UseClass>().All(each => rows.Any(row => row.UseClasses.Contains(each))))
            throw new ArgumentException("Every use class needs a row.", nameof(rows));
        if (rows.Any(row => row.Verdicts.Count != 5))
            throw new ArgumentException("A row has five verdicts.", nameof(rows));
        this.rows = rows;
    }

    /// <summary>The verdict for heartwood of one durability class.</summary>
    /// <param name="durability">Durability class, 1 to 5.</param>
    /// <param name="useClass">Use class.</param>
    public Fact<DurabilityVerdict> Verdict(int durability, UseClass useClass)
    {
        Require.InRange(durability, 1, 5, "(class)");
        var row = rows.First(row => row.UseClasses.Contains(useClass));
        return new Fact<DurabilityVerdict>(row.Verdicts[durability - 1], row.Provenance);
    }

    /// <summary>Whether the timber will do untreated, heartwood and sapwood apart.</summary>
    public UntreatedTimber Judge(Species species, UseClass useClass)
    {
        ArgumentNullException.ThrowIfNull(species);
        var sapwood = Verdict(Species.SapwoodDurability.High, useClass);
        if (species.Durability is not { } durability)
        {
            return new UntreatedTimber(
                null,
                null,
                sapwood.Value,
                sapwood.Provenance.Standing,
                $"The durability of {species.Name} is not in the catalogue; sapwood: {sapwood.Value.InWords()}."
            );
        }
        var careful = Verdict(durability.Value.High, useClass).Value;
        var atBest = Verdict(durability.Value.Low, useClass).Value;
        var range = careful == atBest ? "" : $", at best {atBest.InWords()}";
        return new UntreatedTimber(
            careful,
            atBest,
            sapwood.Value,
            Provenance.Weakest([sapwood.Provenance.Standing, durability.Provenance.Standing]),
            $"Untreated {species.Name} in use class {useClass.Label()}: heartwood (durability {durability.Value.Label}): "
                + $"{careful.InWords()}{range}; sapwood (always durability 5): {sapwood.Value.InWords()}."
        );
    }
}
