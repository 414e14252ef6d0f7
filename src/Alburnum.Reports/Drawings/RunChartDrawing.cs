using System.Globalization;

namespace Alburnum.Reports.Drawings;

/// <summary>Draws a run chart: a measure over a plant's charges, with its baseline and its limit.</summary>
public static class RunChartDrawing
{
    private const double Width = 170;
    private const double Height = 70;
    private const double Left = 16;
    private const double Right = 4;
    private const double Top = 6;
    private const double Bottom = 10;

    /// <summary>The drawing.</summary>
    /// <param name="title">What it shows, with the unit.</param>
    /// <param name="marks">Neighbouring charges taken together, oldest first: how many, their mean, least and greatest. One or more.</param>
    /// <param name="baseline">Mean and spread of the baseline; null where there is none.</param>
    /// <param name="lowerLimit">Least value that conforms; null where none is stated.</param>
    public static Drawing Draw(
        string title,
        IReadOnlyList<(long Charges, double Mean, double Least, double Greatest)> marks,
        (double Mean, double Spread)? baseline,
        double? lowerLimit
    )
    {
        double[] shown =
        [
            .. marks.Select(mark => mark.Least),
            .. marks.Select(mark => mark.Greatest),
            .. baseline is { } b ? [b.Mean - 3 * b.Spread, b.Mean + 3 * b.Spread] : Array.Empty<double>(),
            .. lowerLimit is { } l ? [l] : Array.Empty<double>(),
        ];
        double low = shown.Min(),
            high = shown.Max();
        if (high <= low)
            (low, high) = (low - 1, high + 1);
        var charges = marks.Sum(mark => mark.Charges);
        Spot At(double charge, double value) =>
            new(
                Left + (Width - Left - Right) * (charges > 1 ? charge / charges : 0.5),
                Top + (Height - Top - Bottom) * (high - value) / (high - low)
            );
        List<Mark> drawn = [];
        void Level(double value, Ink ink, bool isDashed)
        {
            drawn.Add(new Line([At(0, value), At(charges, value)], ink, 0.3, isDashed));
            drawn.Add(new Label(new(Left - 1.5, At(0, value).Y + 1), Say(value), 2.8, Anchor.End, ink));
        }
        if (baseline is { } known)
        {
            Level(known.Mean, Ink.Quiet, isDashed: false);
            Level(known.Mean - 3 * known.Spread, Ink.Quiet, isDashed: true);
            Level(known.Mean + 3 * known.Spread, Ink.Quiet, isDashed: true);
        }
        if (lowerLimit is { } limit)
            Level(limit, Ink.Demand, isDashed: false);
        var middles = new List<(double Charge, int At)>();
        double before = 0;
        for (var i = 0; i < marks.Count; i++)
        {
            middles.Add((before + marks[i].Charges / 2.0, i));
            before += marks[i].Charges;
        }
        if (marks.Any(mark => mark.Charges > 1))
            drawn.Add(
                new Area(
                    [
                        .. middles.Select(place => At(place.Charge, marks[place.At].Greatest)),
                        .. middles.AsEnumerable().Reverse().Select(place => At(place.Charge, marks[place.At].Least)),
                    ],
                    Ink.Between
                )
            );
        if (marks.Count > 1)
            drawn.Add(new Line([.. middles.Select(place => At(place.Charge, marks[place.At].Mean))], Ink.Treated, 0.5));
        drawn.Add(new Label(new(Left, Height - 2), "first charge", 2.8, Anchor.Start, Ink.Quiet));
        drawn.Add(
            new Label(
                new(Width - Right, Height - 2),
                $"charge {charges.ToString(CultureInfo.InvariantCulture)}",
                2.8,
                Anchor.End,
                Ink.Quiet
            )
        );
        return new(Width, Height, title, drawn);
    }

    private static string Say(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
