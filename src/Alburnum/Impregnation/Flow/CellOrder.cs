namespace Alburnum.Impregnation.Flow;

/// <summary>
/// An order of the cells in which those that do not touch follow one another: first the cells without a neighbour of lower number, then
/// those that wait for them only, and so on; on an even sheet the diagonals.
/// </summary>
/// <remarks>
/// Elimination and sweeps go from lower to higher numbers, and a cell waits for its neighbours. In rows every cell would wait for the one
/// just before it. What is computed is the same.
/// </remarks>
internal sealed class CellOrder
{
    private readonly int[] _cell;

    private CellOrder(int[] cell) => _cell = cell;

    /// <summary>Orders the cells of a mesh.</summary>
    public static CellOrder Of(FlowMesh mesh)
    {
        var matrix = new BlockMatrix(mesh);
        var key = new long[mesh.CellCount];
        for (var i = 0; i < key.Length; i++)
        {
            long wave = 0;
            for (var k = matrix.RowStart[i] + 1; k < matrix.UpperStart[i]; k++)
                wave = Math.Max(wave, key[matrix.Column[k]] / key.Length + 1);
            key[i] = wave * key.Length + i;
        }
        var cell = Enumerable.Range(0, mesh.CellCount).ToArray();
        Array.Sort(key, cell);
        return new CellOrder(cell);
    }

    /// <summary>The problem with its cells in this order.</summary>
    public FlowProblem Ordered(FlowProblem problem) =>
        problem with
        {
            Mesh = Ordered(problem.Mesh),
            InitialSaturation = InOrder<double>([.. problem.InitialSaturation]),
        };

    private FlowMesh Ordered(FlowMesh mesh)
    {
        var place = new int[_cell.Length];
        for (var i = 0; i < _cell.Length; i++)
            place[_cell[i]] = i;
        var joins = new (int First, int Second, double ConductanceM3)[mesh.First.Length];
        for (var c = 0; c < joins.Length; c++)
        {
            var (a, b) = (place[mesh.First[c]], place[mesh.Second[c]]);
            joins[c] = (Math.Min(a, b), Math.Max(a, b), mesh.ConductanceM3[c]);
        }
        Array.Sort(joins, (x, y) => (x.First, x.Second).CompareTo((y.First, y.Second)));
        var faces = new (int, double)[mesh.FaceCell.Length];
        for (var f = 0; f < faces.Length; f++)
            faces[f] = (place[mesh.FaceCell[f]], mesh.FaceConductanceM3[f]);
        return new FlowMesh(InOrder(mesh.VoidM3), joins, faces);
    }

    private T[] InOrder<T>(ReadOnlySpan<T> byCell)
    {
        var ordered = new T[_cell.Length];
        for (var i = 0; i < ordered.Length; i++)
            ordered[i] = byCell[_cell[i]];
        return ordered;
    }

    /// <summary>The answer by the cells' own numbers.</summary>
    public FlowRun Back(FlowRun run) =>
        run with
        {
            Ending = run.Ending switch
            {
                StepTooSmall small => small with { Cell = _cell[small.Cell] },
                IterationLimit limit => limit with { Cell = _cell[limit.Cell] },
                var settled => settled,
            },
            Saturation = Back(run.Saturation),
            PeakGain = Back(run.PeakGain),
            ArrivalMinutes = Back(run.ArrivalMinutes),
            AirKPa = Back(run.AirKPa),
        };

    private T[] Back<T>(IReadOnlyList<T> ordered)
    {
        var byCell = new T[_cell.Length];
        for (var i = 0; i < byCell.Length; i++)
            byCell[_cell[i]] = ordered[i];
        return byCell;
    }
}
