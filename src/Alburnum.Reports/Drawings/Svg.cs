using System.Globalization;
using System.Net;
using System.Text;

namespace Alburnum.Reports.Drawings;

/// <summary>Drawings as SVG text.</summary>
public static class Svg
{
    /// <summary>The drawing as one SVG element, sized in mm, with its title for screen readers.</summary>
    public static string Write(Drawing drawing)
    {
        var svg = new StringBuilder();
        var size = $"{Number(drawing.WidthMm)} {Number(drawing.HeightMm)}";
        svg.Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 {size}\"");
        svg.Append($" width=\"{Number(drawing.WidthMm)}mm\" height=\"{Number(drawing.HeightMm)}mm\"");
        svg.Append(" font-family=\"Lato, sans-serif\"");
        svg.Append($" aria-label=\"{WebUtility.HtmlEncode(drawing.Title)}\">");
        foreach (var mark in drawing.Marks)
            svg.Append(Element(mark));
        return svg.Append("</svg>").ToString();
    }

    private static string Element(Mark mark) =>
        mark switch
        {
            Area area => $"<path d=\"{Path(area.Outline, closed: true)}\" fill=\"#{area.Fill.Hex}\"/>",
            Line line => $"<path d=\"{Path(line.Points, line.Closed)}\" fill=\"none\" stroke=\"#{line.Colour.Hex}\""
                + $" stroke-width=\"{Number(line.WidthMm)}\" stroke-linejoin=\"round\""
                + (line.Dashed ? $" stroke-dasharray=\"{Number(line.WidthMm * 6)} {Number(line.WidthMm * 4)}\"" : "")
                + "/>",
            Label label =>
                $"<text x=\"{Number(label.At.X)}\" y=\"{Number(label.At.Y)}\" font-size=\"{Number(label.SizeMm)}\""
                    + $" text-anchor=\"{Anchored(label.Anchor)}\" fill=\"#{label.Colour.Hex}\">{WebUtility.HtmlEncode(label.Text)}</text>",
            _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "Not a mark that can be written."),
        };

    private static string Anchored(Anchor anchor) =>
        anchor switch
        {
            Anchor.Start => "start",
            Anchor.Middle => "middle",
            Anchor.End => "end",
            _ => throw new ArgumentOutOfRangeException(nameof(anchor), anchor, "Not an anchor."),
        };

    private static string Path(IReadOnlyList<Spot> points, bool closed) =>
        "M" + string.Join("L", points.Select(spot => $"{Number(spot.X)} {Number(spot.Y)}")) + (closed ? "Z" : "");

    private static string Number(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);
}
