using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Impregnation.Flow;

/// <summary>
/// The block equations factored as if elimination joined no new neighbours: off the diagonal the blocks stay as they are, on it each is
/// lessened by what its neighbours of lower number take away. Kept in single precision: it only points the way. Where there are two halves,
/// each stands for itself.
/// </summary>
/// <remarks>On even grids this is the incomplete factor without fill (Meijerink and van der Vorst 1977). Remembered.</remarks>
internal sealed class IncompleteFactor(BlockMatrix matrix)
{
    // A lessened block this much nearer to singular than the cell's own is given up for the cell's own.
    private const double LeastDeterminant = 1e-3;

    // Inverse blocks of the diagonal, by rows.
    private readonly float[] _inverse = new float[4 * matrix.Rows];

    // Off the diagonal the blocks times the inverse of their row's, by rows; on it the inverse.
    private readonly float[] _block = new float[4 * matrix.Layout.Column.Length];

    /// <summary>Factors the matrix as it now stands; false where a cell's own block is singular.</summary>
    public bool Factor() => Halves.Sum(matrix.Rows, Factor) == 0;

    // Number of singular blocks met: the first ends the part.
    private double Factor(int first, int end)
    {
        var (rowStart, upperStart, column) = (matrix.Layout.RowStart, matrix.Layout.UpperStart, matrix.Layout.Column);
        var (innerStart, twin) = (matrix.Layout.InnerStart, matrix.Twin);
        ref var value = ref MemoryMarshal.GetArrayDataReference(matrix.Value);
        ref var inverses = ref MemoryMarshal.GetArrayDataReference(_inverse);
        ref var block = ref MemoryMarshal.GetArrayDataReference(_block);
        for (var i = first; i < end; i++)
        {
            var at = rowStart[i];
            var own = Block(ref value, at);
            var ownDeterminant = Determinant(own);
            if (ownDeterminant == 0 || !double.IsFinite(ownDeterminant))
                return 1;
            var left = own;
            for (var k = innerStart[i]; k < upperStart[i]; k++)
                left -= Product(
                    Block(ref value, k),
                    Product(Block(ref inverses, column[k]), Block(ref value, twin[k]))
                );
            var determinant = Determinant(left);
            if (!(determinant / ownDeterminant > LeastDeterminant))
                (left, determinant) = (own, ownDeterminant);
            var inverse = Inverse(left, determinant);
            inverse.StoreUnsafe(ref inverses, (nuint)(4 * i));
            inverse.StoreUnsafe(ref block, (nuint)(4 * at));
            for (var k = at + 1; k < rowStart[i + 1]; k++)
                Product(inverse, Block(ref value, k)).StoreUnsafe(ref block, (nuint)(4 * k));
        }
        return 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<float> Block(ref float blocks, int k) => Vector128.LoadUnsafe(ref blocks, (nuint)(4 * k));

    // Blocks lie row by row.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<float> Product(Vector128<float> a, Vector128<float> b) =>
        Vector128.Shuffle(a, Vector128.Create(0, 0, 2, 2)) * Vector128.Shuffle(b, Vector128.Create(0, 1, 0, 1))
        + Vector128.Shuffle(a, Vector128.Create(1, 1, 3, 3)) * Vector128.Shuffle(b, Vector128.Create(2, 3, 2, 3));

    // In double precision: a difference of products, and smaller than single precision holds.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Determinant(Vector128<float> block) =>
        ((double)block.GetElement(0) * block.GetElement(3)) - ((double)block.GetElement(1) * block.GetElement(2));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<float> Inverse(Vector128<float> block, double determinant)
    {
        var by = 1 / determinant;
        return Vector128.Create(
            (float)(by * block.GetElement(3)),
            (float)(-by * block.GetElement(1)),
            (float)(-by * block.GetElement(2)),
            (float)(by * block.GetElement(0))
        );
    }

    /// <summary>Solves the factored equations in place: the right-hand side goes in, the unknowns come out.</summary>
    public void Solve(float[] x) => Halves.Run(matrix.Rows, (first, end) => Solve(x, first, end));

    private void Solve(float[] x, int first, int end)
    {
        var (rowStart, upperStart) = (matrix.Layout.RowStart, matrix.Layout.UpperStart);
        var (innerStart, innerEnd) = (matrix.Layout.InnerStart, matrix.Layout.InnerEnd);
        ref var unknowns = ref MemoryMarshal.GetArrayDataReference(x);
        ref var block = ref MemoryMarshal.GetArrayDataReference(_block);
        for (var i = first; i < end; i++)
        {
            var own = Block(ref block, rowStart[i]) * BlockPair.Twice(ref unknowns, i);
            var lower = matrix.Parts(_block, innerStart[i], upperStart[i], ref unknowns);
            BlockPair.Store(BlockPair.Joined(own - lower), ref unknowns, i);
        }
        for (var i = end - 1; i >= first; i--)
        {
            var upper = BlockPair.Joined(matrix.Parts(_block, upperStart[i], innerEnd[i], ref unknowns));
            BlockPair.Store(BlockPair.Twice(ref unknowns, i) - upper, ref unknowns, i);
        }
    }
}
