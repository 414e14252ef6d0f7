using System.Globalization;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Drawings;

/// <summary>Neighbouring charges of a run chart taken together.</summary>
/// <param name="Charges">How many, 1 or more.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Least">Their least value.</param>
/// <param name="Greatest">Their greatest value.</param>
/// <param name="IsSignalled">True where one of them gave a signal.</param>
internal readonly record struct RunChartPoint(
    long Charges,
    double Mean,
    double Least,
    double Greatest,
    bool IsSignalled
);

/// <summary>Draws a run chart: a measure over a plant's charges, with its baseline, its limit and the charges that gave a signal.</summary>
public static class RunChartDrawing
{
    private const double Width = 180;
    private const double Height = 84;
    private const double Left = 14;
    private const double Right = 34;
    private const double Top = 13;
    private const double Bottom = 16;
    private const double Type = 3;
    private const double LabelsApart = 4;
    private const double Margin = 0.04;
    private const int DotCorners = 12;
    private const double DotMm = 0.9;

    private static DrawingWords Words => DrawingWords.Current;

    /// <summary>The run chart of a measure that has a charge or more.</summary>
    public static Drawing Of(HistoryMeasure measure)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return Draw(
            $"{Wording.Capital(measure.Name)}, {measure.Unit}",
            [
                .. measure.Chart.Select(mark => new RunChartPoint(
                    mark.Charges,
                    mark.Mean,
                    mark.Least,
                    mark.Greatest,
                    mark.Signalled > 0
                )),
            ],
            measure.BaselineSpread > 0 ? (measure.BaselineMean, measure.BaselineSpread) : null,
            measure.LowerLimit
        );
    }

    /// <summary>The drawing.</summary>
    /// <param name="title">What it shows, with the unit.</param>
    /// <param name="points">Charges, oldest first, neighbours together. One or more.</param>
    /// <param name="baseline">Mean and spread of the baseline; null where there is none.</param>
    /// <param name="lowerLimit">Least value that conforms; null where none is stated.</param>
    private static Drawing Draw(
        string title,
        IReadOnlyList<RunChartPoint> points,
        (double Mean, double Spread)? baseline,
        double? lowerLimit
    )
    {
        List<(double Value, string Name, Ink Ink, bool IsDashed)> levels = [];
        if (baseline is { } known)
        {
            levels.Add((known.Mean + 3 * known.Spread, Words.SpreadsAbove, Ink.Quiet, true));
            levels.Add((known.Mean, Words.Baseline, Ink.Quiet, false));
            levels.Add((known.Mean - 3 * known.Spread, Words.SpreadsBelow, Ink.Quiet, true));
        }
        if (lowerLimit is { } limit)
            levels.Add((limit, Words.Limit, Ink.Demand, false));
        var (low, high) = Range([
            .. points.Select(point => point.Least),
            .. points.Select(point => point.Greatest),
            .. levels.Select(level => level.Value),
        ]);
        var charges = points.Sum(point => point.Charges);
        Spot At(double charge, double value) =>
            new(
                Left + (Width - Left - Right) * charge / charges,
                Top + (Height - Top - Bottom) * (high - value) / (high - low)
            );
        List<Mark> drawn = [new Label(new(2, 6), title, 4, Anchor.Start, Ink.Text)];
        List<double> taken = [];
        // The limit last in the list is named first: where labels would touch, the baseline's give way.
        foreach (var (value, name, ink, isDashed) in levels.AsEnumerable().Reverse())
        {
            var end = At(charges, value);
            drawn.Add(new Line([At(0, value), end], ink, 0.3, isDashed));
            if (taken.Any(y => Math.Abs(y - end.Y) < LabelsApart))
                continue;
            taken.Add(end.Y);
            drawn.Add(new Label(new(Left - 1.5, end.Y + 1), Figures.Digits(value), Type, Anchor.End, ink));
            drawn.Add(new Label(new(end.X + 1.5, end.Y + 1), name, Type, Anchor.Start, ink));
        }
        drawn.AddRange(Series(points, At));
        drawn.Add(new Label(new(Left, Height - Bottom + 6), Words.FirstCharge, Type, Anchor.Start, Ink.Quiet));
        drawn.Add(
            new Label(
                new(Width - Right, Height - Bottom + 6),
                Words.LastCharge(charges.ToString(CultureInfo.InvariantCulture)),
                Type,
                Anchor.End,
                Ink.Quiet
            )
        );
        if (points.Any(point => point.IsSignalled))
        {
            drawn.Add(Dot(new(Left + 1, Height - 4.2)));
            drawn.Add(new Label(new(Left + 4, Height - 3.2), Words.Signal, Type, Anchor.Start, Ink.Text));
        }
        return new(Width, Height, title, drawn);
    }

    private static IEnumerable<Mark> Series(IReadOnlyList<RunChartPoint> points, Func<double, double, Spot> at)
    {
        var middles = new double[points.Count];
        double before = 0;
        for (var i = 0; i < points.Count; i++)
        {
            middles[i] = before + points[i].Charges / 2.0;
            before += points[i].Charges;
        }
        var places = Enumerable.Range(0, points.Count).ToList();
        if (points.Any(point => point.Charges > 1))
            yield return new Area(
                [
                    .. places.Select(i => at(middles[i], points[i].Greatest)),
                    .. places.AsEnumerable().Reverse().Select(i => at(middles[i], points[i].Least)),
                ],
                Ink.Between
            );
        if (points.Count > 1)
            yield return new Line([.. places.Select(i => at(middles[i], points[i].Mean))], Ink.Treated, 0.35);
        foreach (var i in places.Where(i => points[i].IsSignalled || points.Count == 1))
            yield return Dot(at(middles[i], points[i].Mean));
    }

    private static Area Dot(Spot at) =>
        new(
            [
                .. Enumerable
                    .Range(0, DotCorners)
                    .Select(i => 2 * Math.PI * i / DotCorners)
                    .Select(angle => new Spot(at.X + DotMm * Math.Cos(angle), at.Y + DotMm * Math.Sin(angle))),
            ],
            Ink.Demand
        );

    /// <summary>Least and greatest with a little room, so that no line lies on the edge.</summary>
    private static (double Low, double High) Range(double[] shown)
    {
        double low = shown.Min(),
            high = shown.Max();
        var room = high > low ? Margin * (high - low) : 1;
        return (low - room, high + room);
    }
}
