namespace Alburnum.Impregnation.Flow;

/// <summary>One cycle of multigrid on the pressure equation, coarsened along the strongest couplings.</summary>
/// <remarks>
/// Cells are paired with their strongest neighbour, twice, and the coarse equations are sums of the fine ones, so that neither
/// grid nor direction need be known: where the grain conducts a thousand times better, it coarsens along the grain.
/// Method as in Notay, "An aggregation-based algebraic multigrid method" (2010), with a plain W-cycle. Remembered.
/// </remarks>
internal sealed class PressureMultigrid
{
    private const int DirectBelow = 60;
    private readonly List<Level> _levels = [];
    private double[] _dense = [];

    public int LevelCount => _levels.Count;

    /// <summary>Takes the finest equations and builds the coarser ones.</summary>
    public void SetUp(int[] rowStart, int[] column, double[] value)
    {
        _levels.Clear();
        var level = new Level(rowStart, column, value);
        _levels.Add(level);
        while (level.Rows > DirectBelow)
        {
            var half = Pairs(level, out var halfCount);
            var middle = Coarse(level, half, halfCount);
            var quarter = Pairs(middle, out var quarterCount);
            var coarse = Coarse(middle, quarter, quarterCount);
            for (var i = 0; i < half.Length; i++)
                half[i] = quarter[half[i]];
            level.Group = half;
            if (coarse.Rows > 0.8 * level.Rows)
                break;
            level = coarse;
            _levels.Add(level);
        }
        Factorise(level);
    }

    /// <summary>Improves x from zero for one right-hand side.</summary>
    public void Cycle(double[] right, double[] x)
    {
        var fine = _levels[0];
        right.AsSpan(0, fine.Rows).CopyTo(fine.Right);
        Array.Clear(fine.X);
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
        level.Sweep(forward: true);
        level.Restrict(coarse);
        Array.Clear(coarse.X);
        Cycle(depth + 1);
        level.Prolong(coarse);
        level.Sweep(forward: false);
        if (depth == 0)
            return;
        level.Sweep(forward: true);
        level.Restrict(coarse);
        Array.Clear(coarse.X);
        Cycle(depth + 1);
        level.Prolong(coarse);
        level.Sweep(forward: false);
    }

    private static int[] Pairs(Level level, out int count)
    {
        var group = new int[level.Rows];
        Array.Fill(group, -1);
        count = 0;
        for (var i = 0; i < level.Rows; i++)
        {
            if (group[i] >= 0)
                continue;
            var best = -1;
            double strongest = 0,
                strongestFree = 0;
            for (var k = level.RowStart[i]; k < level.RowStart[i + 1]; k++)
            {
                var j = level.Column[k];
                var strength = -level.Value[k];
                if (j == i)
                    continue;
                strongest = Math.Max(strongest, strength);
                if (group[j] < 0 && strength > strongestFree)
                    (best, strongestFree) = (j, strength);
            }
            if (best >= 0 && strongestFree >= 0.25 * strongest)
                group[best] = count;
            group[i] = count++;
        }
        return group;
    }

    private static Level Coarse(Level fine, int[] group, int count)
    {
        // Members of each group, listed group by group.
        var start = new int[count + 1];
        foreach (var g in group)
            start[g + 1]++;
        for (var g = 0; g < count; g++)
            start[g + 1] += start[g];
        var member = new int[group.Length];
        var next = start.AsSpan(0, count).ToArray();
        for (var i = 0; i < group.Length; i++)
            member[next[group[i]]++] = i;

        var rowStart = new int[count + 1];
        var column = new int[fine.Column.Length];
        var value = new double[fine.Column.Length];
        var at = new int[count];
        Array.Fill(at, -1);
        var used = 0;
        for (var g = 0; g < count; g++)
        {
            var rowBegin = used;
            for (var m = start[g]; m < start[g + 1]; m++)
            {
                var i = member[m];
                for (var k = fine.RowStart[i]; k < fine.RowStart[i + 1]; k++)
                {
                    var h = group[fine.Column[k]];
                    if (at[h] < rowBegin)
                    {
                        at[h] = used;
                        column[used] = h;
                        value[used++] = fine.Value[k];
                    }
                    else
                    {
                        value[at[h]] += fine.Value[k];
                    }
                }
            }
            rowStart[g + 1] = used;
        }
        return new Level(rowStart, column, value);
    }

    // Plain elimination with row pivots on the coarsest equations; a few sweeps instead where they are still many.
    private void Factorise(Level level)
    {
        var n = level.Rows;
        if (n > 4 * DirectBelow)
        {
            _dense = [];
            return;
        }
        _dense = new double[n * n];
        for (var i = 0; i < n; i++)
        for (var k = level.RowStart[i]; k < level.RowStart[i + 1]; k++)
            _dense[i * n + level.Column[k]] += level.Value[k];
        // Diagonally heavy by construction (storage adds to the diagonal): no exchange of rows is needed.
        for (var p = 0; p < n; p++)
        {
            var pivot = _dense[p * n + p];
            if (pivot == 0)
                pivot = _dense[p * n + p] = 1e-300;
            for (var i = p + 1; i < n; i++)
            {
                var factor = _dense[i * n + p] /= pivot;
                if (factor == 0)
                    continue;
                for (var j = p + 1; j < n; j++)
                    _dense[i * n + j] -= factor * _dense[p * n + j];
            }
        }
    }

    private void Direct(Level level)
    {
        if (_dense.Length == 0)
        {
            for (var sweep = 0; sweep < 10; sweep++)
            {
                level.Sweep(forward: true);
                level.Sweep(forward: false);
            }
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

    private sealed class Level
    {
        private readonly double[] _inverse;

        public Level(int[] rowStart, int[] column, double[] value)
        {
            (RowStart, Column, Value) = (rowStart, column, value);
            X = new double[Rows];
            Right = new double[Rows];
            _inverse = new double[Rows];
            for (var i = 0; i < Rows; i++)
            {
                for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
                    if (column[k] == i)
                        _inverse[i] = value[k] == 0 ? 0 : 1 / value[k];
            }
        }

        public int[] RowStart { get; }
        public int[] Column { get; }
        public double[] Value { get; }
        public double[] X { get; }
        public double[] Right { get; }
        public int[] Group { get; set; } = [];
        public int Rows => RowStart.Length - 1;

        // Gauss–Seidel in place; the diagonal's own part is added back.
        public void Sweep(bool forward)
        {
            var n = Rows;
            var (rowStart, column, value, x, right) = (RowStart, Column, Value, X, Right);
            for (var step = 0; step < n; step++)
            {
                var i = forward ? step : n - 1 - step;
                var sum = right[i];
                var end = rowStart[i + 1];
                for (var k = rowStart[i]; k < end; k++)
                    sum -= value[k] * x[column[k]];
                x[i] += sum * _inverse[i];
            }
        }

        public void Restrict(Level coarse)
        {
            var (rowStart, column, value, x, right) = (RowStart, Column, Value, X, Right);
            Array.Clear(coarse.Right);
            for (var i = 0; i < Rows; i++)
            {
                var sum = right[i];
                for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
                    sum -= value[k] * x[column[k]];
                coarse.Right[Group[i]] += sum;
            }
        }

        public void Prolong(Level coarse)
        {
            for (var i = 0; i < Rows; i++)
                X[i] += coarse.X[Group[i]];
        }
    }
}
