namespace Alburnum.Requirements;

/// <summary>What of a rulebook is to be read: a row that is empty, not known or from memory, or an analytical zone from memory.</summary>
/// <param name="Row">Its row; where the rulebook has none, the row that would fill it, of which nothing is known; for a zone, a row that names it.</param>
/// <param name="Enquiries">How many enquiries ask for it.</param>
public sealed record WorksheetCell(Row Row, int Enquiries)
{
    /// <summary>The zone that is to be confirmed; null where it is the row.</summary>
    public Fact<AnalyticalZone>? Zone { get; init; }

    /// <summary>Its key.</summary>
    public string Key => Zone is null ? Row.Key : Row.ZoneKey!;
}

/// <summary>What of a rulebook is still to be read in the code itself.</summary>
public static class Worksheet
{
    private static readonly Provenance NoSource = new(Standing.FromMemory, "", "", "", "");

    /// <summary>
    /// The cells that nobody has read, those asked for most first; no two of those that would be filled overlap. Where the rulebook says which kinds of cell its code holds,
    /// every cell of those kinds, and no other; otherwise the cells of a table by use class that some enquiries ask for. A row that is not known is split by what tells its
    /// cells apart, and an enquiry that leaves open whether heartwood shows needs both.
    /// </summary>
    /// <param name="rulebook">The rulebook.</param>
    /// <param name="enquiries">Enquiries, the commonest first.</param>
    public static IReadOnlyList<WorksheetCell> Of(Rulebook rulebook, IReadOnlyList<Enquiry> enquiries)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        ArgumentNullException.ThrowIfNull(enquiries);
        if (rulebook.Cells.Count > 0)
            return OfKinds(rulebook, enquiries);
        return
        [
            .. enquiries
                .SelectMany(enquiry =>
                    InFull(enquiry)
                        .SelectMany(each => Cells(rulebook.Answer(each), rulebook))
                        .DistinctBy(cell => cell.Key, StringComparer.Ordinal)
                )
                .GroupBy(cell => cell.Key, StringComparer.Ordinal)
                .Select(cells => cells.First() with { Enquiries = cells.Count() })
                .OrderByDescending(cell => cell.Enquiries),
        ];
    }

    private static IReadOnlyList<WorksheetCell> OfKinds(Rulebook rulebook, IReadOnlyList<Enquiry> enquiries)
    {
        var situations = enquiries
            .Select(enquiry => new Situation(
                enquiry,
                enquiry.Species is { } species ? rulebook.GroupsOf(species) : null
            ))
            .ToList();
        int AskedBy(Row row) =>
            situations.Count(asked => row.When.All(condition => condition.Of(asked[condition.Field]) == Fit.Yes));
        return
        [
            .. rulebook
                .Cells.SelectMany(kind => OfKind(kind, rulebook))
                .DistinctBy(cell => cell.Key, StringComparer.Ordinal)
                .Select(cell => cell with { Enquiries = AskedBy(cell.Row) })
                .OrderByDescending(cell => cell.Enquiries),
        ];
    }

    private static IEnumerable<WorksheetCell> OfKind(CellKind kind, Rulebook rulebook)
    {
        var rows = rulebook.RowsOf(kind.Subject);
        foreach (var row in rows)
        {
            if (row.Demand is UnknownCell cell)
            {
                foreach (var told in Told(kind.By.Where(field => !row.Asks(field)), rulebook))
                    yield return told.Count == 0 ? new(row, 0) : Part(row, cell, told);
            }
            else
            {
                foreach (var remembered in Remembered(row))
                    yield return remembered;
            }
        }
        foreach (var when in Told(kind.By, rulebook))
        {
            if (when.Count > 0 && !rows.Any(row => Row.MayHoldTogether(when, row.When)))
                yield return New(kind.Subject, when);
        }
    }

    // Every combination of what the fields may say, as the rulebook's rows have the words.
    private static IEnumerable<IReadOnlyList<Condition>> Told(IEnumerable<Field> by, Rulebook rulebook) =>
        by.Aggregate<Field, IEnumerable<IReadOnlyList<Condition>>>(
            [
                [],
            ],
            (told, field) =>
                told.SelectMany(some =>
                    WordsOf(field, rulebook)
                        .Select(word => (IReadOnlyList<Condition>)[.. some, new OneOf(field, [word])])
                )
        );

    private static IEnumerable<string> WordsOf(Field field, Rulebook rulebook) =>
        field == Field.Form ? ["sawn", "round"] : rulebook.WordsOf(field);

    private static WorksheetCell Part(Row within, UnknownCell cell, IReadOnlyList<Condition> told) =>
        new(
            new(
                Key(within.Key, told),
                within.Subject,
                [.. within.When, .. told],
                new UnknownCell(cell.Reason),
                [within.Key],
                NoSource
            ),
            1
        );

    private static WorksheetCell New(Subject subject, IReadOnlyList<Condition> when) =>
        new(new(Key(SubjectKey(subject), when), subject, when, new UnknownCell(""), [], NoSource), 1);

    private static IEnumerable<WorksheetCell> Remembered(Row row)
    {
        if (row.Provenance.Standing == Standing.FromMemory)
            yield return new(row, 1);
        if (row.Demand is PenetrationDemand { Zone: { Provenance.Standing: Standing.FromMemory } zone })
            yield return new(row, 1) { Zone = zone };
    }

    // Codes ask more of sawn timber that shows heartwood: what was read for it holds for nothing else.
    private static IEnumerable<Enquiry> InFull(Enquiry enquiry) =>
        enquiry is { FormOrFromSection: TimberForm.Sawn, HasExposedHeartwood: null }
            ? [enquiry with { HasExposedHeartwood = false }, enquiry with { HasExposedHeartwood = true }]
            : [enquiry];

    /// <summary>True where a row of which nothing is known covers cells in which a code may say different things, so that no one value can fill it.</summary>
    /// <param name="row">The row.</param>
    /// <param name="rulebook">Its rulebook.</param>
    public static bool IsTooWide(Row row, Rulebook rulebook)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(rulebook);
        return row.Demand is UnknownCell
            && TellingApart(row.Subject, rulebook).Any(field => row.When.All(condition => condition.Field != field));
    }

    private static IEnumerable<WorksheetCell> Cells(Answer answer, Rulebook rulebook)
    {
        foreach (var step in answer.Trace.Steps.Where(step => step.Subject != Subject.Advice))
        {
            foreach (var row in step.Matched)
            {
                if (row.Demand is UnknownCell)
                {
                    if (Cell(step.Subject, row, answer.Trace, rulebook) is { } part)
                        yield return part;
                }
                else
                {
                    foreach (var remembered in Remembered(row))
                        yield return remembered;
                }
            }
            if (step is { Finding: Silent, Subject: Subject.Penetration or Subject.Retention })
                if (Cell(step.Subject, null, answer.Trace, rulebook) is { } cell)
                    yield return cell;
        }
    }

    // Fields without which no value can be given for a cell.
    private static IEnumerable<Field> TellingApart(Subject subject, Rulebook rulebook) =>
        rulebook.Cells.Count > 0
            ? rulebook.Cells.Where(kind => kind.Subject == subject).SelectMany(kind => kind.By)
            : TellingApartByUseClass(subject, rulebook);

    private static IEnumerable<Field> TellingApartByUseClass(Subject subject, Rulebook rulebook)
    {
        if (subject is Subject.Penetration or Subject.Retention && AsksForLife(rulebook))
            yield return Field.Life;
        if (subject is Subject.Penetration or Subject.Acceptance)
            yield return Field.Form;
        if (
            (subject is Subject.Penetration or Subject.Acceptance && rulebook.Groups.Count > 0)
            // Most codes ask for one retention in every timber.
            || (subject == Subject.Retention && rulebook.RowsOf(subject).Any(row => row.Asks(Field.SpeciesGroup)))
        )
            yield return Field.SpeciesGroup;
    }

    private static bool AsksForLife(Rulebook rulebook) =>
        rulebook.Lives.Count > 0 || rulebook.Rows.Any(row => row.When.Any(condition => condition.Field == Field.Life));

    // The row that would answer: within a row of which nothing is known, otherwise within the use class. Null where the enquiry leaves open what tells cells apart.
    private static WorksheetCell? Cell(Subject subject, Row? within, Trace trace, Rulebook rulebook)
    {
        if (within is null && !IsOneClass(trace))
            return null;
        IReadOnlyList<Condition> given =
            within?.When ?? [new OneOf(Field.UseClass, [.. trace.UseClasses.Select(each => each.Label())])];
        var needed = TellingApart(subject, rulebook).ToList();
        List<Condition> told = [];
        foreach (
            var field in (ReadOnlySpan<Field>)
                [Field.Life, Field.Form, Field.ExposedHeartwood, Field.Coated, Field.SpeciesGroup]
        )
        {
            if (given.Any(condition => condition.Field == field))
                continue;
            if (Asked(field, subject, trace, rulebook, needed) is { } condition)
                told.Add(condition);
            else if (needed.Contains(field))
                return null;
        }
        // A row for other components alone would speak of the same pieces.
        if (
            within is null
            && trace.Enquiry.Component is { } component
            && rulebook
                .RowsOf(subject)
                .Any(row => row.Asks(Field.Component) && Row.MayHoldTogether([.. given, .. told], row.When))
        )
            told.Add(new OneOf(Field.Component, [component.Name]));
        return within switch
        {
            null => New(subject, [.. given, .. told]),
            { Demand: UnknownCell cell } when told.Count > 0 => Part(within, cell, told),
            _ => new(within, 1),
        };
    }

    // Both parts of class 3 are one class where the code's own label does not divide it.
    private static bool IsOneClass(Trace trace) =>
        trace.UseClasses.Count == 1 || Coded(trace)?.Classes.SequenceEqual(trace.UseClasses) == true;

    private static Condition? Asked(Field field, Subject subject, Trace trace, Rulebook rulebook, List<Field> needed) =>
        field switch
        {
            Field.Life when needed.Contains(field) && trace.Life is { } life => new Between(
                Field.Life,
                life.Years,
                IncludesLow: true,
                life.Years,
                IncludesHigh: true
            ),
            Field.Form when needed.Contains(field) && trace.Enquiry.FormOrFromSection is { } form => new OneOf(
                Field.Form,
                [form == TimberForm.Sawn ? "sawn" : "round"]
            ),
            Field.ExposedHeartwood
                when subject == Subject.Penetration
                    && trace.Enquiry is { FormOrFromSection: TimberForm.Sawn, HasExposedHeartwood: { } shown } => YesNo(
                field,
                shown
            ),
            Field.Coated
                when subject is Subject.Penetration or Subject.Retention
                    && trace.UseClasses.Any(each => each is UseClass.ThreeOne or UseClass.ThreeTwo)
                    && (trace.Enquiry.Exposure.IsCoated ?? Coded(trace)?.IsCoated) is { } isCoated => YesNo(
                field,
                isCoated
            ),
            Field.SpeciesGroup
                when needed.Contains(field)
                    && trace.Enquiry.Species is { } species
                    && rulebook.GroupsOf(species) is [var group, ..] => new OneOf(Field.SpeciesGroup, [group]),
            _ => null,
        };

    private static OneOf YesNo(Field field, bool answer) => new(field, [answer ? "yes" : "no"]);

    private static UseClassDemand? Coded(Trace trace) =>
        (trace.Step(Subject.UseClass)?.Finding as Settled)?.Demand as UseClassDemand;

    private static string SubjectKey(Subject subject) =>
        subject switch
        {
            Subject.UseClass => "use",
            Subject.Life => "life",
            Subject.Penetration => "penetration",
            Subject.Retention => "retention",
            Subject.Moisture => "moisture",
            Subject.Acceptance => "aql",
            _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, "No cell of a worksheet."),
        };

    private static string Key(string start, IEnumerable<Condition> when) =>
        string.Join(
                '-',
                when.Select(condition =>
                        condition switch
                        {
                            OneOf { Field: Field.Coated, Allowed: ["yes"] } => "coated",
                            OneOf { Field: Field.Coated } => "uncoated",
                            OneOf { Field: Field.ExposedHeartwood, Allowed: ["yes"] } => "heartwood",
                            OneOf { Field: Field.ExposedHeartwood } => "no-heartwood",
                            OneOf words => string.Join('-', words.Allowed),
                            Between range => InputProblem.Number(range.Low),
                            _ => "",
                        }
                    )
                    .Prepend(start)
            )
            .Replace(' ', '-');
}
