namespace Alburnum.Flow.Mesh;

/// <summary>Cells of wood, the connections between neighbours, and the faces that the vessel reaches.</summary>
/// <remarks>
/// Geometry and permeability meet here and nowhere else: a connection carries k·A/d, so the same solver runs in one, two or
/// three dimensions, flat or round. Immutable.
/// </remarks>
public sealed class FlowMesh
{
    private readonly double[] _voidM3;
    private readonly int[] _first;
    private readonly int[] _second;
    private readonly double[] _conductanceM3;
    private readonly int[] _faceCell;
    private readonly double[] _faceConductanceM3;

    /// <summary>Checks that sizes agree, that every number is possible and that every cell named exists.</summary>
    /// <param name="voidM3">Void volume of each cell, m³. Above 0.</param>
    /// <param name="connections">Pairs of neighbours with k·A/d, m³. 0 or more; the first cell has the lower number.</param>
    /// <param name="faces">Cells that the vessel reaches with k·A/d to the cell's middle, m³. 0 or more.</param>
    /// <exception cref="ArgumentException">A cell that does not exist, or a cell joined to itself.</exception>
    public FlowMesh(
        IReadOnlyList<double> voidM3,
        IReadOnlyList<(int First, int Second, double ConductanceM3)> connections,
        IReadOnlyList<(int Cell, double ConductanceM3)> faces
    )
    {
        _voidM3 = [.. voidM3];
        foreach (var volume in _voidM3)
            Require.Positive(volume, "m³", nameof(voidM3));
        _first = new int[connections.Count];
        _second = new int[connections.Count];
        _conductanceM3 = new double[connections.Count];
        for (var c = 0; c < connections.Count; c++)
        {
            (_first[c], _second[c], _conductanceM3[c]) = connections[c];
            if (_first[c] < 0 || _first[c] >= _second[c] || _second[c] >= _voidM3.Length)
                throw new ArgumentException(
                    $"Connection {c} joins cells that are not a rising pair of the mesh.",
                    nameof(connections)
                );
            Require.InRange(_conductanceM3[c], 0, 1, "m³", nameof(connections));
        }
        _faceCell = new int[faces.Count];
        _faceConductanceM3 = new double[faces.Count];
        for (var f = 0; f < faces.Count; f++)
        {
            (_faceCell[f], _faceConductanceM3[f]) = faces[f];
            Require.InRange(_faceCell[f], 0, _voidM3.Length - 1, "(cell)", nameof(faces));
            Require.InRange(_faceConductanceM3[f], 0, 1, "m³", nameof(faces));
        }
    }

    /// <summary>A mesh that was checked before, with its cells numbered anew.</summary>
    internal FlowMesh(
        double[] voidM3,
        int[] first,
        int[] second,
        double[] conductanceM3,
        int[] faceCell,
        double[] faceConductanceM3
    ) =>
        (_voidM3, _first, _second, _conductanceM3, _faceCell, _faceConductanceM3) = (
            voidM3,
            first,
            second,
            conductanceM3,
            faceCell,
            faceConductanceM3
        );

    /// <summary>Number of cells.</summary>
    public int CellCount => _voidM3.Length;

    /// <summary>Void volume of each cell, m³.</summary>
    public ReadOnlySpan<double> VoidM3 => _voidM3;

    /// <summary>First cell of each connection.</summary>
    public ReadOnlySpan<int> First => _first;

    /// <summary>Second cell of each connection, always the higher number.</summary>
    public ReadOnlySpan<int> Second => _second;

    /// <summary>k·A/d of each connection, m³.</summary>
    public ReadOnlySpan<double> ConductanceM3 => _conductanceM3;

    /// <summary>Cell behind each face that the vessel reaches.</summary>
    public ReadOnlySpan<int> FaceCell => _faceCell;

    /// <summary>k·A/d from each face to the middle of its cell, m³.</summary>
    public ReadOnlySpan<double> FaceConductanceM3 => _faceConductanceM3;

    /// <summary>True where every connection joins a cell to the next: a line of cells.</summary>
    internal bool IsLine
    {
        get
        {
            for (var c = 0; c < _first.Length; c++)
                if (_second[c] != _first[c] + 1)
                    return false;
            return true;
        }
    }
}
