using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Drawings;

/// <summary>One curve of an operating characteristic.</summary>
/// <param name="Name">Which reading of the plan, as the legend says it.</param>
/// <param name="Points">Failing share and probability of acceptance, both 0 to 1, shares rising. Two or more.</param>
internal sealed record Characteristic(string Name, IReadOnlyList<(double FailingShare, double Acceptance)> Points);

/// <summary>Draws operating characteristics: how likely a plan is to accept, at every true share of failing pieces.</summary>
public static class CharacteristicDrawing
{
    private const double Width = 150;
    private const double Graph = 64;
    private const double Left = 16;
    private const double Right = 8;
    private const double Top = 16;
    private const double Below = Top + Graph;
    private const double LegendLine = 5;
    private const double Type = 3.1;
    private static readonly Ink[] Inks = [Ink.Treated, Ink.Quiet, Ink.Demand];

    /// <summary>The characteristics of a planned sample, a curve for each reading of its plan.</summary>
    public static Drawing Of(SampleDocument sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Draw(
            Wording.Capital(sheet.Plan),
            [
                .. sheet.Readings.Select(reading => new Characteristic(
                    $"{reading.Name}: 95 % at {Figures.Percent(reading.Landmarks.ProducerShare)}, "
                        + $"10 % at {Figures.Percent(reading.Landmarks.ConsumerShare)}",
                    [.. reading.Curve.Select(point => (point.FailingShare, point.Acceptance))]
                )),
            ]
        );
    }

    /// <summary>The drawing.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="curves">One to three curves over the same shares.</param>
    private static Drawing Draw(string title, IReadOnlyList<Characteristic> curves)
    {
        var upTo = curves.Max(curve => curve.Points[^1].FailingShare);
        return new(
            Width,
            Below + 14 + LegendLine * curves.Count,
            DrawingWords.Current.CharacteristicTitle(title),
            [
                new Label(new(2, 6), title, Heading(title), Anchor.Start, Ink.Text),
                .. Acceptance(upTo),
                .. FailingShare(upTo),
                .. curves.SelectMany((curve, place) => Curve(curve, place, upTo)),
            ]
        );
    }

    private static Spot At(double share, double probability, double upTo) =>
        new(Left + (Width - Left - Right) * share / upTo, Top + Graph * (1 - probability));

    private static IEnumerable<Mark> Acceptance(double upTo)
    {
        yield return new Label(new(2, Top - 3.5), DrawingWords.Current.Acceptance, Type, Anchor.Start, Ink.Quiet);
        for (var tick = 0; tick <= 10; tick += 2)
        {
            var probability = tick / 10.0;
            var at = At(0, probability, upTo);
            yield return new Line([at, At(upTo, probability, upTo)], Ink.Hair, 0.2);
            yield return new Label(new(at.X - 2, at.Y + 1), Percent(probability), Type, Anchor.End, Ink.Quiet);
        }
    }

    private static IEnumerable<Mark> FailingShare(double upTo)
    {
        var step = upTo > 0.3 ? 0.1 : upTo / 6;
        for (var share = 0.0; share <= upTo + 1e-9; share += step)
        {
            var at = At(share, 0, upTo);
            yield return new Line([at, At(share, 1, upTo)], Ink.Hair, 0.2);
            yield return new Label(new(at.X, at.Y + 4.5), Percent(share), Type, Anchor.Middle, Ink.Quiet);
        }
        var name = new Spot(Width - Right, Below + 9.5);
        yield return new Label(name, DrawingWords.Current.FailingShare, Type, Anchor.End, Ink.Quiet);
    }

    /// <summary>A curve and its line of the legend.</summary>
    private static IEnumerable<Mark> Curve(Characteristic curve, int place, double upTo)
    {
        var ink = Inks[place % Inks.Length];
        var isDashed = place % Inks.Length == 1;
        var points = curve.Points.Select(point => At(point.FailingShare, point.Acceptance, upTo)).ToList();
        yield return new Line(points, ink, 0.7, isDashed);
        var y = Below + 15.5 + LegendLine * place;
        yield return new Line([new(Left, y - 1), new(Left + 8, y - 1)], ink, 0.7, isDashed);
        yield return new Label(new(Left + 10, y), curve.Name, Type, Anchor.Start, Ink.Text);
    }

    private static string Percent(double share) => $"{Figures.Digits(100 * share, 0)} %";

    /// <summary>Size of the heading, mm: smaller where it is long, so that it stays on the sheet.</summary>
    private static double Heading(string title) => Math.Min(4, (Width - 4) / (0.48 * title.Length));
}
