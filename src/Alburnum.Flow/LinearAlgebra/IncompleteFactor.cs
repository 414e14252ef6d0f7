using System.Runtime.InteropServices;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>
/// The block equations factored as if elimination joined no new neighbours: off the diagonal the blocks stay as they are, on it each is
/// lessened by what its neighbours of lower number take away.  Where there are two halves,
/// each stands for itself.
/// </summary>
/// <remarks>On even grids this is the incomplete factor without fill (Meijerink and van der Vorst 1977). Remembered.</remarks>
internal sealed class IncompleteFactor<T>(BlockMatrix<T> matrix)
    where T : unmanaged
{
    // Lessened blocks come close to singular where cells level out along the grain, and must be taken as they are: there the factor is all but exact.
    // Only one that rounding has used up altogether is given up for the cell's own.
    private const double LeastDeterminant = 1e-12;

    // Inverse blocks of the diagonal, by rows.
    private readonly T[] _inverse = new T[4 * matrix.Rows];

    // Off the diagonal the blocks times the inverse of their row's, by rows; on it the inverse.
    private readonly T[] _block = new T[4 * matrix.Blocks.Rows.Column.Length];

    /// <summary>Factors the matrix as it now stands; false where a cell's own block is singular.</summary>
    public bool Factor() => Halves.Sum(matrix.Rows, Factor) == 0;

    // Number of singular blocks met: the first ends the part.
    private double Factor(int first, int end)
    {
        var (rowStart, upperStart, column) = (
            matrix.Blocks.Rows.RowStart,
            matrix.Blocks.Rows.UpperStart,
            matrix.Blocks.Rows.Column
        );
        var (innerStart, twin) = (matrix.Blocks.Rows.InnerStart, matrix.Blocks.Twin);
        ref var value = ref MemoryMarshal.GetArrayDataReference(matrix.Value);
        ref var inverses = ref MemoryMarshal.GetArrayDataReference(_inverse);
        ref var block = ref MemoryMarshal.GetArrayDataReference(_block);
        for (var i = first; i < end; i++)
        {
            var at = rowStart[i];
            var own = Quad.Load(ref value, at);
            var ownDeterminant = Quad.Determinant(own);
            if (ownDeterminant == 0 || !double.IsFinite(ownDeterminant))
                return 1;
            var left = own;
            for (var k = innerStart[i]; k < upperStart[i]; k++)
                left -= Quad.Product(
                    Quad.Load(ref value, k),
                    Quad.Product(Quad.Load(ref inverses, column[k]), Quad.Load(ref value, twin[k]))
                );
            var determinant = Quad.Determinant(left);
            if (!(determinant / ownDeterminant > LeastDeterminant))
                (left, determinant) = (own, ownDeterminant);
            var inverse = Quad.Inverse(left, determinant);
            Quad.Store(inverse, ref inverses, i);
            Quad.Store(inverse, ref block, at);
            for (var k = at + 1; k < rowStart[i + 1]; k++)
                Quad.Store(Quad.Product(inverse, Quad.Load(ref value, k)), ref block, k);
        }
        return 0;
    }

    /// <summary>Solves the factored equations in place: the right-hand side goes in, the unknowns come out.</summary>
    public void Solve(T[] x) => Halves.Run(matrix.Rows, (first, end) => Solve(x, first, end));

    private void Solve(T[] x, int first, int end)
    {
        var (rowStart, upperStart) = (matrix.Blocks.Rows.RowStart, matrix.Blocks.Rows.UpperStart);
        var (innerStart, innerEnd) = (matrix.Blocks.Rows.InnerStart, matrix.Blocks.Rows.InnerEnd);
        ref var unknowns = ref MemoryMarshal.GetArrayDataReference(x);
        ref var block = ref MemoryMarshal.GetArrayDataReference(_block);
        for (var i = first; i < end; i++)
        {
            var own = Quad.Load(ref block, rowStart[i]) * Quad.Twice(ref unknowns, i);
            var lower = matrix.Parts(_block, innerStart[i], upperStart[i], ref unknowns);
            Quad.StorePair(Quad.Joined(own - lower), ref unknowns, i);
        }
        for (var i = end - 1; i >= first; i--)
        {
            var upper = Quad.Joined(matrix.Parts(_block, upperStart[i], innerEnd[i], ref unknowns));
            Quad.StorePair(Quad.Twice(ref unknowns, i) - upper, ref unknowns, i);
        }
    }
}
