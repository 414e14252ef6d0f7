using System.Runtime.InteropServices;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Incomplete block LU factors without fill, ILU(0), of 2 × 2 blocks. Where the rows are in two halves, each is factored by itself (block Jacobi).</summary>
/// <remarks>
/// Pᵢ = Dᵢ − Σ Aᵢⱼ·Pⱼ⁻¹·Aⱼᵢ over the neighbours j &lt; i; off the diagonal the blocks stay as they are (the D-ILU form, which is ILU(0) where
/// no two neighbours of a cell are neighbours themselves, as on grids). Meijerink and van der Vorst (1977); Saad, Iterative Methods for
/// Sparse Linear Systems (2nd ed. 2003), 10.3.
/// </remarks>
internal sealed class BlockIlu0<T>(BlockCsrMatrix<T> matrix)
    where T : unmanaged
{
    // Lessened blocks come close to singular where cells level out along the grain, and must be taken as they are: there the factor is all but exact.
    // Only one that rounding has used up altogether is given up for the cell's own.
    private const double LeastDeterminant = 1e-12;

    // Inverse blocks of the diagonal, by rows.
    private readonly T[] _inverse = new T[4 * matrix.Rows];

    // Off the diagonal the blocks times the inverse of their row's, by rows; on it the inverse.
    private readonly T[] _block = new T[4 * matrix.Pattern.Csr.Column.Length];

    /// <summary>Factors the matrix as it now stands.</summary>
    public FactorOutcome Factor() =>
        matrix.Pattern.Csr.Partition.Sum(matrix.Rows, Factor) == 0
            ? FactorOutcome.Factored
            : FactorOutcome.SingularBlock;

    // Number of singular blocks met: the first ends the part.
    private double Factor(int first, int end)
    {
        var (rowStart, upperStart, column) = (
            matrix.Pattern.Csr.RowStart,
            matrix.Pattern.Csr.UpperStart,
            matrix.Pattern.Csr.Column
        );
        var (innerStart, twin) = (matrix.Pattern.Csr.InnerStart, matrix.Pattern.Transpose);
        ref var value = ref MemoryMarshal.GetArrayDataReference(matrix.Value);
        ref var inverses = ref MemoryMarshal.GetArrayDataReference(_inverse);
        ref var block = ref MemoryMarshal.GetArrayDataReference(_block);
        for (var i = first; i < end; i++)
        {
            var at = rowStart[i];
            var own = Block2x2.Load(ref value, at);
            var ownDeterminant = Block2x2.Determinant(own);
            if (ownDeterminant == 0 || !double.IsFinite(ownDeterminant))
                return 1;
            var left = own;
            for (var k = innerStart[i]; k < upperStart[i]; k++)
                left -= Block2x2.Product(
                    Block2x2.Load(ref value, k),
                    Block2x2.Product(Block2x2.Load(ref inverses, column[k]), Block2x2.Load(ref value, twin[k]))
                );
            var determinant = Block2x2.Determinant(left);
            if (!(determinant / ownDeterminant > LeastDeterminant))
                (left, determinant) = (own, ownDeterminant);
            var inverse = Block2x2.Inverse(left, determinant);
            Block2x2.Store(inverse, ref inverses, i);
            Block2x2.Store(inverse, ref block, at);
            for (var k = at + 1; k < rowStart[i + 1]; k++)
                Block2x2.Store(Block2x2.Product(inverse, Block2x2.Load(ref value, k)), ref block, k);
        }
        return 0;
    }

    /// <summary>Solves the factored equations in place: the right-hand side goes in, the unknowns come out.</summary>
    public void Solve(T[] x) => matrix.Pattern.Csr.Partition.Run(matrix.Rows, (first, end) => Solve(x, first, end));

    private void Solve(T[] x, int first, int end)
    {
        var (rowStart, upperStart) = (matrix.Pattern.Csr.RowStart, matrix.Pattern.Csr.UpperStart);
        var (innerStart, innerEnd) = (matrix.Pattern.Csr.InnerStart, matrix.Pattern.Csr.InnerEnd);
        ref var unknowns = ref MemoryMarshal.GetArrayDataReference(x);
        ref var block = ref MemoryMarshal.GetArrayDataReference(_block);
        for (var i = first; i < end; i++)
        {
            var own = Block2x2.Load(ref block, rowStart[i]) * Block2x2.Twice(ref unknowns, i);
            var lower = matrix.Parts(_block, innerStart[i], upperStart[i], ref unknowns);
            Block2x2.StorePair(Block2x2.Joined(own - lower), ref unknowns, i);
        }
        for (var i = end - 1; i >= first; i--)
        {
            var upper = Block2x2.Joined(matrix.Parts(_block, upperStart[i], innerEnd[i], ref unknowns));
            Block2x2.StorePair(Block2x2.Twice(ref unknowns, i) - upper, ref unknowns, i);
        }
    }
}
