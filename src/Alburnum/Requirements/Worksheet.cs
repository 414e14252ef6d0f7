namespace Alburnum.Requirements;

/// <summary>A cell of a rulebook that is empty, not known, or from memory.</summary>
/// <param name="Row">Its row; where the rulebook has none, the row that would fill it, of which nothing is known.</param>
/// <param name="IsNew">True where the rulebook has no such row.</param>
/// <param name="Enquiries">How many enquiries ask for it.</param>
public sealed record WorksheetCell(Row Row, bool IsNew, int Enquiries);

/// <summary>What of a rulebook is still to be read in the code itself.</summary>
public static class Worksheet
{
    private static readonly Provenance NoSource = new(Standing.FromMemory, "", "", "", "");

    /// <summary>The cells that some enquiries ask for and that nobody has read, those asked for most first.</summary>
    /// <param name="rulebook">The rulebook.</param>
    /// <param name="enquiries">Enquiries, the commonest first.</param>
    public static IReadOnlyList<WorksheetCell> Of(Rulebook rulebook, IReadOnlyList<Enquiry> enquiries)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        ArgumentNullException.ThrowIfNull(enquiries);
        return
        [
            .. enquiries
                .SelectMany(enquiry => Cells(rulebook.Answer(enquiry), rulebook))
                .GroupBy(cell => cell.Row.Key, StringComparer.Ordinal)
                .Select(cells => cells.First() with { Enquiries = cells.Count() })
                .OrderByDescending(cell => cell.Enquiries),
        ];
    }

    private static IEnumerable<WorksheetCell> Cells(Answer answer, Rulebook rulebook)
    {
        foreach (var step in answer.Trace.Steps.Where(step => step.Subject != Subject.Advice))
        {
            foreach (var row in step.Matched.Where(IsUnread))
                yield return new(row, IsNew: false, 1);
            if (step is { Finding: Silent, Subject: Subject.Penetration or Subject.Retention })
                if (Missing(step.Subject, answer.Trace, rulebook) is { } row)
                    yield return new(row, IsNew: true, 1);
        }
    }

    private static bool IsUnread(Row row) =>
        row.Demand is UnknownCell || row.Provenance.Standing == Standing.FromMemory;

    // The row that would answer: by use class, life and form, and by the rulebook's own group of timbers.
    private static Row? Missing(Subject subject, Trace trace, Rulebook rulebook)
    {
        var enquiry = trace.Enquiry;
        var use = trace.UseClasses;
        if (use.Count == 0)
            return null;
        List<Condition> when = [new OneOf(Field.UseClass, [.. use.Select(each => each.Label())])];
        if (trace.Life is { } life)
            when.Add(new Between(Field.Life, life.Years, IncludesLow: true, life.Years, IncludesHigh: true));
        if (subject == Subject.Penetration && enquiry.FormOrFromSection is { } form)
            when.Add(new OneOf(Field.Form, [form == TimberForm.Sawn ? "sawn" : "round"]));
        if (use.Contains(UseClass.ThreeOne) || use.Contains(UseClass.ThreeTwo))
            if ((enquiry.Exposure.IsCoated ?? CodedCoating(trace)) is { } isCoated)
                when.Add(new OneOf(Field.Coated, [isCoated ? "yes" : "no"]));
        if (enquiry.Species is { } species && rulebook.GroupsOf(species) is [var group, ..])
            when.Add(new OneOf(Field.SpeciesGroup, [group]));
        return new(Key(subject, when), subject, when, new UnknownCell(""), [], NoSource);
    }

    private static bool? CodedCoating(Trace trace) =>
        ((trace.Step(Subject.UseClass)?.Finding as Settled)?.Demand as UseClassDemand)?.IsCoated;

    private static string Key(Subject subject, IEnumerable<Condition> when) =>
        string.Join(
            '-',
            when.Select(condition =>
                    condition switch
                    {
                        OneOf { Field: Field.Coated, Allowed: ["yes"] } => "coated",
                        OneOf { Field: Field.Coated } => "uncoated",
                        OneOf words => string.Join('-', words.Allowed),
                        Between range => InputProblem.Number(range.Low),
                        _ => "",
                    }
                )
                .Prepend(subject == Subject.Penetration ? "penetration" : "retention")
        );
}
