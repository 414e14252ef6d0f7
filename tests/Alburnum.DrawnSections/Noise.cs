using System.Runtime.CompilerServices;

namespace Alburnum.DrawnSections;

/// <summary>Smooth seeded noise on the plane; the same numbers on every machine.</summary>
public static class Noise
{
    /// <summary>An even number from 0 to 1 for a lattice point.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Even(int x, int y, int seed) => (Hash(x, y, seed) >> 8) * (1f / 16777216f);

    /// <summary>Value noise, −1 to 1, with features about one unit across.</summary>
    public static float At(double x, double y, int seed)
    {
        var (ix, fx) = Split(x);
        var (iy, fy) = Split(y);
        return Blend(
            Even(ix, iy, seed),
            Even(ix + 1, iy, seed),
            Even(ix, iy + 1, seed),
            Even(ix + 1, iy + 1, seed),
            fx,
            fy
        );
    }

    /// <summary>Value noise, −1 to 1, that repeats every <paramref name="period"/> units of x.</summary>
    public static float Wrapped(double x, double y, int period, int seed)
    {
        var (ix, fx) = Split(x);
        var (iy, fy) = Split(y);
        var left = Modulo(ix, period);
        var right = Modulo(ix + 1, period);
        return Blend(
            Even(left, iy, seed),
            Even(right, iy, seed),
            Even(left, iy + 1, seed),
            Even(right, iy + 1, seed),
            fx,
            fy
        );
    }

    /// <summary>Noise along a line, −1 to 1.</summary>
    public static float Along(double x, int seed)
    {
        var (ix, fx) = Split(x);
        var s = fx * fx * (3 - 2 * fx);
        var a = Even(ix, 0, seed);
        return 2 * (a + s * (Even(ix + 1, 0, seed) - a)) - 1;
    }

    /// <summary>Several octaves of <see cref="At"/>, each half as strong and half as wide as the one before.</summary>
    public static float Fractal(double x, double y, int octaves, int seed)
    {
        float sum = 0;
        float weight = 0;
        var amplitude = 1f;
        for (var octave = 0; octave < octaves; octave++)
        {
            sum += amplitude * At(x, y, seed + 101 * octave);
            weight += amplitude;
            amplitude *= 0.5f;
            x = x * 2.03 + 17.1;
            y = y * 2.03 - 9.7;
        }
        return sum / weight;
    }

    /// <summary>A roughly normal number with mean 0 and deviation 1 for a lattice point.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Normal(int x, int y, int seed)
    {
        var a = Hash(x, y, seed);
        var b = a * 0x9E3779B1u ^ (a >> 15);
        // Four even 16-bit numbers: variance 4/12, mean 2.
        var sum = (a & 0xFFFF) + (a >> 16) + (b & 0xFFFF) + (b >> 16);
        return (sum * (1f / 65536f) - 2f) * 1.7320508f;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Hash(int x, int y, int seed)
    {
        unchecked
        {
            var h = (uint)x * 0x8DA6B343u + (uint)y * 0xD8163841u + (uint)seed * 0xCB1AB31Fu;
            h ^= h >> 16;
            h *= 0x7FEB352Du;
            h ^= h >> 15;
            h *= 0x846CA68Bu;
            return h ^ (h >> 16);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (int Whole, float Part) Split(double x)
    {
        var whole = (int)Math.Floor(x);
        return (whole, (float)(x - whole));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Blend(float a, float b, float c, float d, float fx, float fy)
    {
        var sx = fx * fx * (3 - 2 * fx);
        var sy = fy * fy * (3 - 2 * fy);
        var top = a + sx * (b - a);
        var low = c + sx * (d - c);
        return 2 * (top + sy * (low - top)) - 1;
    }

    private static int Modulo(int x, int period) => ((x % period) + period) % period;
}
