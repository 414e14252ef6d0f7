using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Rectification;

/// <summary>Pixels as they lie in memory, four bytes each.</summary>
internal readonly ref struct StoredPixels(ReadOnlySpan<byte> bytes, int width, int height, int stride)
{
    public readonly ReadOnlySpan<byte> Bytes = bytes;
    public readonly int Width = width;
    public readonly int Height = height;
    public readonly int Stride = stride;
}

/// <summary>The rectifying loop: one row of the drawing from the photograph, by bilinear interpolation.</summary>
/// <remarks>Places are taken to a 16th of a pixel, so that the weights of a sample's four pixels sum to 256 and everything is whole numbers.</remarks>
internal static class RectifyRow
{
    /// <summary>What a sample counts a whole step of a channel as.</summary>
    public const int Whole = 256;

    /// <summary>One sample a pixel.</summary>
    public static void Draw(StoredPixels stored, in Homography map, int y, Span<byte> row)
    {
        ref var first = ref MemoryMarshal.GetReference(stored.Bytes);
        // Along a row the three sums of the projective map grow by a constant, so a pixel costs one division.
        var (p, q, w) = ((map.B * y) + map.C, (map.E * y) + map.F, (map.H * y) + map.I);
        var (mostX, mostY) = (((stored.Width - 1) * 16) - 1, ((stored.Height - 1) * 16) - 1);
        for (var x = 0; x + 3 <= row.Length; x += 3)
        {
            var scale = 16 / w;
            var fx = Math.Clamp((int)((p * scale) - 8), 0, mostX);
            var fy = Math.Clamp((int)((q * scale) - 8), 0, mostY);
            (p, q, w) = (p + map.A, q + map.D, w + map.G);
            var (wx, wy) = (fx & 15, fy & 15);
            ref var top = ref Unsafe.Add(ref first, ((fy >> 4) * stored.Stride) + ((fx >> 4) * 4));
            ref var low = ref Unsafe.Add(ref top, stored.Stride);
            var (a, b, c, d) = ((16 - wx) * (16 - wy), wx * (16 - wy), (16 - wx) * wy, wx * wy);
            for (var k = 0; k < 3; k++)
            {
                var sum =
                    (a * Unsafe.Add(ref top, k))
                    + (b * Unsafe.Add(ref top, k + 4))
                    + (c * Unsafe.Add(ref low, k))
                    + (d * Unsafe.Add(ref low, k + 4));
                row[x + k] = (byte)((sum + 128) >> 8);
            }
        }
    }

    /// <summary>Four samples a pixel.</summary>
    public static void DrawFine(StoredPixels stored, in Homography map, int y, Span<byte> row)
    {
        for (var x = 0; x < row.Length / 3; x++)
        {
            var (r1, g1, b1) = Sample(stored, map.Map(x - 0.25, y - 0.25));
            var (r2, g2, b2) = Sample(stored, map.Map(x + 0.25, y - 0.25));
            var (r3, g3, b3) = Sample(stored, map.Map(x - 0.25, y + 0.25));
            var (r4, g4, b4) = Sample(stored, map.Map(x + 0.25, y + 0.25));
            row[3 * x] = (byte)((r1 + r2 + r3 + r4 + 512) >> 10);
            row[(3 * x) + 1] = (byte)((g1 + g2 + g3 + g4 + 512) >> 10);
            row[(3 * x) + 2] = (byte)((b1 + b2 + b3 + b4 + 512) >> 10);
        }
    }

    /// <summary>Bilinear sample at a place in stored pixels; each channel in 1/256. Places outside give the nearest pixel.</summary>
    public static (int R, int G, int B) Sample(StoredPixels stored, PointPx at)
    {
        var fx = (int)Math.Clamp((at.X - 0.5) * 16, 0, (stored.Width - 1) * 16 - 1);
        var fy = (int)Math.Clamp((at.Y - 0.5) * 16, 0, (stored.Height - 1) * 16 - 1);
        var (wx, wy) = (fx & 15, fy & 15);
        var i = ((fy >> 4) * stored.Stride) + ((fx >> 4) * 4);
        var top = stored.Bytes.Slice(i, 8);
        var low = stored.Bytes.Slice(i + stored.Stride, 8);
        var (a, b, c, d) = ((16 - wx) * (16 - wy), wx * (16 - wy), (16 - wx) * wy, wx * wy);
        return (
            (a * top[0]) + (b * top[4]) + (c * low[0]) + (d * low[4]),
            (a * top[1]) + (b * top[5]) + (c * low[1]) + (d * low[5]),
            (a * top[2]) + (b * top[6]) + (c * low[2]) + (d * low[6])
        );
    }
}
