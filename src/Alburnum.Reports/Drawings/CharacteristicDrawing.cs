using Alburnum.Reports.Words;

namespace Alburnum.Reports.Drawings;

/// <summary>One curve of an operating characteristic.</summary>
/// <param name="Name">Which reading of the plan, as the legend says it.</param>
/// <param name="Points">Failing share and probability of acceptance, both 0 to 1, shares rising. Two or more.</param>
public sealed record Characteristic(string Name, IReadOnlyList<(double FailingShare, double Acceptance)> Points);

/// <summary>Draws operating characteristics: how likely a plan is to accept, at every true share of failing pieces.</summary>
public static class CharacteristicDrawing
{
    private const double Width = 150;
    private const double Graph = 64;
    private const double Left = 16;
    private const double Right = 8;
    private const double Top = 16;
    private const double LegendLine = 5;
    private const double Type = 3.1;
    private static readonly Ink[] Inks = [Ink.Treated, Ink.Quiet, Ink.Demand];

    /// <summary>The drawing.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="curves">One to three curves over the same shares.</param>
    public static Drawing Draw(string title, IReadOnlyList<Characteristic> curves)
    {
        var upTo = curves.Max(curve => curve.Points[^1].FailingShare);
        Spot At(double share, double probability) =>
            new(Left + (Width - Left - Right) * share / upTo, Top + Graph * (1 - probability));
        List<Mark> marks =
        [
            new Label(new(2, 6), title, Heading(title), Anchor.Start, Ink.Text),
            new Label(new(2, Top - 3.5), "probability of acceptance", Type, Anchor.Start, Ink.Quiet),
        ];
        for (var tick = 0; tick <= 10; tick += 2)
        {
            var probability = tick / 10.0;
            marks.Add(new Line([At(0, probability), At(upTo, probability)], Ink.Hair, 0.2));
            var at = At(0, probability);
            marks.Add(
                new Label(
                    new(at.X - 2, at.Y + 1),
                    $"{Figures.Digits(100 * probability, 0)} %",
                    Type,
                    Anchor.End,
                    Ink.Quiet
                )
            );
        }
        var step = upTo > 0.3 ? 0.1 : upTo / 6;
        for (var share = 0.0; share <= upTo + 1e-9; share += step)
        {
            marks.Add(new Line([At(share, 0), At(share, 1)], Ink.Hair, 0.2));
            var at = At(share, 0);
            marks.Add(
                new Label(new(at.X, at.Y + 4.5), $"{Figures.Digits(100 * share, 0)} %", Type, Anchor.Middle, Ink.Quiet)
            );
        }
        var below = Top + Graph;
        marks.Add(
            new Label(new(Width - Right, below + 9.5), "true share of failing pieces", Type, Anchor.End, Ink.Quiet)
        );
        for (var i = 0; i < curves.Count; i++)
        {
            var ink = Inks[i % Inks.Length];
            var isDashed = i % Inks.Length == 1;
            marks.Add(
                new Line(
                    [.. curves[i].Points.Select(point => At(point.FailingShare, point.Acceptance))],
                    ink,
                    0.7,
                    isDashed
                )
            );
            var y = below + 15.5 + LegendLine * i;
            marks.Add(new Line([new(Left, y - 1), new(Left + 8, y - 1)], ink, 0.7, isDashed));
            marks.Add(new Label(new(Left + 10, y), curves[i].Name, Type, Anchor.Start, Ink.Text));
        }
        return new(Width, below + 14 + LegendLine * curves.Count, $"Operating characteristic. {title}", marks);
    }

    /// <summary>Size of the heading, mm: smaller where it is long, so that it stays on the sheet.</summary>
    private static double Heading(string title) => Math.Min(4, (Width - 4) / (0.48 * title.Length));
}
