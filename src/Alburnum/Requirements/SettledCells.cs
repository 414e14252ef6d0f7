namespace Alburnum.Requirements;

/// <summary>The cells of a grid in which one demand holds, by their indexes along the axes.</summary>
internal sealed class SettledCells(CaseGrid grid)
{
    private readonly Dictionary<Cell, Row> _rows = [];

    public void Add(int[] indexes, Row row) => _rows[new([.. indexes])] = row;

    /// <summary>Where, along use class and life and all else equal, a step to the harsher side asks for less.</summary>
    public IEnumerable<RulebookFinding> AskingLess(Subject subject)
    {
        var found = new Dictionary<(Row, Row, Field), RulebookFinding>();
        for (var axis = 0; axis < grid.Axes.Count; axis++)
        {
            var (field, values) = grid.Axes[axis];
            if (field is not (Field.UseClass or Field.Life))
                continue;
            foreach (var (cell, mild) in _rows)
            {
                if (NextAlong(axis, cell) is not { } next || !Strictness.AsksLess(_rows[next].Demand, mild.Demand))
                    continue;
                found.TryAdd(
                    (mild, _rows[next], field),
                    new LessAskedFound(
                        subject,
                        field,
                        new(values[cell.Indexes[axis]], mild),
                        new(values[next.Indexes[axis]], _rows[next]),
                        CaseBox.Gather(grid.Axes, [next.Indexes])
                    )
                );
            }
        }
        return found.Values;
    }

    // The next settled cell towards the harsher side; unknown cells between are passed over.
    private Cell? NextAlong(int axis, Cell from)
    {
        for (var index = from.Indexes[axis] + 1; index < grid.Axes[axis].Values.Count; index++)
        {
            var moved = (int[])from.Indexes.Clone();
            moved[axis] = index;
            var next = new Cell(moved);
            if (_rows.TryGetValue(next, out var found) && found.Demand is not (UnknownCell or OutsideScope))
                return next;
        }
        return null;
    }

    private readonly struct Cell(int[] indexes) : IEquatable<Cell>
    {
        public int[] Indexes { get; } = indexes;

        public bool Equals(Cell other) => Indexes.AsSpan().SequenceEqual(other.Indexes);

        public override bool Equals(object? obj) => obj is Cell other && Equals(other);

        public override int GetHashCode()
        {
            var hash = new HashCode();
            foreach (var index in Indexes)
                hash.Add(index);
            return hash.ToHashCode();
        }
    }
}
