using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Impregnation.Flow;

/// <summary>A cell's pair of unknowns in four lanes, so that a 2 × 2 block of four meets it in one multiplication.</summary>
internal static class BlockPair
{
    // Far from the front corrections fade below what a number holds at full speed; adding and taking away a speck clears them.
    private static readonly Vector128<float> Speck = Vector128.Create(1e-20f);

    /// <summary>The pair of a cell, laid twice side by side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<float> Twice(ref float pairs, int cell) =>
        Vector128.Create(Unsafe.ReadUnaligned<double>(ref At(ref pairs, cell))).AsSingle();

    /// <summary>Block times pair, its halves still apart, put together: the pair in the first two lanes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<float> Joined(Vector128<float> parts) =>
        Vector128.Shuffle(parts, Vector128.Create(0, 2, 0, 2)) + Vector128.Shuffle(parts, Vector128.Create(1, 3, 1, 3));

    /// <summary>Writes the pair in the first two lanes to a cell.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Vector128<float> pair, ref float pairs, int cell) =>
        Unsafe.WriteUnaligned(ref At(ref pairs, cell), (pair + Speck - Speck).AsDouble().GetElement(0));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref byte At(ref float pairs, int cell) =>
        ref Unsafe.As<float, byte>(ref Unsafe.Add(ref pairs, 2 * cell));
}
