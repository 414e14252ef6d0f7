using System.Runtime.CompilerServices;

namespace Alburnum.DrawnSections;

/// <summary>Soft steps and soft joins.</summary>
public static class Smooth
{
    /// <summary>0 below <paramref name="low"/>, 1 above <paramref name="high"/>, smooth between.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Step(double low, double high, double x)
    {
        var t = (float)Math.Clamp((x - low) / (high - low), 0, 1);
        return t * t * (3 - 2 * t);
    }

    /// <summary>The greater of two fields, rounded over a width of <paramref name="k"/> where they meet.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Max(double a, double b, double k)
    {
        var h = Math.Max(k - Math.Abs(a - b), 0) / k;
        return Math.Max(a, b) + h * h * k * 0.25;
    }

    /// <summary>The lesser of two fields, rounded over a width of <paramref name="k"/> where they meet.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Min(double a, double b, double k) => -Max(-a, -b, k);
}
