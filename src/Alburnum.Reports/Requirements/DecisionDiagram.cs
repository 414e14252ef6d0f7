using Alburnum.Reports.Drawings;
using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>The way to an answer as a small drawing: one box a subject, the rows that counted beside it, the answer last.</summary>
public static class DecisionDiagram
{
    private const double WidthMm = 190;
    private const double BoxMm = 66;
    private const double LineMm = 4.4;
    private const double PadMm = 2.4;
    private const double GapMm = 4;
    private const double TypeMm = 3;

    // Letters that fit, at the width of an average letter of the type.
    private const int BoxLetters = 36;
    private const int RowLetters = 70;

    /// <summary>Draws an answer.</summary>
    public static Drawing Draw(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var marks = new List<Mark>
        {
            new Label(new Spot(PadMm, 5), answer.RulebookTitle, 3.6, Anchor.Start, Ink.Text),
            new Label(new Spot(PadMm, 10), AnswerParts.Asked(answer.Enquiry), TypeMm, Anchor.Start, Ink.Quiet),
        };
        var y = 14.0;
        foreach (var step in answer.Trace.Where(HasSomethingToShow))
        {
            var bottom = Box(
                marks,
                y,
                RequirementWords.Current.Rows.Say(step.Subject),
                step.Finding,
                Rows(step),
                Ink.Hair
            );
            y = Arrow(marks, bottom);
        }
        y = Box(
            marks,
            y,
            RequirementWords.Current.Answers.Say(answer.Outcome),
            answer.Requirement?.Penetration ?? answer.Reason ?? "",
            [
                (answer.Requirement?.PenetrationInWords ?? "", Ink.Text),
                (
                    Said("answers.diagram.standing", ("standing", Wording.Current.Say(answer.WeakestStanding))),
                    Ink.Quiet
                ),
            ],
            answer.Requirement is null ? Ink.Demand : Ink.Treated
        );
        return new Drawing(WidthMm, y + PadMm, Said("answers.diagram.title", ("answer", Summary(answer))), marks);
    }

    private static bool HasSomethingToShow(StepDocument step) =>
        AnswerMapping.IsGiven(step)
        || step.Matched.Count + step.Open.Count > 0
        || AnswerMapping.Nearest(step).Count > 0;

    private static IEnumerable<(string Text, Ink Ink)> Rows(StepDocument step)
    {
        var isAdvice = AnswerMapping.IsAdvice(step);
        foreach (var row in step.Matched)
            yield return (
                "= "
                    + Said(
                        "answers.sheet.with-standing",
                        ("what", isAdvice ? row.Demand : row.Key),
                        ("standing", Wording.Current.Say(row.Standing))
                    ),
                Ink.Text
            );
        foreach (var row in step.SetAside)
            yield return ("- " + Said("answers.diagram.gives-way", ("row", row.Key)), Ink.Quiet);
        foreach (var miss in isAdvice ? [] : step.Open)
            yield return ("? " + Open(miss), Ink.Demand);
        foreach (var miss in AnswerMapping.Nearest(step))
            yield return ("≠ " + AnswerParts.Failed(miss), Ink.LeftOut);
    }

    private static string Open(MissDocument miss) =>
        Said(
            "answers.diagram.open-row",
            ("field", RequirementWords.Current.Rows.Say(miss.Field)),
            ("asked", miss.Asked),
            ("demand", miss.Row.Demand)
        );

    // Returns the bottom edge.
    private static double Box(
        List<Mark> marks,
        double top,
        string head,
        string text,
        IEnumerable<(string Text, Ink Ink)> rows,
        Ink border
    )
    {
        var inside = Wrap.Lines(text, BoxLetters).Select(line => (line, Ink.Text)).Prepend((head, Ink.Quiet)).ToList();
        var beside = rows.SelectMany(row => Wrap.Lines(row.Text, RowLetters).Select(line => (line, row.Ink)))
            .Where(each => each.line.Length > 0)
            .ToList();
        var bottom = top + (Math.Max(inside.Count, beside.Count) * LineMm) + PadMm;
        marks.Add(
            new Line(
                [new Spot(PadMm, top), new Spot(BoxMm, top), new Spot(BoxMm, bottom), new Spot(PadMm, bottom)],
                border,
                0.4,
                Closed: true
            )
        );
        Write(marks, 2 * PadMm, top, inside);
        Write(marks, BoxMm + (2 * PadMm), top, beside);
        return bottom;
    }

    private static void Write(List<Mark> marks, double x, double top, IReadOnlyList<(string Text, Ink Ink)> lines)
    {
        for (var index = 0; index < lines.Count; index++)
            marks.Add(
                new Label(
                    new Spot(x, top + ((index + 1) * LineMm)),
                    lines[index].Text,
                    TypeMm,
                    Anchor.Start,
                    lines[index].Ink
                )
            );
    }

    private static double Arrow(List<Mark> marks, double top)
    {
        var (x, end) = (BoxMm / 2, top + GapMm);
        marks.Add(new Line([new Spot(x, top), new Spot(x, end)], Ink.Quiet, 0.3));
        marks.Add(new Line([new Spot(x - 1, end - 1.4), new Spot(x, end), new Spot(x + 1, end - 1.4)], Ink.Quiet, 0.3));
        return end;
    }

    private static string Summary(AnswerDocument answer) =>
        answer.Requirement?.Penetration ?? RequirementWords.Current.Answers.Say(answer.Outcome);
}
