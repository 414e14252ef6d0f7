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

    /// <summary>Letters of a piece's name are this part of the picture's longer side high, and their halo this part of that.</summary>
    private const float LettersPerSide = 60;

    private const float HaloPerLetter = 0.18f;

    /// <summary>About each piece alone so much is shown, as a share of its outline's longer side.</summary>
    private const double AloneMargin = 0.08;

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
        return Drawn(fileName, photograph, longSidePx, (canvas, width) => Draw(canvas, reading.Outcome, width));
    }

    /// <summary>Draws the readings of several pieces over one photograph, each with its name in its middle.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="photograph">The photograph's bytes.</param>
    /// <param name="readings">What was read of each piece.</param>
    /// <param name="longSidePx">Longer side of the picture, pixels. 16 to 4096.</param>
    /// <param name="font">A font file's bytes.</param>
    /// <returns>A JPEG file's bytes.</returns>
    /// <exception cref="InputRefusedException">The bytes are not a photograph that can be read.</exception>
    public static byte[] OfPieces(
        string fileName,
        ReadOnlyMemory<byte> photograph,
        IReadOnlyList<SectionReading> readings,
        int longSidePx,
        byte[] font
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        using var data = SKData.CreateCopy(font);
        using var typeface = SKTypeface.FromData(data);
        return Drawn(
            fileName,
            photograph,
            longSidePx,
            (canvas, width) =>
            {
                using var letters = new SKFont(typeface, width * LinesPerSide / LettersPerSide);
                foreach (var reading in readings)
                {
                    Draw(canvas, reading.Outcome, width);
                    if (reading.Piece is { } piece)
                        Name(canvas, piece, letters);
                }
            }
        );
    }

    /// <summary>The part of a picture of several pieces that shows one of them.</summary>
    /// <param name="ofPieces">The picture of all.</param>
    /// <param name="reading">What was read of the one.</param>
    /// <returns>A JPEG file's bytes; null where its outline was not found.</returns>
    public static byte[]? Alone(byte[] ofPieces, SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (OutlineOf(reading.Outcome) is not { PointsPx: var points })
            return null;
        using var whole = SKImage.FromEncodedData(ofPieces);
        var scale = (double)whole.Width / reading.WidthPx;
        var (left, right) = (scale * points.Min(p => p.X), scale * points.Max(p => p.X));
        var (top, bottom) = (scale * points.Min(p => p.Y), scale * points.Max(p => p.Y));
        var beyond = AloneMargin * Math.Max(right - left, bottom - top);
        using var part = whole.Subset(
            SKRectI.Intersect(
                new SKRectI(0, 0, whole.Width, whole.Height),
                new SKRectI((int)(left - beyond), (int)(top - beyond), (int)(right + beyond), (int)(bottom + beyond))
            )
        );
        using var jpeg = part.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return jpeg.ToArray();
    }

    private static OutlineInPhotograph? OutlineOf(ReadingOutcome outcome) =>
        outcome switch
        {
            Read read => read.Outline,
            NotDetermined ended => ended.Outline,
            _ => null,
        };

    private static byte[] Drawn(
        string fileName,
        ReadOnlyMemory<byte> photograph,
        int longSidePx,
        Action<SKCanvas, float> draw
    )
    {
        Require.InRange(longSidePx, Thumbnail.LongSidePx.Least, Thumbnail.LongSidePx.Most, "pixels");
        using var file = PhotographFile.Open(fileName, photograph);
        var scale = (float)Math.Min(1, (double)longSidePx / Math.Max(file.WidthPx, file.HeightPx));
        using var surface = UprightCopy.Draw(file, scale);
        draw(surface.Canvas, Math.Max(LeastLinePx, longSidePx / LinesPerSide) / scale);
        using var drawn = surface.Snapshot();
        using var jpeg = drawn.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return jpeg.ToArray();
    }

    private static void Draw(SKCanvas canvas, ReadingOutcome outcome, float width)
    {
        switch (outcome)
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
    }

    private static void Name(SKCanvas canvas, PieceOnPhotograph piece, SKFont letters)
    {
        var (x, y) = ((float)piece.MiddlePx.X, (float)piece.MiddlePx.Y + (letters.Size / 3));
        using var halo = new SKPaint
        {
            Color = Halo,
            IsStroke = true,
            StrokeWidth = HaloPerLetter * letters.Size,
            StrokeJoin = SKStrokeJoin.Round,
            IsAntialias = true,
        };
        using var fill = new SKPaint { Color = Outline, IsAntialias = true };
        canvas.DrawText(piece.Name, x, y, SKTextAlign.Center, letters, halo);
        canvas.DrawText(piece.Name, x, y, SKTextAlign.Center, letters, fill);
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
