namespace Alburnum.Requirements;

/// <summary>What a check of a rulebook may find. Ordered: a lesser value weighs more.</summary>
public enum RulebookFindingKind
{
    /// <summary>Rows demand different things of the same case, and none is an exception to the other.</summary>
    Contradiction,

    /// <summary>A longer life or a harsher use class asks for less.</summary>
    AsksLess,

    /// <summary>A row that no case reaches.</summary>
    Unreachable,

    /// <summary>No row speaks of the case, though the rulebook claims to be complete.</summary>
    Gap,

    /// <summary>No row speaks of the case; the rulebook does not claim to be complete.</summary>
    Silent,

    /// <summary>Several rows say the same of one case.</summary>
    Overlap,

    /// <summary>Too many combinations to walk through.</summary>
    TooLarge,
}

/// <summary>One finding of a check.</summary>
/// <param name="Kind">What was found.</param>
/// <param name="Subject">The subject of the rows.</param>
/// <param name="Rows">Rows concerned.</param>
/// <param name="Cases">Cases concerned.</param>
public abstract record RulebookFinding(
    RulebookFindingKind Kind,
    Subject Subject,
    IReadOnlyList<Row> Rows,
    IReadOnlyList<CaseBox> Cases
)
{
    /// <summary>True where the rulebook should be put right before anyone relies on it.</summary>
    public bool IsFault => Kind <= RulebookFindingKind.Gap;
}

/// <summary>Rows demand different things of the same cases.</summary>
/// <param name="Subject">The subject of the rows.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Cases">The cases.</param>
public sealed record ContradictionFound(Subject Subject, IReadOnlyList<Row> Rows, IReadOnlyList<CaseBox> Cases)
    : RulebookFinding(RulebookFindingKind.Contradiction, Subject, Rows, Cases);

/// <summary>A step to the harsher side asks for less.</summary>
/// <param name="Subject">The subject of the rows.</param>
/// <param name="Field">The field along which the step is taken: use class or life.</param>
/// <param name="Mild">Where the step begins.</param>
/// <param name="Harsh">Where it ends.</param>
/// <param name="Cases">The case at its end.</param>
public sealed record LessAskedFound(
    Subject Subject,
    Field Field,
    SettledAt Mild,
    SettledAt Harsh,
    IReadOnlyList<CaseBox> Cases
) : RulebookFinding(RulebookFindingKind.AsksLess, Subject, [Mild.Row, Harsh.Row], Cases);

/// <summary>What is demanded at one value of a field.</summary>
/// <param name="Value">The value.</param>
/// <param name="Row">The row that demands it.</param>
public sealed record SettledAt(Known Value, Row Row);

/// <summary>No case reaches a row.</summary>
/// <param name="Subject">The subject of the row.</param>
/// <param name="Row">The row.</param>
public sealed record UnreachableFound(Subject Subject, Row Row)
    : RulebookFinding(RulebookFindingKind.Unreachable, Subject, [Row], []);

/// <summary>No row speaks of some cases, though the rulebook claims to be complete.</summary>
/// <param name="Subject">The subject that has no row.</param>
/// <param name="Cases">The cases.</param>
public sealed record GapFound(Subject Subject, IReadOnlyList<CaseBox> Cases)
    : RulebookFinding(RulebookFindingKind.Gap, Subject, [], Cases);

/// <summary>No row speaks of some cases, and the rulebook does not claim to be complete.</summary>
/// <param name="Subject">The subject that has no row.</param>
/// <param name="Cases">The cases.</param>
public sealed record SilenceFound(Subject Subject, IReadOnlyList<CaseBox> Cases)
    : RulebookFinding(RulebookFindingKind.Silent, Subject, [], Cases);

/// <summary>Several rows say the same of the same cases.</summary>
/// <param name="Subject">The subject of the rows.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Cases">The cases.</param>
public sealed record OverlapFound(Subject Subject, IReadOnlyList<Row> Rows, IReadOnlyList<CaseBox> Cases)
    : RulebookFinding(RulebookFindingKind.Overlap, Subject, Rows, Cases);

/// <summary>The rows of a subject can tell too many cases apart to walk through all of them.</summary>
/// <param name="Subject">The subject.</param>
/// <param name="Combinations">Number of cases.</param>
/// <param name="CombinationsMax">Most cases that are walked through.</param>
public sealed record TooLargeToCheck(Subject Subject, long Combinations, long CombinationsMax)
    : RulebookFinding(RulebookFindingKind.TooLarge, Subject, [], []);
