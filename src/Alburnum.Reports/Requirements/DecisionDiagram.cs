using Alburnum.Reports.Drawings;

namespace Alburnum.Reports.Requirements;

/// <summary>The way to an answer as a small drawing: one box a subject, the rows that counted beside it, the answer last.</summary>
public static class DecisionDiagram
{
    private const double WidthMm = 180;
    private const double BoxMm = 62;
    private const double LineMm = 4.6;
    private const double PadMm = 2.4;
    private const double GapMm = 4;
    private const double TypeMm = 3;
    private const int BoxLetters = 38;
    private const int RowLetters = 68;
    private const int NearMissesShown = 2;

    /// <summary>Draws an answer.</summary>
    public static Drawing Draw(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var marks = new List<Mark>
        {
            new Label(new Spot(PadMm, 5), Cut(answer.RulebookTitle, 100), 3.4, Anchor.Start, Ink.Text),
        };
        var y = 9.0;
        foreach (var step in answer.Trace.Where(HasSomethingToShow))
            y = Step(marks, step, y);
        y = Outcome(marks, answer, y);
        return new Drawing(WidthMm, y + PadMm, $"How the answer was found: {Summary(answer)}", marks);
    }

    private static bool HasSomethingToShow(StepDocument step) =>
        step.Matched.Count + step.Open.Count + step.NearMisses.Count > 0
        || step.Finding.StartsWith("given", StringComparison.Ordinal);

    private static double Step(List<Mark> marks, StepDocument step, double top)
    {
        var rows = Rows(step).ToList();
        var height = Math.Max(2, rows.Count) * LineMm + PadMm;
        Box(marks, top, height, Ink.Hair);
        marks.Add(new Label(new Spot(2 * PadMm, top + LineMm), step.Subject, TypeMm, Anchor.Start, Ink.Quiet));
        marks.Add(
            new Label(
                new Spot(2 * PadMm, top + 2 * LineMm),
                Cut(step.Finding, BoxLetters),
                TypeMm,
                Anchor.Start,
                Ink.Text
            )
        );
        for (var index = 0; index < rows.Count; index++)
        {
            var (text, ink) = rows[index];
            marks.Add(
                new Label(
                    new Spot(BoxMm + 2 * PadMm, top + (index + 1) * LineMm),
                    Cut(text, RowLetters),
                    TypeMm,
                    Anchor.Start,
                    ink
                )
            );
        }
        var bottom = top + height;
        marks.Add(new Line([new Spot(BoxMm / 2, bottom), new Spot(BoxMm / 2, bottom + GapMm)], Ink.Quiet, 0.3));
        return bottom + GapMm;
    }

    private static IEnumerable<(string Text, Ink Ink)> Rows(StepDocument step)
    {
        foreach (var row in step.Matched)
            yield return ($"= {row.Key} ({row.Standing})", Ink.Text);
        foreach (var row in step.SetAside)
            yield return ($"- {row.Key} gives way", Ink.Quiet);
        foreach (var miss in step.Open)
            yield return ($"? {miss.Row.Key}: {miss.Field} {miss.Asked}", Ink.Demand);
        foreach (var miss in step.NearMisses.Take(NearMissesShown))
            yield return ($"≠ {miss.Row.Key}: {miss.Field} {miss.Asked}", Ink.LeftOut);
    }

    private static double Outcome(List<Mark> marks, AnswerDocument answer, double top)
    {
        var height = 2 * LineMm + PadMm;
        Box(marks, top, height, answer.Requirement is null ? Ink.Demand : Ink.Treated);
        marks.Add(new Label(new Spot(2 * PadMm, top + LineMm), answer.Outcome, TypeMm, Anchor.Start, Ink.Quiet));
        marks.Add(
            new Label(
                new Spot(2 * PadMm, top + 2 * LineMm),
                Cut(Summary(answer), BoxLetters),
                TypeMm,
                Anchor.Start,
                Ink.Text
            )
        );
        var detail = answer.Requirement?.PenetrationInWords ?? answer.Reason ?? "";
        marks.Add(
            new Label(
                new Spot(BoxMm + 2 * PadMm, top + LineMm),
                Cut(detail, RowLetters),
                TypeMm,
                Anchor.Start,
                Ink.Text
            )
        );
        marks.Add(
            new Label(
                new Spot(BoxMm + 2 * PadMm, top + 2 * LineMm),
                $"weakest standing: {answer.WeakestStanding}",
                TypeMm,
                Anchor.Start,
                Ink.Quiet
            )
        );
        return top + height;
    }

    private static void Box(List<Mark> marks, double top, double height, Ink ink) =>
        marks.Add(
            new Line(
                [
                    new Spot(PadMm, top),
                    new Spot(BoxMm, top),
                    new Spot(BoxMm, top + height),
                    new Spot(PadMm, top + height),
                ],
                ink,
                0.4,
                Closed: true
            )
        );

    private static string Summary(AnswerDocument answer) => answer.Requirement?.Penetration ?? answer.Outcome;

    private static string Cut(string text, int letters) =>
        text.Length <= letters ? text : string.Concat(text.AsSpan(0, letters - 1), "…");
}
