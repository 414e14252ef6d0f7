namespace Alburnum.Requirements;

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
                [
                    Subject.Penetration,
                    Subject.Retention,
                    Subject.Moisture,
                    Subject.Acceptance,
                    Subject.UseClass,
                    Subject.Life,
                ]
        )
        {
            if (rulebook.RowsOf(subject).Count > 0)
                findings.AddRange(Check(rulebook, subject, stop));
        }
        return [.. findings.OrderBy(finding => finding.Kind)];
    }

    private static IEnumerable<RulebookFinding> Check(Rulebook rulebook, Subject subject, CancellationToken stop)
    {
        var grid = CaseGrid.Of(rulebook, subject);
        if (grid.Count > CaseGrid.CellsMax)
            return [new TooLargeToCheck(subject, grid.Count, CaseGrid.CellsMax)];
        var walk = new Walk(grid);
        walk.Through(rulebook.RowsOf(subject), subject, stop);
        return
        [
            .. walk.Clashes.Gathered(grid.Axes).Select(each => new ContradictionFound(subject, each.Rows, each.Cases)),
            .. walk.Overlaps.Gathered(grid.Axes).Select(each => new OverlapFound(subject, each.Rows, each.Cases)),
            .. rulebook
                .RowsOf(subject)
                .Where(row => !walk.Reached.Contains(row))
                .Select(row => new UnreachableFound(subject, row)),
            .. Silences(rulebook, subject, CaseBox.Gather(grid.Axes, walk.Unspoken)),
            .. walk.Demands.AskingLess(subject),
        ];
    }

    // A claim of completeness is about penetration over the fields that it names.
    private static IEnumerable<RulebookFinding> Silences(
        Rulebook rulebook,
        Subject subject,
        IReadOnlyList<CaseBox> boxes
    )
    {
        if (boxes.Count == 0)
            yield break;
        var isGap =
            subject == Subject.Penetration
            && rulebook.CompleteOver.Count > 0
            && boxes.Any(box => box.Fields.All(each => rulebook.CompleteOver.Contains(each.Field)));
        yield return isGap ? new GapFound(subject, boxes) : new SilenceFound(subject, boxes);
    }

    /// <summary>What the rows of one subject come to in each cell of their grid.</summary>
    private sealed class Walk(CaseGrid grid)
    {
        public HashSet<Row> Reached { get; } = new(ReferenceEqualityComparer.Instance);

        public List<int[]> Unspoken { get; } = [];

        public CasesByRows Clashes { get; } = new();

        public CasesByRows Overlaps { get; } = new();

        public SettledCells Demands { get; } = new(grid);

        public void Through(IReadOnlyList<Row> rows, Subject subject, CancellationToken stop)
        {
            foreach (var (indexes, situation) in grid.Cells())
            {
                stop.ThrowIfCancellationRequested();
                var step = Choice.Among(subject, rows, situation);
                Reached.UnionWith(step.Matched);
                switch (step.Finding)
                {
                    case Silent:
                        Unspoken.Add([.. indexes]);
                        break;
                    case Contradicted:
                        Clashes.Add(step.Matched, indexes);
                        break;
                    case Settled:
                        Demands.Add(indexes, step.Matched[0]);
                        if (step.Matched.Count > 1)
                            Overlaps.Add(step.Matched, indexes);
                        break;
                    default:
                        break;
                }
            }
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

        public IEnumerable<(IReadOnlyList<Row> Rows, IReadOnlyList<CaseBox> Cases)> Gathered(
            IReadOnlyList<Axis> axes
        ) => _byRows.Values.Select(entry => (entry.Rows, CaseBox.Gather(axes, entry.Cells)));
    }
}
