using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using SkiaSharp;

namespace Alburnum.Imaging.Pictures;

/// <summary>The photograph with what was read drawn over it: evidence that anyone can check by eye.</summary>
public static class OverlayPicture
{
    private static readonly SKColor Outline = new(0xFF, 0xFF, 0xFF);
    private static readonly SKColor Front = new(0xFF, 0xD5, 0x1E);
    private static readonly SKColor Heartwood = new(0xF0, 0x8A, 0x24);
    private static readonly SKColor LeftOut = new(0x3A, 0x3A, 0x3A);
    private static readonly SKColor Halo = new(0x14, 0x14, 0x14, 0xB0);

    /// <summary>A line is this part of the picture's longer side wide, and no less than so many pixels: on a small print it must still be seen.</summary>
    private const float LinesPerSide = 450;

    private const float LeastLinePx = 1.4f;

    /// <summary>Width of the dark halo under a line, and length of a dash, in widths of the line.</summary>
    private const float HaloWidths = 2.2f;

    private const float DashWidths = 6;

    private const int JpegQuality = 90;

    /// <summary>
    /// Draws the outline (white; dark where positions are left out), the front (yellow; broken there), where the depth is least (a short white line), and the
    /// border of the heartwood where it was detected (orange, dashed).
    /// </summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="photograph">The photograph's bytes.</param>
    /// <param name="reading">What was read from it.</param>
    /// <param name="longSidePx">Longer side of the picture, pixels. 16 to 4096.</param>
    /// <returns>A JPEG file's bytes.</returns>
    /// <exception cref="InputRefusedException">The bytes are not a photograph that can be read.</exception>
    public static byte[] Jpeg(string fileName, ReadOnlyMemory<byte> photograph, SectionReading reading, int longSidePx)
    {
        ArgumentNullException.ThrowIfNull(reading);
        Require.InRange(longSidePx, Thumbnail.LongSidePx.Least, Thumbnail.LongSidePx.Most, "pixels");
        using var file = PhotographFile.Open(fileName, photograph);
        var scale = (float)Math.Min(1, (double)longSidePx / Math.Max(file.WidthPx, file.HeightPx));
        using var surface = UprightCopy.Draw(file, scale);
        var canvas = surface.Canvas;
        var width = Math.Max(LeastLinePx, longSidePx / LinesPerSide) / scale;
        switch (reading.Outcome)
        {
            case Read read:
                Draw(canvas, read, width);
                break;
            case NotDetermined { Outline: { } outline, Heartwood: var heartwood }:
                Line(canvas, outline.PointsPx, closed: true, Halo, HaloWidths * width);
                Line(canvas, outline.PointsPx, closed: true, Outline, width);
                Border(canvas, heartwood, width);
                break;
        }
        using var drawn = surface.Snapshot();
        using var jpeg = drawn.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return jpeg.ToArray();
    }

    private static void Draw(SKCanvas canvas, Read read, float width)
    {
        Line(canvas, read.Outline.PointsPx, closed: true, Halo, HaloWidths * width);
        foreach (var line in read.BoundaryPx)
            Line(canvas, line, closed: false, Halo, HaloWidths * width);
        Line(canvas, read.Outline.PointsPx, closed: true, Outline, width);
        foreach (var line in read.LeftOutPx)
            Line(canvas, line, closed: false, LeftOut, width);
        foreach (var line in read.BoundaryPx)
            Line(canvas, line, closed: false, Front, width);
        Border(canvas, read.Heartwood, width);
        PointPx[] least = [read.LeastPx.Face, read.LeastPx.Front];
        Line(canvas, least, closed: false, Halo, HaloWidths * width);
        Line(canvas, least, closed: false, Outline, width);
    }

    private static void Border(SKCanvas canvas, HeartwoodReading? heartwood, float width)
    {
        foreach (var line in (heartwood as DetectedHeartwood)?.BorderPx ?? [])
        {
            Line(canvas, line, closed: false, Halo, HaloWidths * width, dash: DashWidths * width);
            Line(canvas, line, closed: false, Heartwood, width, dash: DashWidths * width);
        }
    }

    private static void Line(
        SKCanvas canvas,
        IReadOnlyList<PointPx> points,
        bool closed,
        SKColor colour,
        float width,
        float dash = 0
    )
    {
        if (points.Count < 2)
            return;
        using var dashes = dash > 0 ? SKPathEffect.CreateDash([dash, dash], 0) : null;
        using var pen = new SKPaint
        {
            Color = colour,
            IsStroke = true,
            StrokeWidth = width,
            StrokeJoin = SKStrokeJoin.Round,
            StrokeCap = SKStrokeCap.Round,
            IsAntialias = true,
            PathEffect = dashes,
        };
        using var path = new SKPathBuilder();
        path.MoveTo((float)points[0].X, (float)points[0].Y);
        foreach (var point in points.Skip(1))
            path.LineTo((float)point.X, (float)point.Y);
        if (closed)
            path.Close();
        using var drawn = path.Detach();
        canvas.DrawPath(drawn, pen);
    }
}
