using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>
/// A 2 × 2 block, or a cell's pair of unknowns laid twice side by side, in four lanes, so that block and pair meet in one multiplication. Single
/// precision uses the lower four of eight.
/// </summary>
internal static class Block2x2
{
    // Far from the front corrections fade below what a number holds at full speed; adding and taking away a speck clears them.
    private static readonly Vector256<float> FloatSpeck = Vector256.Create(1e-20f);
    private static readonly Vector256<double> DoubleSpeck = Vector256.Create(1e-150);

    /// <summary>A block.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<T> Load<T>(ref T blocks, int k)
        where T : unmanaged =>
        typeof(T) == typeof(float)
            ? Vector128.LoadUnsafe(ref blocks, (nuint)(4 * k)).ToVector256()
            : Vector256.LoadUnsafe(ref blocks, (nuint)(4 * k));

    /// <summary>Writes a block.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store<T>(Vector256<T> block, ref T blocks, int k)
        where T : unmanaged
    {
        if (typeof(T) == typeof(float))
            block.GetLower().StoreUnsafe(ref blocks, (nuint)(4 * k));
        else
            block.StoreUnsafe(ref blocks, (nuint)(4 * k));
    }

    /// <summary>A block of its four entries, row by row.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<T> Of<T>(double a, double b, double c, double d)
        where T : unmanaged =>
        typeof(T) == typeof(float)
            ? Vector128.Create((float)a, (float)b, (float)c, (float)d).ToVector256().As<float, T>()
            : Vector256.Create(a, b, c, d).As<double, T>();

    /// <summary>The pair of a cell, laid twice side by side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<T> Twice<T>(ref T pairs, int cell)
        where T : unmanaged
    {
        if (typeof(T) == typeof(float))
        {
            var both = Unsafe.ReadUnaligned<double>(ref Unsafe.As<T, byte>(ref Unsafe.Add(ref pairs, 2 * cell)));
            return Vector128.Create(both).As<double, T>().ToVector256();
        }
        var pair = Vector128.LoadUnsafe(ref pairs, (nuint)(2 * cell));
        return Vector256.Create(pair, pair);
    }

    /// <summary>Block times pair, its halves still apart, put together: the pair in the first two lanes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<T> Joined<T>(Vector256<T> parts)
        where T : unmanaged =>
        Pick(parts, Vector128.Create(0, 2, 0, 2), Vector256.Create(0L, 2, 0, 2))
        + Pick(parts, Vector128.Create(1, 3, 1, 3), Vector256.Create(1L, 3, 1, 3));

    /// <summary>Writes the pair in the first two lanes to a cell.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void StorePair<T>(Vector256<T> pair, ref T pairs, int cell)
        where T : unmanaged
    {
        if (typeof(T) == typeof(float))
        {
            var clear = pair.As<T, float>() + FloatSpeck - FloatSpeck;
            Unsafe.WriteUnaligned(
                ref Unsafe.As<T, byte>(ref Unsafe.Add(ref pairs, 2 * cell)),
                clear.AsDouble().GetElement(0)
            );
        }
        else
        {
            var clear = pair.As<T, double>() + DoubleSpeck - DoubleSpeck;
            clear.As<double, T>().GetLower().StoreUnsafe(ref pairs, (nuint)(2 * cell));
        }
    }

    /// <summary>Block times block.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<T> Product<T>(Vector256<T> a, Vector256<T> b)
        where T : unmanaged =>
        Pick(a, Vector128.Create(0, 0, 2, 2), Vector256.Create(0L, 0, 2, 2))
            * Pick(b, Vector128.Create(0, 1, 0, 1), Vector256.Create(0L, 1, 0, 1))
        + Pick(a, Vector128.Create(1, 1, 3, 3), Vector256.Create(1L, 1, 3, 3))
            * Pick(b, Vector128.Create(2, 3, 2, 3), Vector256.Create(2L, 3, 2, 3));

    /// <summary>Determinant of a block; in double precision, as it is a difference of products and may be smaller than single precision holds.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Determinant<T>(Vector256<T> block)
        where T : unmanaged => (At(block, 0) * At(block, 3)) - (At(block, 1) * At(block, 2));

    /// <summary>Inverse of a block whose determinant is known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<T> Inverse<T>(Vector256<T> block, double determinant)
        where T : unmanaged
    {
        var by = 1 / determinant;
        return Of<T>(by * At(block, 3), -by * At(block, 1), -by * At(block, 2), by * At(block, 0));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double At<T>(Vector256<T> block, int lane)
        where T : unmanaged =>
        typeof(T) == typeof(float) ? block.As<T, float>().GetElement(lane) : block.As<T, double>().GetElement(lane);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<T> Pick<T>(Vector256<T> from, Vector128<int> single, Vector256<long> full)
        where T : unmanaged =>
        typeof(T) == typeof(float)
            ? Vector128.Shuffle(from.As<T, float>().GetLower(), single).ToVector256().As<float, T>()
            : Vector256.Shuffle(from.As<T, double>(), full).As<double, T>();
}
