using Alburnum.Flow.Mesh;

namespace Alburnum.Flow.Stepping;

/// <summary>How much of the liquid in each cell is solution that came in, and how much the wood's own water.</summary>
/// <remarks>
/// In a cell the two are mixed. Over a step, with the flows of liquid q known: A − before = Δt·(Σ q in · c there − Σ q out · c), A = c · liquid held,
/// c at the end of the step and on the side that the liquid comes from. Its matrix is diagonally dominant, and sweeps there and back
/// settle it in two where the liquid flows one way. Molecular diffusion is left out: a charge is over before it counts. On a line with one
/// face nothing need mix: solution lies before water, last in, first out.
/// </remarks>
internal sealed class SolutionAccount(FlowMesh mesh, double[] liquidHeld)
{
    private const double Enough = 1e-10;
    private const int MostSweeps = 200;
    private readonly double[] _before = new double[mesh.CellCount];
    private readonly double[] _share = new double[mesh.CellCount];
    private readonly double[] _out = new double[mesh.CellCount];
    private readonly double[] _faceIn = new double[mesh.CellCount];
    private readonly (int Cell, double M3)[][] _in = new (int, double)[mesh.CellCount][];
    private readonly int[] _inCount = new int[mesh.CellCount];

    private readonly bool _isOneWay = mesh.IsLine && mesh.FaceCell is [0];

    /// <summary>Solution in each cell, m³.</summary>
    public double[] HeldM3 { get; } = new double[mesh.CellCount];

    /// <summary>Books a step.</summary>
    /// <param name="connections">Liquid that flowed from the first to the second cell of each connection, m³.</param>
    /// <param name="faces">Liquid that flowed out through each face, m³.</param>
    public void Keep(double[] connections, double[] faces)
    {
        if (_isOneWay)
        {
            Stack(HeldM3.Sum() - faces[0]);
            return;
        }
        Gather(connections, faces);
        HeldM3.CopyTo(_before, 0);
        for (var sweep = 0; sweep < MostSweeps; sweep++)
        {
            double moved = 0;
            for (var q = 0; q < _share.Length; q++)
            {
                var i = sweep % 2 == 0 ? q : _share.Length - 1 - q;
                var solution = _before[i] + _faceIn[i];
                for (var n = 0; n < _inCount[i]; n++)
                    solution += _in[i][n].M3 * _share[_in[i][n].Cell];
                var liquid = liquidHeld[2 * i] + _out[i];
                var share = liquid > 0 ? Math.Clamp(solution / liquid, 0, 1) : 0;
                moved = Math.Max(moved, Math.Abs(share - _share[i]));
                _share[i] = share;
            }
            if (moved < Enough)
                break;
        }
        for (var i = 0; i < _share.Length; i++)
            HeldM3[i] = _share[i] * Math.Max(0, liquidHeld[2 * i]);
    }

    // From the face inwards, each cell's liquid is solution until there is no more.
    private void Stack(double solution)
    {
        for (var i = 0; i < HeldM3.Length; i++)
        {
            HeldM3[i] = Math.Clamp(solution, 0, Math.Max(0, liquidHeld[2 * i]));
            solution -= HeldM3[i];
        }
    }

    // What flows into each cell from where, and what flows out of it.
    private void Gather(double[] connections, double[] faces)
    {
        Array.Clear(_out);
        Array.Clear(_faceIn);
        Array.Clear(_inCount);
        for (var c = 0; c < connections.Length; c++)
        {
            var (from, to) = connections[c] >= 0 ? (mesh.First[c], mesh.Second[c]) : (mesh.Second[c], mesh.First[c]);
            var flow = Math.Abs(connections[c]);
            _out[from] += flow;
            _in[to] ??= new (int, double)[8];
            if (_inCount[to] == _in[to].Length)
                Array.Resize(ref _in[to], 2 * _in[to].Length);
            _in[to][_inCount[to]++] = (from, flow);
        }
        for (var f = 0; f < faces.Length; f++)
            if (faces[f] >= 0)
                _out[mesh.FaceCell[f]] += faces[f];
            else
                _faceIn[mesh.FaceCell[f]] -= faces[f];
    }
}
