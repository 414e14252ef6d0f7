using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Words;
using Alburnum.Timber;

namespace Alburnum.Reports.Impregnation;

/// <summary>The predicted band on a section to scale, and the uptake over time.</summary>
public static class PredictionDrawing
{
    private const double MarginMm = 8;
    private const double RowMm = 5;

    private static DrawingWords Words => DrawingWords.Current;

    /// <summary>The section at full size: where the solver has solution, the heartwood's border, and the depths one piece in twenty stays under, half reach and one in twenty exceeds.</summary>
    /// <param name="section">The solver's answer for the median piece.</param>
    /// <param name="quick">The spread expected at each place.</param>
    /// <param name="demandMm">Required depth, mm; null draws no line for it.</param>
    public static Drawing Section(SectionRun section, QuickPrediction quick, double? demandMm)
    {
        var (width, height) = SectionBox.Of(section.Mesh.Piece.Section);
        var marks = new List<Mark> { new Area(Outline(section.Mesh.Piece.Section, 0), Ink.Wood) };
        marks.AddRange(Reached(section, height));
        marks.AddRange(Heartwood(section, width, height));
        if (demandMm is { } depth && depth < section.Mesh.Piece.Section.ThicknessMm / 2)
            marks.Add(
                new Line(Outline(section.Mesh.Piece.Section, depth), Ink.Demand, 0.5, Dashed: true, Closed: true)
            );
        marks.AddRange(Bands(section.Mesh.Piece.Section, quick));
        marks.Add(new Line(Outline(section.Mesh.Piece.Section, 0), Ink.Text, 0.4, Closed: true));
        var top = MarginMm + height + 7;
        var legend = Words.PredictionLegend;
        for (var i = 0; i < legend.Count; i++)
            marks.Add(new Label(new(MarginMm, top + i * RowMm), legend[i], 3, Anchor.Start, Ink.Quiet));
        var title = Words.PredictionTitle(section.Mesh.Piece.Section.Label, quick.MeanMm);
        return new Drawing(Math.Max(width + 2 * MarginMm, 130), top + legend.Count * RowMm + 2, title, marks);
    }

    /// <summary>Uptake in litres per m³ over time, with the vessel's pressure above it.</summary>
    /// <param name="section">The solver's answer.</param>
    public static Drawing Uptake(SectionRun section)
    {
        const double width = 150,
            pressureHeight = 25,
            uptakeHeight = 60,
            left = 18,
            gap = 8;
        var points = section.Uptake().ToList();
        var (minutes, kPa) = (points[^1].Minutes, points.Max(point => point.KPa));
        var most = NiceTop(Math.Max(1e-9, points.Max(point => point.UptakeLPerM3)));
        double X(double at) => left + width * at / minutes;
        double Pressure(double value) => MarginMm + pressureHeight * (1 - value / kPa);
        var base1 = MarginMm + pressureHeight;
        var top2 = base1 + gap;
        double Volume(double value) => top2 + uptakeHeight * (1 - value / most);
        var marks = new List<Mark>();
        foreach (var y in new[] { base1, top2 + uptakeHeight, Volume(most / 2), Volume(most) })
            marks.Add(new Line([new(left, y), new(left + width, y)], Ink.Hair, 0.2));
        foreach (var (value, y) in new[] { (0.0, Volume(0)), (most / 2, Volume(most / 2)), (most, Volume(most)) })
            marks.Add(new Label(new(left - 2, y + 1), Figures.Digits(value), 3, Anchor.End, Ink.Quiet));
        marks.Add(new Label(new(left - 2, Pressure(kPa) + 1), Figures.Digits(kPa), 3, Anchor.End, Ink.Quiet));
        marks.Add(new Label(new(left - 2, base1), "0", 3, Anchor.End, Ink.Quiet));
        marks.Add(
            new Line([.. points.Select(point => new Spot(X(point.Minutes), Pressure(point.KPa)))], Ink.Quiet, 0.4)
        );
        marks.Add(
            new Line(
                [.. points.Select(point => new Spot(X(point.Minutes), Volume(Math.Max(0, point.UptakeLPerM3))))],
                Ink.Treated,
                0.8
            )
        );
        marks.Add(new Label(new(left, MarginMm - 2), Words.Pressure, 3, Anchor.Start, Ink.Quiet));
        marks.Add(new Label(new(left, top2 - 2), Words.Solution, 3, Anchor.Start, Ink.Quiet));
        for (var i = 0; i <= 4; i++)
            marks.Add(
                new Label(
                    new(X(minutes * i / 4), top2 + uptakeHeight + 5),
                    Figures.Digits(minutes * i / 4),
                    3,
                    Anchor.Middle,
                    Ink.Quiet
                )
            );
        marks.Add(new Label(new(left + width, top2 + uptakeHeight + 10), Words.Minutes, 3, Anchor.End, Ink.Quiet));
        return new Drawing(left + width + MarginMm, top2 + uptakeHeight + 14, Words.UptakeTitle, marks);
    }

    // One area for each unbroken run of reached cells in a row.
    private static IEnumerable<Mark> Reached(SectionRun section, double height)
    {
        var mesh = section.Mesh;
        var (across, up) = (mesh.ColumnEdgesMm, mesh.RowEdgesMm);
        for (var row = 0; row < mesh.Rows; row++)
        {
            for (var start = 0; start < mesh.Columns; start++)
            {
                var end = start;
                while (
                    end < mesh.Columns
                    && mesh.CellAt(end, row) is { } cell
                    && section.Run.ArrivalMinutes[cell] is not null
                )
                    end++;
                if (end == start)
                    continue;
                // Rows run upwards, the sheet downwards; each row reaches a little into the one below, so that no seam shows.
                var y = MarginMm + height - up[row + 1];
                var bottom = Math.Min(MarginMm + height - up[row] + 0.3, MarginMm + height);
                var (x1, x2) = (MarginMm + across[start], MarginMm + across[end]);
                yield return new Area([new(x1, y), new(x2, y), new(x2, bottom), new(x1, bottom)], Ink.Treated);
                start = end;
            }
        }
    }

    private static IEnumerable<Mark> Heartwood(SectionRun section, double width, double height)
    {
        var log = section.Mesh.Piece.Log;
        if (log.HeartwoodRadiusMm is <= 0 or > 1e4)
            yield break;
        var run = new List<Spot>();
        for (var i = 0; i <= 360; i++)
        {
            var (s, c) = Math.SinCos(i * Math.PI / 180);
            var (x, y) = (log.PithXMm + log.HeartwoodRadiusMm * c, log.PithYMm + log.HeartwoodRadiusMm * s);
            var inside =
                Math.Abs(x) <= width / 2
                && Math.Abs(y) <= height / 2
                && SectionBox.Contains(section.Mesh.Piece.Section, x, y);
            if (inside)
                run.Add(new(MarginMm + width / 2 + x, MarginMm + height / 2 - y));
            if ((!inside || i == 360) && run.Count > 1)
            {
                yield return new Line([.. run], Ink.Quiet, 0.25);
                run.Clear();
            }
        }
    }

    private static IEnumerable<Mark> Bands(Section section, QuickPrediction quick)
    {
        foreach (
            var face in quick
                .Places.Select((place, i) => (place, spread: quick.DepthMm[i]))
                .GroupBy(pair => pair.place.Face)
        )
        {
            var places = face.ToList();
            foreach (var line in Lines(section, places, spread => spread.Middle, 0.5))
                yield return line;
            foreach (var line in Lines(section, places, spread => spread.Low, 0.25))
                yield return line;
            foreach (var line in Lines(section, places, spread => spread.High, 0.25))
                yield return line;
        }
    }

    // A line breaks where the whole way is reached, and where the next face is nearer: there is no border to draw.
    private static IEnumerable<Mark> Lines(
        Section section,
        List<(SectionPosition Place, Spread Spread)> places,
        Func<Spread, double> depthMm,
        double widthMm
    )
    {
        var run = new List<Spot>();
        foreach (var (place, spread) in places)
        {
            if (depthMm(spread) < 0.95 * place.WayMm && depthMm(spread) <= ToCornerMm(section, place))
            {
                run.Add(At(section, place, depthMm(spread)));
                continue;
            }
            if (run.Count > 1)
                yield return new Line([.. run], Ink.Text, widthMm);
            run.Clear();
        }
        if (run.Count > 1)
            yield return new Line(
                [.. run],
                Ink.Text,
                widthMm,
                Closed: section is RoundSection && run.Count == places.Count
            );
    }

    private static double ToCornerMm(Section section, SectionPosition place)
    {
        if (section is not RectangularSection sawn)
            return double.MaxValue;
        var length = place.Face % 2 == 1 ? sawn.WidthMm : sawn.HeightMm;
        return Math.Min(place.AlongMm, length - place.AlongMm);
    }

    private static Spot At(Section section, SectionPosition place, double depthMm)
    {
        var (w, h) = SectionBox.Of(section);
        if (section is HalfRoundSection)
        {
            if (place.Face == 2)
                return new(MarginMm + w - place.AlongMm, MarginMm + h - depthMm);
            var (sin, cos) = Math.SinCos(place.AlongMm / (w / 2) - Math.PI / 2);
            return new(MarginMm + w / 2 + (w / 2 - depthMm) * sin, MarginMm + h - (w / 2 - depthMm) * cos);
        }
        if (section is RoundSection)
        {
            var (s, c) = Math.SinCos(place.AlongMm / (w / 2));
            return new(MarginMm + w / 2 + (w / 2 - depthMm) * s, MarginMm + h / 2 - (h / 2 - depthMm) * c);
        }
        return place.Face switch
        {
            1 => new(MarginMm + place.AlongMm, MarginMm + depthMm),
            2 => new(MarginMm + w - depthMm, MarginMm + place.AlongMm),
            3 => new(MarginMm + w - place.AlongMm, MarginMm + h - depthMm),
            _ => new(MarginMm + depthMm, MarginMm + h - place.AlongMm),
        };
    }

    private static IReadOnlyList<Spot> Outline(Section section, double depthMm)
    {
        var (width, height) = SectionBox.Of(section);
        return
        [
            .. SectionBox
                .Border(section, depthMm)
                .Select(at => new Spot(MarginMm + width / 2 + at.XMm, MarginMm + height / 2 - at.YMm)),
        ];
    }

    private static double NiceTop(double value)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return unit * new[] { 1, 2, 4, 5, 6, 8, 10.0 }.First(step => step * unit >= value);
    }
}
