using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Drawings;

/// <summary>What was found in a photograph, drawn to lie over it: the outline, the boundary of the treated wood, the heartwood's border.</summary>
public static class PhotographDrawing
{
    private static readonly Ink Outline = new("FFFFFF");
    private static readonly Ink Boundary = new("FFD84A");
    private static readonly Ink Heartwood = new("FF9A3C");

    /// <summary>Draws in the photograph's own pixels: one unit of the drawing is one pixel.</summary>
    /// <param name="reading">A reading of a photograph.</param>
    /// <param name="name">Name of the piece, for the title.</param>
    /// <exception cref="ArgumentException">The reading is not of a photograph.</exception>
    public static Drawing Draw(ReadingDocument reading, string name)
    {
        if (reading is not { WidthPx: { } width, HeightPx: { } height })
            throw new ArgumentException("The reading is not of a photograph.", nameof(reading));
        var pen = Math.Max(width, height) / 320.0;
        var marks = new List<Mark>();
        if ((reading.CornersPx ?? reading.RimPx) is { Count: > 2 } outline)
            marks.AddRange(Cased(Spots(outline), Outline, pen, closed: true));
        foreach (var boundary in reading.BoundaryPx ?? [])
        {
            if (boundary.Count > 1)
                marks.AddRange(Cased(Spots(boundary), Boundary, pen, closed: false));
        }
        foreach (var border in reading.Heartwood?.BorderPx ?? [])
            marks.AddRange(Cased(Spots(border), Heartwood, pen, closed: false, dashed: true));
        if (reading.Marks is { } pointedOut)
            marks.AddRange(MarksDrawing.Of(pointedOut, 1.4 * pen));
        return new Drawing(width, height, DrawingWords.Current.PhotographTitle(name), marks);
    }

    /// <summary>A light line on a dark one, so that it is seen on any ground.</summary>
    private static IEnumerable<Mark> Cased(
        IReadOnlyList<Spot> points,
        Ink ink,
        double pen,
        bool closed,
        bool dashed = false
    ) => [new Line(points, Ink.Text, pen * 1.9, Closed: closed), new Line(points, ink, pen, dashed, closed)];

    private static IReadOnlyList<Spot> Spots(IEnumerable<double[]> points) =>
        [.. points.Select(point => new Spot(point[0], point[1]))];
}
