namespace Alburnum.Flow.Partitioning;

/// <summary>Two-way partition of rows: many are gone through as two halves at a time, few in one go.</summary>
/// <param name="splitFrom">Number of rows from which there are two halves.</param>
/// <remarks>Where the halves meet is set by the number of rows alone, so that an answer never depends on the machine's cores.</remarks>
internal sealed class TwoWayPartition(int splitFrom)
{
    /// <summary>What the solver uses. Below the limit a second core would wait longer than it helps.</summary>
    public static TwoWayPartition Usual { get; } = new(100_000);

    /// <summary>First row of the second half; the number of rows where there is none.</summary>
    public int Split(int rows) => rows < splitFrom ? rows : rows / 2;

    /// <summary>Does the parts: from a row up to another, without touching what the other part writes.</summary>
    public void Run(int rows, Action<int, int> part)
    {
        var split = Split(rows);
        if (split == rows)
            part(0, rows);
        else
            Parallel.Invoke(() => part(0, split), () => part(split, rows));
    }

    /// <summary>Sums what the parts come to.</summary>
    public double Sum(int rows, Func<int, int, double> part)
    {
        var split = Split(rows);
        if (split == rows)
            return part(0, rows);
        double first = 0,
            second = 0;
        Parallel.Invoke(() => first = part(0, split), () => second = part(split, rows));
        return first + second;
    }
}
