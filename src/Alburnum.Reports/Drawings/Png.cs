using System.Globalization;
using SkiaSharp;

namespace Alburnum.Reports.Drawings;

/// <summary>Drawings as PNG pictures, in the type of the printed sheets.</summary>
public static class Png
{
    private const double MmInInch = 25.4;

    /// <summary>The drawing on the sheet's paper colour.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="dotsPerInch">Fineness, 36 to 1200.</param>
    public static byte[] Write(Drawing drawing, double dotsPerInch = 200)
    {
        var scale = (float)(Require.InRange(dotsPerInch, 36, 1200, "dots to the inch") / MmInInch);
        var size = new SKImageInfo(
            (int)Math.Ceiling(drawing.WidthMm * scale),
            (int)Math.Ceiling(drawing.HeightMm * scale)
        );
        using var surface = SKSurface.Create(size);
        using var bytes = SKData.CreateCopy(FontFiles.Read("Lato-Regular.ttf"));
        using var typeface = SKTypeface.FromData(bytes);
        surface.Canvas.Clear(Colour(Ink.Paper));
        surface.Canvas.Scale(scale);
        foreach (var mark in drawing.Marks)
            Paint(surface.Canvas, typeface, mark);
        using var image = surface.Snapshot();
        using var png = image.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    private static void Paint(SKCanvas canvas, SKTypeface typeface, Mark mark)
    {
        switch (mark)
        {
            case Area area:
                using (var path = Path(area.Outline, closed: true))
                using (var fill = new SKPaint { Color = Colour(area.Fill), IsAntialias = true })
                    canvas.DrawPath(path, fill);
                break;
            case Line line:
                using (var path = Path(line.Points, line.Closed))
                using (var pen = Pen(line))
                    canvas.DrawPath(path, pen);
                break;
            case Label label:
                using (var font = Font(typeface, label.SizeMm))
                using (var ink = new SKPaint { Color = Colour(label.Colour), IsAntialias = true })
                    canvas.DrawText(label.Text, (float)label.At.X, (float)label.At.Y, Align(label.Anchor), font, ink);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(mark), mark, "Not a mark that can be painted.");
        }
    }

    // Sizes are millimetres: letters must not be moved to whole units.
    private static SKFont Font(SKTypeface typeface, double sizeMm) =>
        new(typeface, (float)sizeMm)
        {
            Subpixel = true,
            LinearMetrics = true,
            Hinting = SKFontHinting.None,
        };

    private static SKPaint Pen(Line line)
    {
        var width = (float)line.WidthMm;
        var pen = new SKPaint
        {
            Color = Colour(line.Colour),
            IsAntialias = true,
            Style = SKPaintStyle.Stroke,
            StrokeWidth = width,
            StrokeJoin = SKStrokeJoin.Round,
        };
        if (line.Dashed)
            pen.PathEffect = SKPathEffect.CreateDash([6 * width, 4 * width], 0);
        return pen;
    }

    private static SKPath Path(IReadOnlyList<Spot> points, bool closed)
    {
        using var builder = new SKPathBuilder();
        builder.MoveTo((float)points[0].X, (float)points[0].Y);
        foreach (var spot in points.Skip(1))
            builder.LineTo((float)spot.X, (float)spot.Y);
        if (closed)
            builder.Close();
        return builder.Detach();
    }

    private static SKTextAlign Align(Anchor anchor) =>
        anchor switch
        {
            Anchor.Start => SKTextAlign.Left,
            Anchor.Middle => SKTextAlign.Center,
            Anchor.End => SKTextAlign.Right,
            _ => throw new ArgumentOutOfRangeException(nameof(anchor), anchor, "Not an anchor."),
        };

    private static SKColor Colour(Ink ink) =>
        new(0xFF000000 | uint.Parse(ink.Hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture));
}
