namespace Alburnum.Impregnation.Flow;

/// <summary>A sparse matrix of 2 × 2 blocks with one row per cell: the cell itself first, then its neighbours.</summary>
internal sealed class BlockMatrix
{
    public BlockMatrix(FlowMesh mesh)
    {
        var cells = mesh.CellCount;
        RowStart = new int[cells + 1];
        for (var i = 0; i < cells; i++)
            RowStart[i + 1] = 1;
        for (var c = 0; c < mesh.First.Length; c++)
        {
            RowStart[mesh.First[c] + 1]++;
            RowStart[mesh.Second[c] + 1]++;
        }
        for (var i = 0; i < cells; i++)
            RowStart[i + 1] += RowStart[i];
        Column = new int[RowStart[cells]];
        Value = new double[4 * RowStart[cells]];
        FirstToSecond = new int[mesh.First.Length];
        SecondToFirst = new int[mesh.First.Length];
        var next = new int[cells];
        for (var i = 0; i < cells; i++)
        {
            Column[RowStart[i]] = i;
            next[i] = RowStart[i] + 1;
        }
        for (var c = 0; c < mesh.First.Length; c++)
        {
            var (i, j) = (mesh.First[c], mesh.Second[c]);
            Column[FirstToSecond[c] = next[i]++] = j;
            Column[SecondToFirst[c] = next[j]++] = i;
        }
    }

    public int[] RowStart { get; }

    public int[] Column { get; }

    /// <summary>Blocks row by row: liquid by pressure, liquid by saturation, air by pressure, air by saturation.</summary>
    public double[] Value { get; }

    public int[] FirstToSecond { get; }

    public int[] SecondToFirst { get; }

    public int Rows => RowStart.Length - 1;

    public void Multiply(double[] x, double[] y)
    {
        var (rowStart, column, value) = (RowStart, Column, Value);
        for (var i = 0; i < Rows; i++)
        {
            double a = 0,
                b = 0;
            for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
            {
                var j = 2 * column[k];
                var block = value.AsSpan(4 * k, 4);
                a += block[0] * x[j] + block[1] * x[j + 1];
                b += block[2] * x[j] + block[3] * x[j + 1];
            }
            y[2 * i] = a;
            y[2 * i + 1] = b;
        }
    }
}
