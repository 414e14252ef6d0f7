namespace Alburnum.Flow.Partitioning;

/// <summary>Many cells are gone through in two halves at a time, few in one go.</summary>
/// <remarks>
/// Where the halves meet is set by the number of cells alone, so that an answer never depends on the machine's cores. Below the limit a
/// second core would wait longer than it helps.
/// </remarks>
internal static class Halves
{
    private const int Worth = 100_000;

    /// <summary>First cell of the second half; the number of cells where there is none.</summary>
    public static int Middle(int cells) => cells < Worth ? cells : cells / 2;

    /// <summary>Does the parts: from a cell up to another, without touching what the other part writes.</summary>
    public static void Run(int cells, Action<int, int> part)
    {
        var middle = Middle(cells);
        if (middle == cells)
            part(0, cells);
        else
            Parallel.Invoke(() => part(0, middle), () => part(middle, cells));
    }

    /// <summary>Sums what the parts come to.</summary>
    public static double Sum(int cells, Func<int, int, double> part)
    {
        var middle = Middle(cells);
        if (middle == cells)
            return part(0, cells);
        double first = 0,
            second = 0;
        Parallel.Invoke(() => first = part(0, middle), () => second = part(middle, cells));
        return first + second;
    }
}
