using System.Globalization;
using Alburnum.Impregnation.Sawing;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Impregnation;

/// <summary>Draws a log end with its heartwood and the pieces cut from it; faces that show heartwood are marked.</summary>
public static class SawingDrawing
{
    private const double MarginMm = 6;
    private const double LogMm = 110;

    /// <summary>The drawing, reduced or enlarged so that the log is 110 mm across.</summary>
    /// <param name="pieces">The pieces, one or more.</param>
    public static Drawing Draw(IReadOnlyList<SawnPiece> pieces)
    {
        var log = pieces[0].Log;
        var scale = LogMm / 2 / log.LogRadiusMm;
        var middle = MarginMm + LogMm / 2;
        Spot At(double x, double y) => new(middle + scale * x, middle - scale * y);
        List<Spot> Circle(double radius) =>
            [
                .. Enumerable
                    .Range(0, 180)
                    .Select(i => Math.SinCos(i * Math.PI / 90))
                    .Select(at => At(radius * at.Cos, radius * at.Sin)),
            ];
        var marks = new List<Mark>
        {
            new Area(Circle(log.LogRadiusMm), Ink.Wood),
            new Line(Circle(log.LogRadiusMm), Ink.Text, 0.3, Closed: true),
        };
        if (log.HeartwoodRadiusMm > 0)
            marks.Add(new Area(Circle(log.HeartwoodRadiusMm), Ink.Hair));
        for (var i = 0; i < pieces.Count; i++)
        {
            var piece = pieces[i];
            var (x, y) = (-piece.Log.PithXMm, -piece.Log.PithYMm);
            var (w, h) = (piece.Section.WidthMm / 2, piece.Section.HeightMm / 2);
            Spot[] corners = [At(x - w, y + h), At(x + w, y + h), At(x + w, y - h), At(x - w, y - h)];
            marks.Add(new Line(corners, Ink.Text, 0.3, Closed: true));
            foreach (var face in piece.FacesWithHeartwood)
                marks.Add(new Line([corners[face - 1], corners[face % 4]], Ink.Demand, 0.9));
            var number = (i + 1).ToString(CultureInfo.InvariantCulture);
            marks.Add(new Label(At(x, y - 1.2 / scale), number, 3.4, Anchor.Middle, Ink.Text));
        }
        var below = 2 * MarginMm + LogMm;
        var legend = DrawingWords.Current.SawingLegend(2 * log.LogRadiusMm, 2 * log.HeartwoodRadiusMm);
        for (var i = 0; i < legend.Count; i++)
            marks.Add(new Label(new(MarginMm, below + 5 * i), legend[i], 3, Anchor.Start, Ink.Quiet));
        return new Drawing(LogMm + 2 * MarginMm, below + 9, DrawingWords.Current.SawingTitle(pieces.Count), marks);
    }
}
