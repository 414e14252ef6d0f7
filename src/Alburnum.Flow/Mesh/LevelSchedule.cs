using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.Mesh;

/// <summary>
/// Level scheduling: an order of the cells in which those that do not touch follow one another. Level 0 has no neighbour of lower number,
/// level n waits for levels below n only; on an even sheet the levels are the diagonals.
/// </summary>
/// <remarks>
/// level(j) = 1 + max level(i) over the neighbours i &lt; j. Elimination and sweeps go from lower to higher numbers, and a cell waits for its
/// neighbours; in rows every cell would wait for the one just before it. Saad, Iterative Methods for Sparse Linear Systems (2nd ed. 2003),
/// 11.6.3. Where cells are in two halves, each half is ordered by itself.
/// </remarks>
internal sealed class LevelSchedule
{
    private readonly int[] _cell;
    private readonly TwoWayPartition _partition;

    private LevelSchedule(int[] cell, TwoWayPartition partition) => (_cell, _partition) = (cell, partition);

    /// <summary>Orders the cells of a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="partition">How its cells are shared between two cores.</param>
    public static LevelSchedule Of(FlowMesh mesh, TwoWayPartition partition)
    {
        // Connections by their first cell: by then that cell's own level is known.
        var connections = Enumerable.Range(0, mesh.First.Length).ToArray();
        Array.Sort(mesh.First.ToArray(), connections);
        var level = new int[mesh.CellCount];
        foreach (var c in connections)
            level[mesh.Second[c]] = Math.Max(level[mesh.Second[c]], level[mesh.First[c]] + 1);
        var split = partition.Split(mesh.CellCount);
        var key = new long[mesh.CellCount];
        for (var i = 0; i < key.Length; i++)
            key[i] = (((i < split ? 0 : (long)key.Length) + level[i]) * key.Length) + i;
        var cell = Enumerable.Range(0, mesh.CellCount).ToArray();
        Array.Sort(key, cell);
        return new LevelSchedule(cell, partition);
    }

    /// <summary>The mesh with its cells in this order.</summary>
    public FlowMesh Ordered(FlowMesh mesh)
    {
        var place = new int[_cell.Length];
        for (var i = 0; i < _cell.Length; i++)
            place[_cell[i]] = i;
        var count = mesh.First.Length;
        var (key, conductance) = (new long[count], mesh.ConductanceM3.ToArray());
        // Those across from one half to the other between those within the first and those within the second.
        var split = _partition.Split(_cell.Length);
        for (var c = 0; c < count; c++)
        {
            var (a, b) = (place[mesh.First[c]], place[mesh.Second[c]]);
            var (first, second) = (Math.Min(a, b), Math.Max(a, b));
            var side =
                first >= split ? 2L
                : second >= split ? 1
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
            Ordered(mesh.VoidM3),
            firsts,
            seconds,
            conductance,
            faceCell,
            mesh.FaceConductanceM3.ToArray()
        );
    }

    /// <summary>Values by the cells' own numbers, in this order.</summary>
    public T[] Ordered<T>(ReadOnlySpan<T> byCell)
    {
        var ordered = new T[_cell.Length];
        for (var i = 0; i < ordered.Length; i++)
            ordered[i] = byCell[_cell[i]];
        return ordered;
    }

    /// <summary>The cell's own number.</summary>
    /// <param name="ordered">Its number in this order.</param>
    public int Own(int ordered) => _cell[ordered];

    /// <summary>Values in this order, by the cells' own numbers.</summary>
    public T[] Back<T>(IReadOnlyList<T> ordered)
    {
        var byCell = new T[_cell.Length];
        for (var i = 0; i < byCell.Length; i++)
            byCell[_cell[i]] = ordered[i];
        return byCell;
    }
}
