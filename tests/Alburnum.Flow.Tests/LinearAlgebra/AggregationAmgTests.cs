using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.Tests.LinearAlgebra;

public class AggregationAmgTests
{
    [Fact]
    public void Equations_that_do_not_couple_are_not_grouped_for_ever()
    {
        // Off-diagonals of the wrong sign everywhere, too large to be left to the sweeps: nothing can be grouped.
        const int n = 200;
        var (rowStart, upperStart) = (new int[n + 1], new int[n]);
        var (column, value) = (new List<int>(), new List<float>());
        for (var i = 0; i < n; i++)
        {
            column.Add(i);
            value.Add(2);
            foreach (var j in new[] { i - 1, i + 1 })
                if (j is >= 0 and < n)
                {
                    column.Add(j);
                    value.Add(0.5f);
                }
            upperStart[i] = rowStart[i] + (i > 0 ? 2 : 1);
            rowStart[i + 1] = column.Count;
        }
        var multigrid = new AggregationAmg<float>();
        multigrid.Coarsen(
            new CsrPattern(rowStart, upperStart, [.. column], new TwoWayPartition(int.MaxValue)),
            [.. value]
        );
        var x = new float[n];
        multigrid.Cycle([.. Enumerable.Repeat(1f, n)], x);

        Assert.All(x, part => Assert.InRange(part, 0.2, 0.6));
    }
}
