using System.Globalization;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Impregnation;

/// <summary>Draws a sweep as a map of coloured boxes with the measure written in each.</summary>
public static class SweepDrawing
{
    private const double Left = 24;
    private const double Top = 19;
    private const double MapWidth = 140;
    private const double MapHeight = 95;
    private const int WrittenUpTo = 14;

    /// <summary>The drawing.</summary>
    /// <param name="map">The sweep.</param>
    public static Drawing Draw(SweepDocument map)
    {
        var (columns, rows) = (map.Across.Values.Count, map.Up.Values.Count);
        var (dx, dy) = (MapWidth / columns, MapHeight / rows);
        var known = map.Rows.SelectMany(row => row).OfType<double>().ToList();
        var (low, high) =
            map.IsShare ? (0.0, 1.0)
            : known.Count > 0 ? (known.Min(), known.Max())
            : (0.0, 1.0);
        var marks = new List<Mark>
        {
            new Label(new(4, 6), map.Title, 3.4, Anchor.Start, Ink.Text),
            new Label(new(4, 11), map.MeasureInWords, 3.2, Anchor.Start, Ink.Quiet),
        };
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var (x, y) = (Left + column * dx, Top + MapHeight - (row + 1) * dy);
                var value = map.Rows[row][column];
                var depth = value is { } found && high > low ? (found - low) / (high - low) : 0;
                Spot[] box = [new(x, y), new(x + dx, y), new(x + dx, y + dy), new(x, y + dy)];
                marks.Add(new Area(box, value is null ? Ink.Hair : Between(Ink.Wood, Ink.Treated, depth)));
                if (columns <= WrittenUpTo && rows <= WrittenUpTo)
                {
                    var ink = depth > 0.6 ? Ink.Paper : Ink.Text;
                    var text = value is { } written ? Text(map, written) : "–";
                    marks.Add(new Label(new(x + dx / 2, y + dy / 2 + 1), text, 2.8, Anchor.Middle, ink));
                }
            }
        }
        var everyColumn = Math.Max(1, (int)Math.Ceiling(columns / 10.0));
        for (var column = 0; column < columns; column += everyColumn)
            marks.Add(
                new Label(
                    new(Left + (column + 0.5) * dx, Top + MapHeight + 5),
                    Tick(map.Across.Values[column]),
                    3,
                    Anchor.Middle,
                    Ink.Quiet
                )
            );
        var everyRow = Math.Max(1, (int)Math.Ceiling(rows / 12.0));
        for (var row = 0; row < rows; row += everyRow)
            marks.Add(
                new Label(
                    new(Left - 2, Top + MapHeight - (row + 0.5) * dy + 1),
                    Tick(map.Up.Values[row]),
                    3,
                    Anchor.End,
                    Ink.Quiet
                )
            );
        marks.Add(new Label(new(Left + MapWidth, Top + MapHeight + 10), Label(map.Across), 3, Anchor.End, Ink.Text));
        marks.Add(new Label(new(Left - 2, Top - 2), Label(map.Up), 3, Anchor.Start, Ink.Text));
        marks.AddRange(Scale(map, low, high));
        return new Drawing(Left + MapWidth + 26, Top + MapHeight + 14, $"{map.Title}: {map.MeasureInWords}", marks);
    }

    private static IEnumerable<Mark> Scale(SweepDocument map, double low, double high)
    {
        const int steps = 24;
        const double x = Left + MapWidth + 6;
        for (var i = 0; i < steps; i++)
        {
            var (y1, y2) = (Top + MapHeight * (1 - i / (double)steps), Top + MapHeight * (1 - (i + 1) / (double)steps));
            yield return new Area(
                [new(x, y1), new(x + 4, y1), new(x + 4, y2), new(x, y2)],
                Between(Ink.Wood, Ink.Treated, (i + 0.5) / steps)
            );
        }
        yield return new Label(new(x + 5, Top + MapHeight), Text(map, low), 2.8, Anchor.Start, Ink.Quiet);
        yield return new Label(new(x + 5, Top + 2.5), Text(map, high), 2.8, Anchor.Start, Ink.Quiet);
    }

    private static string Label(SweepAxis axis) => $"{axis.Name}, {axis.Unit}";

    private static Ink Between(Ink from, Ink to, double share)
    {
        int Part(int at)
        {
            var (a, b) = (Convert.ToInt32(from.Hex[at..(at + 2)], 16), Convert.ToInt32(to.Hex[at..(at + 2)], 16));
            return (int)Math.Round(a + (b - a) * Math.Clamp(share, 0, 1));
        }
        return new Ink($"{Part(0):X2}{Part(2):X2}{Part(4):X2}");
    }

    private static string Text(SweepDocument map, double value) =>
        map.IsShare
            ? $"{Figures.Number(100 * value, 0)} %"
            : value.ToString(value < 10 ? "0.0" : "0", CultureInfo.InvariantCulture);

    private static string Tick(double value) => Figures.Digits(value, Math.Abs(value) < 100 ? 1 : 0);
}
