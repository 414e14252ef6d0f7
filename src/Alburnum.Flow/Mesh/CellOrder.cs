using Alburnum.Flow.Partitioning;
using Alburnum.Flow.Stepping;

namespace Alburnum.Flow.Mesh;

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
        // Connections by their first cell: by then that cell's own wave is known.
        var connections = Enumerable.Range(0, mesh.First.Length).ToArray();
        Array.Sort(mesh.First.ToArray(), connections);
        var wave = new int[mesh.CellCount];
        foreach (var c in connections)
            wave[mesh.Second[c]] = Math.Max(wave[mesh.Second[c]], wave[mesh.First[c]] + 1);
        var middle = Halves.Middle(mesh.CellCount);
        var key = new long[mesh.CellCount];
        for (var i = 0; i < key.Length; i++)
            key[i] = (((i < middle ? 0 : (long)key.Length) + wave[i]) * key.Length) + i;
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
        var count = mesh.First.Length;
        var (key, conductance) = (new long[count], mesh.ConductanceM3.ToArray());
        // Those across from one half to the other between those within the first and those within the second.
        var middle = Halves.Middle(_cell.Length);
        for (var c = 0; c < count; c++)
        {
            var (a, b) = (place[mesh.First[c]], place[mesh.Second[c]]);
            var (first, second) = (Math.Min(a, b), Math.Max(a, b));
            var side =
                first >= middle ? 2L
                : second >= middle ? 1
                : 0;
            key[c] = ((side * place.Length) + first) * place.Length + second;
        }
        Array.Sort(key, conductance);
        var (firsts, seconds) = (new int[count], new int[count]);
        for (var c = 0; c < count; c++)
        {
            seconds[c] = (int)(key[c] % place.Length);
            firsts[c] = (int)(key[c] / place.Length % place.Length);
        }
        var faceCell = new int[mesh.FaceCell.Length];
        for (var f = 0; f < faceCell.Length; f++)
            faceCell[f] = place[mesh.FaceCell[f]];
        return new FlowMesh(
            InOrder(mesh.VoidM3),
            firsts,
            seconds,
            conductance,
            faceCell,
            mesh.FaceConductanceM3.ToArray()
        );
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
