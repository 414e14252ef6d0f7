using SkiaSharp;

namespace Alburnum.DrawnSections;

/// <summary>From light on the sensor to eight-bit pixels, in the order a camera does it.</summary>
internal static class Development
{
    /// <summary>Blur, exposure, colour filter array with noise, demosaicing, sharpening, tone curve. Planes are red, green, blue.</summary>
    public static SKBitmap Develop(Plane[] light, Sensor sensor)
    {
        var width = light[0].Width;
        var height = light[0].Height;
        for (var k = 0; k < 3; k++)
        {
            light[k] = light[k].Blurred(sensor.DefocusPx);
            if (sensor.MotionPx > 0.5)
                light[k] = light[k].Smeared(sensor.MotionPx, sensor.MotionAngle);
        }
        var gain = Exposure(light) * MathF.Pow(2, sensor.ExposureStops);
        var mosaic = Mosaic(light, sensor, gain);
        var colours = Demosaic(mosaic);
        if (sensor.Sharpening > 0)
            Sharpen(colours, sensor.Sharpening);
        var tone = ToneCurve(sensor.Contrast);
        var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        unsafe
        {
            var pixels = (byte*)bitmap.GetPixels();
            var stride = bitmap.RowBytes;
            Parallel.For(
                0,
                height,
                y =>
                {
                    var out8 = new Span<byte>(pixels + (long)y * stride, 4 * width);
                    var red = colours[0].Row(y);
                    var green = colours[1].Row(y);
                    var blue = colours[2].Row(y);
                    for (var x = 0; x < width; x++)
                    {
                        var grey = 0.2126f * red[x] + 0.7152f * green[x] + 0.0722f * blue[x];
                        out8[4 * x] = Code(grey + sensor.Saturation * (red[x] - grey), tone);
                        out8[4 * x + 1] = Code(grey + sensor.Saturation * (green[x] - grey), tone);
                        out8[4 * x + 2] = Code(grey + sensor.Saturation * (blue[x] - grey), tone);
                        out8[4 * x + 3] = 255;
                    }
                }
            );
        }
        return bitmap;
    }

    /// <summary>Gain that brings the mean of the scene to a middling grey, but keeps most highlights.</summary>
    private static float Exposure(Plane[] light)
    {
        var green = light[1].Values;
        var some = new List<float>(green.Length / 97 + 1);
        for (var k = 0; k < green.Length; k += 97)
            some.Add(green[k]);
        some.Sort();
        var bright = some[(int)(0.97 * (some.Count - 1))];
        var mean = some.Average();
        return Math.Min(0.30f / mean, 0.88f / bright);
    }

    private static Plane Mosaic(Plane[] light, Sensor sensor, float gain)
    {
        var width = light[0].Width;
        var height = light[0].Height;
        var mosaic = new Plane(width, height);
        var balance = sensor.WhiteBalance;
        Parallel.For(
            0,
            height,
            y =>
            {
                var row = mosaic.Row(y);
                var v = 2.0f * y / height - 1;
                for (var x = 0; x < width; x++)
                {
                    var channel = (x & 1) + (y & 1);
                    var u = 2.0f * x / width - 1;
                    var fall = 1 - sensor.Vignette * (u * u + v * v) / 2;
                    var white =
                        channel == 0 ? balance.Red
                        : channel == 1 ? balance.Green
                        : balance.Blue;
                    var value = light[channel].Values[y * width + x] * gain * fall * white;
                    // Shot noise grows with the root of light; a floor for reading out.
                    var deviation = sensor.Noise * MathF.Sqrt(0.12f + Math.Max(value, 0) / 0.25f);
                    value += deviation * DrawnSections.Noise.Normal(x, y, sensor.Seed);
                    row[x] = Math.Min(value, 1.02f);
                }
            }
        );
        return mosaic;
    }

    /// <summary>Red at even row and column, blue at odd ones, green between: green first, then colour differences.</summary>
    private static Plane[] Demosaic(Plane mosaic)
    {
        var width = mosaic.Width;
        var height = mosaic.Height;
        Plane[] colours = [new(width, height), new(width, height), new(width, height)];
        Parallel.For(
            0,
            height,
            y =>
            {
                var above = mosaic.Row(y == 0 ? 1 : y - 1);
                var row = mosaic.Row(y);
                var below = mosaic.Row(y == height - 1 ? height - 2 : y + 1);
                var green = colours[1].Row(y);
                for (var x = 0; x < width; x++)
                {
                    if (((x ^ y) & 1) == 1)
                    {
                        green[x] = row[x];
                        continue;
                    }
                    var left = row[x == 0 ? 1 : x - 1];
                    var right = row[x == width - 1 ? width - 2 : x + 1];
                    var sideways = MathF.Abs(left - right);
                    var upright = MathF.Abs(above[x] - below[x]);
                    green[x] =
                        sideways < 0.7f * upright ? (left + right) / 2
                        : upright < 0.7f * sideways ? (above[x] + below[x]) / 2
                        : (left + right + above[x] + below[x]) / 4;
                }
            }
        );
        var difference = new Plane(width, height);
        for (var k = 0; k < difference.Values.Length; k++)
            difference.Values[k] = mosaic.Values[k] - colours[1].Values[k];
        Parallel.For(
            0,
            height,
            y =>
            {
                AddDifferences(difference, colours[1].Row(y), colours[0].Row(y), y, 0);
                AddDifferences(difference, colours[1].Row(y), colours[2].Row(y), y, 1);
            }
        );
        return colours;
    }

    /// <summary>A row of red (parity 0) or blue (parity 1): green plus the mean difference of the nearest places that have it.</summary>
    private static void AddDifferences(Plane difference, Span<float> green, Span<float> colour, int y, int parity)
    {
        var last = difference.Width - 1;
        var isOwnRow = (y & 1) == parity;
        var above = difference.Row(
            isOwnRow ? y
            : y == 0 ? 1
            : y - 1
        );
        var below = difference.Row(
            isOwnRow ? y
            : y == difference.Height - 1 ? y - 1
            : y + 1
        );
        for (var x = 0; x <= last; x++)
        {
            var left =
                (x & 1) == parity ? x
                : x == 0 ? 1
                : x - 1;
            var right =
                (x & 1) == parity ? x
                : x == last ? last - 1
                : x + 1;
            colour[x] = green[x] + (above[left] + above[right] + below[left] + below[right]) / 4;
        }
    }

    private static void Sharpen(Plane[] colours, float strength)
    {
        foreach (var colour in colours)
        {
            var soft = colour.Blurred(1.1);
            for (var k = 0; k < colour.Values.Length; k++)
                colour.Values[k] += strength * (colour.Values[k] - soft.Values[k]);
        }
    }

    private static byte[] ToneCurve(float contrast)
    {
        var table = new byte[4097];
        for (var k = 0; k < table.Length; k++)
        {
            var linear = k / 4096f;
            var code = linear <= 0.0031308f ? 12.92f * linear : 1.055f * MathF.Pow(linear, 1 / 2.4f) - 0.055f;
            var curved = code * code * (3 - 2 * code);
            table[k] = (byte)(255 * (code + contrast * (curved - code)) + 0.5f);
        }
        return table;
    }

    private static byte Code(float value, byte[] tone) => tone[(int)(Math.Clamp(value, 0, 1) * 4096)];
}
