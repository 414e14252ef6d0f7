using System.Globalization;

namespace Alburnum.Reports.Drawings;

/// <summary>One curve of an operating characteristic.</summary>
/// <param name="Name">Which reading of the plan.</param>
/// <param name="Points">Failing share and probability of acceptance, both 0 to 1, shares rising. Two or more.</param>
public sealed record Characteristic(string Name, IReadOnlyList<(double FailingShare, double Acceptance)> Points);

/// <summary>Draws operating characteristics: how likely a plan is to accept, at every true share of failing pieces.</summary>
public static class CharacteristicDrawing
{
    private const double Width = 150;
    private const double Height = 96;
    private const double Left = 18;
    private const double Right = 6;
    private const double Top = 8;
    private const double Bottom = 24;
    private static readonly Ink[] Inks = [Ink.Treated, Ink.Quiet, Ink.Demand];

    /// <summary>The drawing.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="curves">One to three curves over the same shares.</param>
    public static Drawing Draw(string title, IReadOnlyList<Characteristic> curves)
    {
        var upTo = curves.Max(curve => curve.Points[^1].FailingShare);
        Spot At(double share, double probability) =>
            new(Left + (Width - Left - Right) * share / upTo, Top + (Height - Top - Bottom) * (1 - probability));
        List<Mark> marks = [];
        for (var tick = 0; tick <= 10; tick += 2)
        {
            var probability = tick / 10.0;
            marks.Add(new Line([At(0, probability), At(upTo, probability)], Ink.Hair, 0.2));
            var at = At(0, probability);
            marks.Add(new Label(new(at.X - 2, at.Y + 1), Percent(probability), 3, Anchor.End, Ink.Quiet));
        }
        for (var tick = 0; tick <= 6; tick++)
        {
            var share = upTo * tick / 6;
            marks.Add(new Line([At(share, 0), At(share, 1)], Ink.Hair, 0.2));
            var at = At(share, 0);
            marks.Add(new Label(new(at.X, at.Y + 4.5), Percent(share), 3, Anchor.Middle, Ink.Quiet));
        }
        marks.Add(new Label(new(Left, Top - 3), "accepted", 3, Anchor.Start, Ink.Text));
        marks.Add(new Label(new(Width - Right, Height - Bottom + 9), "failing in truth", 3, Anchor.End, Ink.Text));
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
            var y = Height - Bottom + 14 + 4 * i;
            marks.Add(new Line([new(Left, y - 1), new(Left + 8, y - 1)], ink, 0.7, isDashed));
            marks.Add(new Label(new(Left + 10, y), curves[i].Name, 3, Anchor.Start, Ink.Text));
        }
        return new(Width, Height, title, marks);
    }

    private static string Percent(double share) => (share * 100).ToString("0", CultureInfo.InvariantCulture) + " %";
}
