namespace Alburnum.DrawnSections;

/// <summary>Four floating-point channels a pixel: linear red, green, blue, and one for the picture's own use.</summary>
public sealed class Raster(int width, int height)
{
    public int Width { get; } = width;

    public int Height { get; } = height;

    /// <summary>Row by row, four numbers a pixel.</summary>
    public float[] Values { get; } = new float[width * height * 4];

    public Span<float> Row(int y) => Values.AsSpan(y * Width * 4, Width * 4);

    /// <summary>Bilinear sample at a point in pixels (pixel centres at halves); outside repeats the border.</summary>
    public (Colour Colour, float Fourth) At(double x, double y)
    {
        x = Math.Clamp(x - 0.5, 0, Width - 1.001);
        y = Math.Clamp(y - 0.5, 0, Height - 1.001);
        var ix = (int)x;
        var iy = (int)y;
        var fx = (float)(x - ix);
        var fy = (float)(y - iy);
        var a = Values.AsSpan((iy * Width + ix) * 4, 8);
        var b = iy + 1 < Height ? Values.AsSpan(((iy + 1) * Width + ix) * 4, 8) : a;
        return (new(Mix(a, b, 0, fx, fy), Mix(a, b, 1, fx, fy), Mix(a, b, 2, fx, fy)), Mix(a, b, 3, fx, fy));
    }

    private static float Mix(Span<float> a, Span<float> b, int channel, float fx, float fy)
    {
        var top = a[channel] + fx * (a[channel + 4] - a[channel]);
        var low = b[channel] + fx * (b[channel + 4] - b[channel]);
        return top + fy * (low - top);
    }
}
