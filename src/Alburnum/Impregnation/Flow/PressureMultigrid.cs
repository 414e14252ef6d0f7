namespace Alburnum.Impregnation.Flow;

/// <summary>One cycle of multigrid on the pressure equation, coarsened along the strongest couplings.</summary>
/// <remarks>
/// Cells are paired with their strongest neighbour, twice, and the coarse equations are sums of the fine ones, so that neither
/// grid nor direction need be known: where the grain conducts a thousand times better, it coarsens along the grain.
/// Method as in Notay, "An aggregation-based algebraic multigrid method" (2010), with a plain W-cycle. Remembered.
/// </remarks>
internal sealed class PressureMultigrid
{
    private const int DirectBelow = 40;
    private const int Free = -2;
    private const int Alone = -1;

    // A cell whose storage outweighs its neighbours this far is settled by the sweeps and left out of the coarse equations.
    private const double Loose = 0.2;

    // A group moves as one, which makes the coarse equations too stiff: their answer falls short by about this factor.
    private const double Stretch = 1.4;

    // Clears numbers too small to matter, which would slow the sweeps a hundredfold.
    private const double Speck = 1e-150;
    private readonly List<Level> _levels = [];
    private double[] _dense = [];

    public int LevelCount => _levels.Count;

    /// <summary>Takes the finest equations, groups their cells and builds the coarser equations.</summary>
    /// <param name="rowStart">Where each row starts.</param>
    /// <param name="column">Column of each entry.</param>
    /// <param name="value">The entries; kept, so that <see cref="Refresh"/> sees what is written there later.</param>
    public void Group(int[] rowStart, int[] column, double[] value)
    {
        _levels.Clear();
        var level = new Level(rowStart, column, value);
        _levels.Add(level);
        while (level.Rows > DirectBelow)
        {
            var half = Pairs(level, out var halfCount);
            var middle = Coarse(level, half, halfCount);
            var quarter = Pairs(middle, out var quarterCount);
            for (var i = 0; i < half.Length; i++)
                half[i] = half[i] < 0 ? Alone : quarter[half[i]];
            // None left to group, or none that couples to another: more levels would not be coarser.
            if (quarterCount == 0 || quarterCount > 0.8 * level.Rows)
                break;
            var coarse = Coarse(level, half, quarterCount);
            level.Group = half;
            level = coarse;
            _levels.Add(level);
        }
        Refresh();
    }

    /// <summary>Sums the coarse equations anew from the finest, keeping the groups.</summary>
    public void Refresh()
    {
        for (var depth = 0; depth + 1 < _levels.Count; depth++)
            _levels[depth].SumInto(_levels[depth + 1]);
        foreach (var level in _levels)
            level.Invert();
        Factorise(_levels[^1]);
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
        Array.Fill(group, Free);
        count = 0;
        for (var i = 0; i < level.Rows; i++)
        {
            if (group[i] != Free)
                continue;
            var best = -1;
            double strongest = 0,
                strongestFree = 0,
                diagonal = 0,
                others = 0;
            for (var k = level.RowStart[i]; k < level.RowStart[i + 1]; k++)
            {
                var j = level.Column[k];
                var strength = -level.Value[k];
                if (j == i)
                {
                    diagonal = level.Value[k];
                    continue;
                }
                others += Math.Abs(strength);
                strongest = Math.Max(strongest, strength);
                if (group[j] == Free && strength > strongestFree)
                    (best, strongestFree) = (j, strength);
            }
            if (others < Loose * diagonal)
            {
                group[i] = Alone;
                continue;
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
            if (g >= 0)
                start[g + 1]++;
        for (var g = 0; g < count; g++)
            start[g + 1] += start[g];
        var member = new int[group.Length];
        var next = start.AsSpan(0, count).ToArray();
        for (var i = 0; i < group.Length; i++)
            if (group[i] >= 0)
                member[next[group[i]]++] = i;

        var rowStart = new int[count + 1];
        var column = new int[fine.Column.Length];
        var value = new double[fine.Column.Length];
        var into = new int[fine.Column.Length];
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
                    into[k] = -1;
                    if (h < 0)
                        continue;
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
                    into[k] = at[h];
                }
            }
            rowStart[g + 1] = used;
        }
        fine.Into = into;
        return new Level(rowStart, column.AsSpan(0, used).ToArray(), value.AsSpan(0, used).ToArray());
    }

    // Plain elimination on the coarsest equations; sweeps instead where they are many, as they then stand almost alone.
    private void Factorise(Level level)
    {
        var n = level.Rows;
        if (n > 3 * DirectBelow)
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
            for (var sweep = 0; sweep < 2; sweep++)
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
        }

        public int[] RowStart { get; }
        public int[] Column { get; }
        public double[] Value { get; }
        public double[] X { get; }
        public double[] Right { get; }
        public int[] Group { get; set; } = [];

        // Entry of the coarse equations that each entry is summed into; -1 where into none.
        public int[] Into { get; set; } = [];
        public int Rows => RowStart.Length - 1;

        public void SumInto(Level coarse)
        {
            Array.Clear(coarse.Value);
            for (var i = 0; i < Rows; i++)
            {
                if (Group[i] < 0)
                    continue;
                for (var k = RowStart[i]; k < RowStart[i + 1]; k++)
                    if (Into[k] >= 0)
                        coarse.Value[Into[k]] += Value[k];
            }
        }

        public void Invert()
        {
            for (var i = 0; i < Rows; i++)
            {
                for (var k = RowStart[i]; k < RowStart[i + 1]; k++)
                    if (Column[k] == i)
                        _inverse[i] = Value[k] == 0 ? 0 : 1 / Value[k];
            }
        }

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
                x[i] = x[i] + sum * _inverse[i] + Speck - Speck;
            }
        }

        public void Restrict(Level coarse)
        {
            var (rowStart, column, value, x, right) = (RowStart, Column, Value, X, Right);
            Array.Clear(coarse.Right);
            for (var i = 0; i < Rows; i++)
            {
                var g = Group[i];
                if (g < 0)
                    continue;
                var sum = right[i];
                for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
                    sum -= value[k] * x[column[k]];
                coarse.Right[g] += sum;
            }
        }

        public void Prolong(Level coarse)
        {
            for (var i = 0; i < Rows; i++)
                if (Group[i] >= 0)
                    X[i] += Stretch * coarse.X[Group[i]];
        }
    }
}
