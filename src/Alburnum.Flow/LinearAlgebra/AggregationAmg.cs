using System.Numerics;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Algebraic multigrid by plain aggregation: one W-cycle for a pressure equation, coarsened along the strongest couplings.</summary>
/// <remarks>
/// Rows are paired with their strongest neighbour, three times over, and the coarse equations are sums of the fine ones (A_c = Pᵀ·A·P with
/// P of zeros and ones), so that neither grid nor direction need be known: where the grain conducts a thousand times better, it coarsens
/// along the grain. Notay, "An aggregation-based algebraic multigrid method" (2010), here with Gauss–Seidel smoothing and a plain W-cycle.
/// </remarks>
internal sealed class AggregationAmg<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    // Pairings from one level to the next: three make it coarser by about eight.
    private const int Pairings = 3;
    private const int DirectBelow = 40;
    private const int Free = -2;
    private const int Alone = -1;

    // A cell whose storage outweighs its neighbours this far is settled by the sweeps and left out of the coarse equations.
    private static readonly T Loose = T.CreateChecked(0.2);
    private static readonly T Quarter = T.CreateChecked(0.25);

    private readonly List<AmgLevel<T>> _levels = [];
    private T[] _dense = [];

    /// <summary>Takes the finest equations, aggregates their rows and builds the coarser equations.</summary>
    /// <param name="pattern">Where the entries lie.</param>
    /// <param name="value">The entries; kept, so that <see cref="Refresh"/> sees what is written there later.</param>
    public void Coarsen(CsrPattern pattern, T[] value)
    {
        _levels.Clear();
        var level = new AmgLevel<T>(pattern, value);
        _levels.Add(level);
        while (level.Rows > DirectBelow)
        {
            var split = level.Pattern.Partition.Split(level.Rows);
            var aggregate = Pairs(level, ref split, out var count);
            var coarse = Coarse(level, aggregate, count);
            for (var pairing = 1; pairing < Pairings; pairing++)
            {
                var pair = Pairs(coarse, ref split, out count);
                for (var i = 0; i < aggregate.Length; i++)
                    aggregate[i] = aggregate[i] < 0 ? Alone : pair[aggregate[i]];
                coarse = Coarse(level, aggregate, count);
            }
            // None left to aggregate, or none that couples to another: more levels would not be coarser.
            if (count == 0 || count > 0.8 * level.Rows)
                break;
            _levels.Add(level = coarse);
        }
        Refresh();
    }

    /// <summary>Sums the coarse equations anew from the finest, keeping the aggregates.</summary>
    public void Refresh()
    {
        for (var depth = 0; depth + 1 < _levels.Count; depth++)
            _levels[depth].SumInto(_levels[depth + 1]);
        foreach (var level in _levels)
            level.Invert();
        Factorise(_levels[^1]);
    }

    /// <summary>Improves x from zero for one right-hand side.</summary>
    public void Cycle(T[] right, T[] x)
    {
        var fine = _levels[0];
        right.AsSpan(0, fine.Rows).CopyTo(fine.Right);
        Cycle(0);
        fine.X.AsSpan().CopyTo(x);
    }

    private void Cycle(int depth)
    {
        var level = _levels[depth];
        if (depth == _levels.Count - 1)
        {
            Direct(level);
            return;
        }
        var coarse = _levels[depth + 1];
        level.SweepFromZero();
        level.RestrictAfterSweepFromZero(coarse);
        Cycle(depth + 1);
        level.Prolong(coarse);
        level.Sweep(forward: false);
        if (depth == 0)
            return;
        level.Sweep(forward: true);
        level.Restrict(coarse);
        Cycle(depth + 1);
        level.Prolong(coarse);
        level.Sweep(forward: false);
    }

    // Pairs lie within one half of the rows; the halves meet at the same place among the aggregates afterwards.
    private static int[] Pairs(AmgLevel<T> level, ref int split, out int count)
    {
        var aggregate = new int[level.Rows];
        Array.Fill(aggregate, Free);
        count = 0;
        var between = split;
        for (var i = 0; i < level.Rows; i++)
        {
            if (i == between)
                split = count;
            if (aggregate[i] != Free)
                continue;
            var best = -1;
            T strongest = T.Zero,
                strongestFree = T.Zero,
                diagonal = T.Zero,
                others = T.Zero;
            for (var k = level.Pattern.RowStart[i]; k < level.Pattern.RowStart[i + 1]; k++)
            {
                var j = level.Pattern.Column[k];
                var strength = -level.Value[k];
                if (j == i)
                {
                    diagonal = level.Value[k];
                    continue;
                }
                others += T.Abs(strength);
                strongest = T.Max(strongest, strength);
                if (aggregate[j] == Free && strength > strongestFree && j < between == i < between)
                    (best, strongestFree) = (j, strength);
            }
            if (others < Loose * diagonal)
            {
                aggregate[i] = Alone;
                continue;
            }
            if (best >= 0 && strongestFree >= Quarter * strongest)
                aggregate[best] = count;
            aggregate[i] = count++;
        }
        if (between >= level.Rows)
            split = count;
        return aggregate;
    }

    private static AmgLevel<T> Coarse(AmgLevel<T> fine, int[] aggregate, int count)
    {
        // Members of each aggregate, listed one aggregate after another.
        var start = new int[count + 1];
        foreach (var g in aggregate)
            if (g >= 0)
                start[g + 1]++;
        for (var g = 0; g < count; g++)
            start[g + 1] += start[g];
        var member = new int[aggregate.Length];
        var next = start.AsSpan(0, count).ToArray();
        for (var i = 0; i < aggregate.Length; i++)
            if (aggregate[i] >= 0)
                member[next[aggregate[i]]++] = i;

        var rowStart = new int[count + 1];
        var column = new int[fine.Pattern.Column.Length];
        var into = new int[fine.Pattern.Column.Length];
        Array.Fill(into, -1);
        var at = new int[count];
        Array.Fill(at, -1);
        var used = 0;
        for (var g = 0; g < count; g++)
        {
            var rowBegin = used;
            for (var m = start[g]; m < start[g + 1]; m++)
            {
                var i = member[m];
                for (var k = fine.Pattern.RowStart[i]; k < fine.Pattern.RowStart[i + 1]; k++)
                {
                    var h = aggregate[fine.Pattern.Column[k]];
                    if (h < 0)
                        continue;
                    if (at[h] < rowBegin)
                    {
                        at[h] = used;
                        column[used++] = h;
                    }
                    into[k] = at[h];
                }
            }
            rowStart[g + 1] = used;
        }
        var upperStart = SortRows(rowStart, column, into);
        (fine.Aggregate, fine.Into) = ([.. aggregate], into);
        var pattern = new CsrPattern(rowStart, upperStart, column.AsSpan(0, used).ToArray(), fine.Pattern.Partition);
        var coarse = new AmgLevel<T>(pattern, new T[used]);
        fine.SumInto(coarse);
        return coarse;
    }

    // Own entry first, then lower columns, then higher ones; the entries summed into a row follow it.
    private static int[] SortRows(int[] rowStart, int[] column, int[] into)
    {
        var entries = rowStart[^1];
        var (order, place) = (new int[entries], new int[entries]);
        var upperStart = new int[rowStart.Length - 1];
        for (var k = 0; k < entries; k++)
            order[k] = k;
        for (var g = 0; g < upperStart.Length; g++)
        {
            var (begin, end) = (rowStart[g], rowStart[g + 1]);
            for (var k = begin; k < end; k++)
                column[k] = column[k] == g ? -1 : column[k];
            Array.Sort(column, order, begin, end - begin);
            column[begin] = g;
            var upper = begin + 1;
            while (upper < end && column[upper] < g)
                upper++;
            upperStart[g] = upper;
        }
        for (var k = 0; k < entries; k++)
            place[order[k]] = k;
        for (var k = 0; k < into.Length; k++)
            if (into[k] >= 0)
                into[k] = place[into[k]];
        return upperStart;
    }

    // Plain elimination on the coarsest equations; sweeps instead where they are many, as they then stand almost alone.
    private void Factorise(AmgLevel<T> level)
    {
        var n = level.Rows;
        if (n > 3 * DirectBelow)
        {
            _dense = [];
            return;
        }
        _dense = new T[n * n];
        for (var i = 0; i < n; i++)
        for (var k = level.Pattern.RowStart[i]; k < level.Pattern.RowStart[i + 1]; k++)
            _dense[i * n + level.Pattern.Column[k]] += level.Value[k];
        // Diagonally heavy by construction (storage adds to the diagonal): no exchange of rows is needed.
        for (var p = 0; p < n; p++)
        {
            var pivot = _dense[p * n + p];
            if (pivot == T.Zero)
                pivot = _dense[p * n + p] = T.CreateChecked(1e-30);
            for (var i = p + 1; i < n; i++)
            {
                var factor = _dense[i * n + p] /= pivot;
                if (factor == T.Zero)
                    continue;
                for (var j = p + 1; j < n; j++)
                    _dense[i * n + j] -= factor * _dense[p * n + j];
            }
        }
    }

    private void Direct(AmgLevel<T> level)
    {
        if (_dense.Length == 0)
        {
            level.SweepFromZero();
            level.Sweep(forward: false);
            level.Sweep(forward: true);
            level.Sweep(forward: false);
            return;
        }
        var n = level.Rows;
        var x = level.X;
        for (var i = 0; i < n; i++)
        {
            var sum = level.Right[i];
            for (var j = 0; j < i; j++)
                sum -= _dense[i * n + j] * x[j];
            x[i] = sum;
        }
        for (var i = n - 1; i >= 0; i--)
        {
            var sum = x[i];
            for (var j = i + 1; j < n; j++)
                sum -= _dense[i * n + j] * x[j];
            x[i] = sum / _dense[i * n + i];
        }
    }
}
