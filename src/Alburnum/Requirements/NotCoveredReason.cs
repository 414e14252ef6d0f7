namespace Alburnum.Requirements;

/// <summary>Why a rulebook has no answer.</summary>
public abstract record NotCoveredReason
{
    private protected NotCoveredReason() { }

    /// <summary>Why the rows of a subject settle nothing.</summary>
    internal static NotCoveredReason Of(TraceStep step) =>
        step.Finding switch
        {
            Settled { Demand: UnknownCell cell } => new CellNotRead(cell.Reason),
            Settled { Demand: OutsideScope outside } => new TimberNotCovered(outside.Covers),
            Depends depends => new DependsOn(depends.Fields),
            Contradicted => new RowsContradict(step.Matched),
            _ => new NoRowHolds([.. step.NearMisses.Select(miss => miss.Field).Distinct()]),
        };
}

/// <summary>The code knows some desired service lives, and not the one that was asked for, or is usual for the component.</summary>
/// <param name="KnownYears">Lives that it knows, years, rising.</param>
/// <param name="AskedYears">Life that was asked for, or else the usual one, years.</param>
public sealed record LifeNotKnown(IReadOnlyList<int> KnownYears, int AskedYears) : NotCoveredReason
{
    /// <summary>The next longer life that it knows, years; null where there is none.</summary>
    public int? NextYears =>
        KnownYears.Where(years => years > AskedYears).Select(years => (int?)years).FirstOrDefault();
}

/// <summary>The code has a demand here, but the rulebook does not know it.</summary>
/// <param name="Note">What the rulebook does know, one sentence; may be empty.</param>
public sealed record CellNotRead(string Note) : NotCoveredReason;

/// <summary>The code, or the class that is stated, is not written for such timber.</summary>
/// <param name="Covers">What it does cover, one sentence.</param>
public sealed record TimberNotCovered(string Covers) : NotCoveredReason;

/// <summary>The code asks for no preservative against decay, and the rulebook does not say what it asks against insects that live there.</summary>
/// <param name="Insects">The insects that live there and may attack such timber. Never empty.</param>
public sealed record InsectsAtWork(IReadOnlyList<Insect> Insects) : NotCoveredReason;

/// <summary>No row of the rulebook holds.</summary>
/// <param name="NearestFailOn">The fields on which the nearest rows fail, one for each; empty where no row is near.</param>
public sealed record NoRowHolds(IReadOnlyList<Field> NearestFailOn) : NotCoveredReason;

/// <summary>Which row holds depends on something that is not known of the piece.</summary>
/// <param name="Fields">What must be known.</param>
public sealed record DependsOn(IReadOnlyList<Field> Fields) : NotCoveredReason;

/// <summary>The rulebook answers by the class that a contract names, and none is named.</summary>
public sealed record ClassNotStated : NotCoveredReason;

/// <summary>The rulebook contradicts itself.</summary>
/// <param name="Rows">The rows that demand different things.</param>
public sealed record RowsContradict(IReadOnlyList<Row> Rows) : NotCoveredReason;

/// <summary>What was named is no single species, and the rows are for solid timber of one.</summary>
/// <param name="Timber">What it is.</param>
public sealed record NotOneSpecies(Timber.TimberName Timber) : NotCoveredReason;
