using PdfSharp.Drawing;

namespace Alburnum.Reports.Drawings;

/// <summary>Paints a drawing onto a PDF page.</summary>
internal static class PdfPainter
{
    /// <summary>Points in a millimetre.</summary>
    public const double PointsPerMm = 72 / 25.4;

    /// <summary>Paints the drawing with its upper left corner at a place, enlarged or reduced by a scale.</summary>
    public static void Paint(XGraphics page, Drawing drawing, double leftMm, double topMm, double scale)
    {
        XPoint Place(Spot spot) => new((leftMm + spot.X * scale) * PointsPerMm, (topMm + spot.Y * scale) * PointsPerMm);

        foreach (var mark in drawing.Marks)
        {
            switch (mark)
            {
                case Area area:
                    page.DrawPolygon(Brush(area.Fill), [.. area.Outline.Select(Place)], XFillMode.Winding);
                    break;
                case Line line:
                    var pen = new XPen(Colour(line.Colour), line.WidthMm * scale * PointsPerMm)
                    {
                        LineJoin = XLineJoin.Round,
                        DashStyle = line.Dashed ? XDashStyle.Dash : XDashStyle.Solid,
                    };
                    var points = line.Points.Select(Place).ToArray();
                    if (line.Closed)
                        page.DrawPolygon(pen, points);
                    else
                        page.DrawLines(pen, points);
                    break;
                case Label label:
                    var font = Typeface.Plain(label.SizeMm * scale * PointsPerMm);
                    page.DrawString(label.Text, font, Brush(label.Colour), Place(label.At), Format(label.Anchor));
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(drawing), mark, "Not a mark that can be painted.");
            }
        }
    }

    /// <summary>A colour of the sheets.</summary>
    public static XColor Colour(Ink ink) =>
        XColor.FromArgb(
            Convert.ToInt32(ink.Hex[..2], 16),
            Convert.ToInt32(ink.Hex[2..4], 16),
            Convert.ToInt32(ink.Hex[4..6], 16)
        );

    /// <summary>A brush in a colour of the sheets.</summary>
    public static XBrush Brush(Ink ink) => new XSolidBrush(Colour(ink));

    private static XStringFormat Format(Anchor anchor) =>
        anchor switch
        {
            Anchor.Start => XStringFormats.BaseLineLeft,
            Anchor.Middle => XStringFormats.BaseLineCenter,
            Anchor.End => XStringFormats.BaseLineRight,
            _ => throw new ArgumentOutOfRangeException(nameof(anchor), anchor, "Not an anchor."),
        };
}
