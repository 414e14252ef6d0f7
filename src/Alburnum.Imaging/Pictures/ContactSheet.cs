using SkiaSharp;

namespace Alburnum.Imaging.Pictures;

/// <summary>One picture of a contact sheet.</summary>
/// <param name="Picture">A JPEG; empty where the photograph could not be read.</param>
/// <param name="Title">First line under it.</param>
/// <param name="Line">Second line under it.</param>
public sealed record ContactPrint(ReadOnlyMemory<byte> Picture, string Title, string Line);

/// <summary>All readings of a batch on one picture.</summary>
public static class ContactSheet
{
    /// <summary>Longer side of each picture on the sheet, pixels.</summary>
    public const int PrintPx = 320;

    /// <summary>Room between pictures, and under each for its two lines, pixels.</summary>
    private const int Gap = 24;

    private const int TextPx = 52;

    /// <summary>Size of the two lines, and how far below the picture each stands, pixels.</summary>
    private const int TitlePx = 17;

    private const int LinePx = 15;
    private const int TitleDownPx = 22;
    private const int LineDownPx = 43;

    private const int MostColumns = 6;
    private const int MostPrints = 1000;
    private const int JpegQuality = 88;

    /// <summary>Lays the prints out in rows, in their order.</summary>
    /// <param name="prints">At least one print, at most 1000.</param>
    /// <param name="font">A font file's bytes.</param>
    /// <returns>A JPEG file's bytes.</returns>
    public static byte[] Jpeg(IReadOnlyList<ContactPrint> prints, byte[] font)
    {
        ArgumentNullException.ThrowIfNull(prints);
        Require.InRange(prints.Count, 1, MostPrints, "prints");
        var columns = Math.Min(MostColumns, (int)Math.Ceiling(Math.Sqrt(prints.Count)));
        var cellWidth = PrintPx + Gap;
        // Each row is as high as its highest picture.
        var heights = prints.Select(HeightPx).Chunk(columns).Select(row => row.Max()).ToList();
        var tops = new List<int> { Gap };
        foreach (var height in heights)
            tops.Add(tops[^1] + height + TextPx + Gap);
        using var surface = SKSurface.Create(
            new SKImageInfo((columns * cellWidth) + Gap, tops[^1], SKColorType.Rgba8888, SKAlphaType.Opaque)
        );
        var canvas = surface.Canvas;
        canvas.Clear(new SKColor(0xFA, 0xF8, 0xF4));
        using var data = SKData.CreateCopy(font);
        using var typeface = SKTypeface.FromData(data);
        using var large = new SKFont(typeface, TitlePx);
        using var small = new SKFont(typeface, LinePx);
        using var dark = new SKPaint { Color = new SKColor(0x2A, 0x26, 0x20), IsAntialias = true };
        using var pale = new SKPaint { Color = new SKColor(0xE4, 0xDE, 0xD2) };
        for (var i = 0; i < prints.Count; i++)
        {
            var (left, top, high) = (Gap + (i % columns * cellWidth), tops[i / columns], heights[i / columns]);
            if (prints[i].Picture.IsEmpty)
            {
                canvas.DrawRect(left, top, PrintPx, high, pale);
            }
            else
            {
                using var picture = SKImage.FromEncodedData(prints[i].Picture.Span);
                var scale = Math.Min((float)PrintPx / picture.Width, (float)PrintPx / picture.Height);
                var (w, h) = (picture.Width * scale, picture.Height * scale);
                var (x, y) = (left + ((PrintPx - w) / 2), top + ((high - h) / 2));
                canvas.DrawImage(
                    picture,
                    SKRect.Create(x, y, w, h),
                    new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear)
                );
            }
            canvas.DrawText(Fit(prints[i].Title, large), left, top + high + TitleDownPx, SKTextAlign.Left, large, dark);
            canvas.DrawText(Fit(prints[i].Line, small), left, top + high + LineDownPx, SKTextAlign.Left, small, dark);
        }
        using var sheet = surface.Snapshot();
        using var jpeg = sheet.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return jpeg.ToArray();
    }

    private static int HeightPx(ContactPrint print)
    {
        if (print.Picture.IsEmpty)
            return PrintPx / 2;
        using var data = SKData.CreateCopy(print.Picture.Span);
        using var codec = SKCodec.Create(data);
        return (int)Math.Round(PrintPx * Math.Min(1.0, (double)codec.Info.Height / codec.Info.Width));
    }

    private static string Fit(string text, SKFont font)
    {
        if (font.MeasureText(text) <= PrintPx)
            return text;
        var kept = text.Length;
        while (kept > 1 && font.MeasureText(text[..kept] + "…") > PrintPx)
            kept--;
        return text[..kept] + "…";
    }
}
