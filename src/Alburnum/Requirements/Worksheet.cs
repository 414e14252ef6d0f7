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
    /// The cells that some enquiries ask for and that nobody has read, those asked for most first; no two of those that would be filled overlap. A row that is not known is
    /// split by what tells its cells apart, and an enquiry that leaves open whether heartwood shows needs both.
    /// </summary>
    /// <param name="rulebook">The rulebook.</param>
    /// <param name="enquiries">Enquiries, the commonest first.</param>
    public static IReadOnlyList<WorksheetCell> Of(Rulebook rulebook, IReadOnlyList<Enquiry> enquiries)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        ArgumentNullException.ThrowIfNull(enquiries);
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
                else if (row.Provenance.Standing == Standing.FromMemory)
                    yield return new(row, 1);
                if (row.Demand is PenetrationDemand { Zone: { Provenance.Standing: Standing.FromMemory } zone })
                    yield return new(row, 1) { Zone = zone };
            }
            if (step is { Finding: Silent, Subject: Subject.Penetration or Subject.Retention })
                if (Cell(step.Subject, null, answer.Trace, rulebook) is { } cell)
                    yield return cell;
        }
    }

    // Fields without which no value can be given for a cell.
    private static IEnumerable<Field> TellingApart(Subject subject, Rulebook rulebook)
    {
        if (subject is Subject.Penetration or Subject.Retention && AsksForLife(rulebook))
            yield return Field.Life;
        if (subject is Subject.Penetration or Subject.Acceptance)
            yield return Field.Form;
        if (subject is Subject.Penetration or Subject.Retention or Subject.Acceptance && rulebook.Groups.Count > 0)
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
        if (within is not null && told.Count == 0)
            return new(within, 1);
        var key = Key(within?.Key ?? SubjectKey(subject), within is null ? [.. given, .. told] : told);
        var reason = (within?.Demand as UnknownCell)?.Reason ?? "";
        IReadOnlyList<string> overrides = within is null ? [] : [within.Key];
        return new(new(key, subject, [.. given, .. told], new UnknownCell(reason), overrides, NoSource), 1);
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

    private static string SubjectKey(Subject subject) => subject == Subject.Penetration ? "penetration" : "retention";

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
