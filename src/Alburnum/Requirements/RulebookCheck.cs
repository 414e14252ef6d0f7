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
/// <param name="InWords">One sentence.</param>
public sealed record RulebookFinding(
    RulebookFindingKind Kind,
    Subject Subject,
    IReadOnlyList<Row> Rows,
    IReadOnlyList<CaseBox> Cases,
    string InWords
)
{
    /// <summary>True where the rulebook should be mended before anyone relies on it.</summary>
    public bool IsFault => Kind <= RulebookFindingKind.Gap;
}

/// <summary>Walks through every case that a rulebook can tell apart and reports what does not hold together.</summary>
public static class RulebookCheck
{
    /// <summary>Checks penetration, retention, moisture, use class and life, each by its own rows.</summary>
    /// <param name="rulebook">The rulebook.</param>
    /// <param name="stop">Signalled to stop early.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static IReadOnlyList<RulebookFinding> Run(Rulebook rulebook, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        var findings = new List<RulebookFinding>();
        foreach (
            var subject in (ReadOnlySpan<Subject>)
                [Subject.Penetration, Subject.Retention, Subject.Moisture, Subject.UseClass, Subject.Life]
        )
        {
            if (rulebook.RowsOf(subject).Count > 0)
                findings.AddRange(Check(rulebook, subject, stop));
        }
        return [.. findings.OrderBy(finding => finding.Kind)];
    }

    private static List<RulebookFinding> Check(Rulebook rulebook, Subject subject, CancellationToken stop)
    {
        var grid = CaseGrid.Of(rulebook, subject);
        if (grid.Count > CaseGrid.CellsMax)
        {
            var words = FormattableString.Invariant(
                $"{grid.Count:0} combinations are too many to walk through (at most {CaseGrid.CellsMax:0}); divide the rulebook."
            );
            return [new RulebookFinding(RulebookFindingKind.TooLarge, subject, [], [], words)];
        }

        var rows = rulebook.RowsOf(subject);
        var reached = new HashSet<Row>(ReferenceEqualityComparer.Instance);
        var silent = new List<int[]>();
        var clashes = new CasesByRows();
        var overlaps = new CasesByRows();
        var settled = new Dictionary<CellKey, (Demand Demand, Row Row)>();
        foreach (var (indexes, situation) in grid.Cells())
        {
            stop.ThrowIfCancellationRequested();
            var step = Choice.Among(subject, rows, situation);
            reached.UnionWith(step.Matched);
            switch (step.Finding)
            {
                case Silent:
                    silent.Add([.. indexes]);
                    break;
                case Contradicted:
                    clashes.Add(step.Matched, indexes);
                    break;
                case Settled found:
                    settled[new CellKey([.. indexes])] = (found.Demand, step.Matched[0]);
                    if (step.Matched.Count > 1)
                        overlaps.Add(step.Matched, indexes);
                    break;
                default:
                    break;
            }
        }

        var findings = new List<RulebookFinding>();
        findings.AddRange(
            clashes.Findings(
                RulebookFindingKind.Contradiction,
                subject,
                grid.Axes,
                "demand different things of one case"
            )
        );
        findings.AddRange(
            overlaps.Findings(RulebookFindingKind.Overlap, subject, grid.Axes, "say the same of one case")
        );
        findings.AddRange(
            rows.Where(row => !reached.Contains(row))
                .Select(row => new RulebookFinding(
                    RulebookFindingKind.Unreachable,
                    subject,
                    [row],
                    [],
                    $"No case reaches row \"{row.Key}\"."
                ))
        );
        if (silent.Count > 0)
            findings.Add(Gap(rulebook, subject, CaseBox.Gather(grid.Axes, silent)));
        findings.AddRange(AsksLess(subject, grid, settled));
        return findings;
    }

    private static RulebookFinding Gap(Rulebook rulebook, Subject subject, IReadOnlyList<CaseBox> boxes)
    {
        // A claim of completeness is about penetration over the fields that it names.
        var isFault =
            subject == Subject.Penetration
            && rulebook.CompleteOver.Count > 0
            && boxes.Any(box => box.Fields.All(each => rulebook.CompleteOver.Contains(each.Field)));
        return new RulebookFinding(
            isFault ? RulebookFindingKind.Gap : RulebookFindingKind.Silent,
            subject,
            [],
            boxes,
            isFault ? "The rulebook claims to be complete, but has no row here." : "No row speaks of these cases."
        );
    }

    // Along use class and life, all else equal, a step to the harsher side must not ask for less.
    private static List<RulebookFinding> AsksLess(
        Subject subject,
        CaseGrid grid,
        Dictionary<CellKey, (Demand Demand, Row Row)> settled
    )
    {
        var found = new Dictionary<(Row, Row, Field), RulebookFinding>();
        for (var axis = 0; axis < grid.Axes.Count; axis++)
        {
            if (grid.Axes[axis].Field is not (Field.UseClass or Field.Life))
                continue;
            foreach (var (cell, mild) in settled)
            {
                if (cell.NextAlong(axis, grid.Axes[axis].Values.Count, settled) is not { } next)
                    continue;
                var harsh = settled[next];
                if (!Strictness.AsksLess(harsh.Demand, mild.Demand))
                    continue;
                var field = grid.Axes[axis].Field;
                var words =
                    $"{field.InWords()} {grid.Axes[axis].Values[next.Indexes[axis]].Label} (row \"{harsh.Row.Key}\", {harsh.Demand.InWords}) asks for less than "
                    + $"{grid.Axes[axis].Values[cell.Indexes[axis]].Label} (row \"{mild.Row.Key}\", {mild.Demand.InWords}).";
                found.TryAdd(
                    (mild.Row, harsh.Row, field),
                    new RulebookFinding(
                        RulebookFindingKind.AsksLess,
                        subject,
                        [mild.Row, harsh.Row],
                        CaseBox.Gather(grid.Axes, [next.Indexes]),
                        char.ToUpperInvariant(words[0]) + words[1..]
                    )
                );
            }
        }
        return [.. found.Values];
    }

    private readonly struct CellKey(int[] indexes) : IEquatable<CellKey>
    {
        public int[] Indexes { get; } = indexes;

        // The next settled cell towards the harsher side; unknown cells between are passed over.
        public CellKey? NextAlong(int axis, int count, Dictionary<CellKey, (Demand Demand, Row Row)> settled)
        {
            for (var index = Indexes[axis] + 1; index < count; index++)
            {
                var moved = (int[])Indexes.Clone();
                moved[axis] = index;
                var next = new CellKey(moved);
                if (settled.TryGetValue(next, out var found) && found.Demand is not UnknownCell)
                    return next;
            }
            return null;
        }

        public bool Equals(CellKey other) => Indexes.AsSpan().SequenceEqual(other.Indexes);

        public override bool Equals(object? obj) => obj is CellKey other && Equals(other);

        public override int GetHashCode()
        {
            var hash = new HashCode();
            foreach (var index in Indexes)
                hash.Add(index);
            return hash.ToHashCode();
        }
    }

    private sealed class CasesByRows
    {
        private readonly Dictionary<string, (IReadOnlyList<Row> Rows, List<int[]> Cells)> _byRows = new(
            StringComparer.Ordinal
        );

        public void Add(IReadOnlyList<Row> rows, int[] indexes)
        {
            var key = string.Join('\n', rows.Select(row => row.Key));
            if (!_byRows.TryGetValue(key, out var entry))
                _byRows[key] = entry = ([.. rows], []);
            entry.Cells.Add([.. indexes]);
        }

        public IEnumerable<RulebookFinding> Findings(
            RulebookFindingKind kind,
            Subject subject,
            IReadOnlyList<Axis> axes,
            string what
        ) =>
            _byRows.Values.Select(entry => new RulebookFinding(
                kind,
                subject,
                entry.Rows,
                CaseBox.Gather(axes, entry.Cells),
                $"Rows {string.Join(" and ", entry.Rows.Select(row => $"\"{row.Key}\" ({row.Demand.InWords})"))} {what}."
            ));
    }
}
