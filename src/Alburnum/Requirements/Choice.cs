namespace Alburnum.Requirements;

/// <summary>Which row of a subject governs a situation: the one place where rows are matched.</summary>
internal static class Choice
{
    /// <summary>Matches the rows of one subject, applies their exceptions and says what they come to.</summary>
    public static TraceStep Among(Subject subject, IReadOnlyList<Row> rows, Situation situation)
    {
        List<Row>? matched = null;
        List<Miss>? open = null;
        List<Miss>? nearMisses = null;
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            switch (Of(row, situation, out var condition))
            {
                case Fit.Yes:
                    (matched ??= []).Add(row);
                    break;
                case Fit.Unsure:
                    // An exception for one preservative is one of two branches only of a piece that it otherwise holds for; of any other piece the general row speaks.
                    if (
                        row.Overrides.Count == 0
                        || condition!.Field == Field.Preservative
                        || !WaitsForName(row, situation)
                    )
                        (open ??= []).Add(Missed(row, condition!, situation));
                    break;
                default:
                    // A row that failed on more than one field is no near miss, nor one for a preservative that nobody has named.
                    if (condition is not null && !WaitsForName(row, situation))
                        (nearMisses ??= []).Add(Missed(row, condition, situation));
                    break;
            }
        }

        var setAside = SetAside(matched, ref open);
        return new TraceStep(
            subject,
            Conclude(subject, matched, open),
            matched ?? [],
            setAside ?? [],
            open ?? [],
            nearMisses ?? []
        );
    }

    private static bool WaitsForName(Row row, Situation situation) =>
        !situation[Field.Preservative].IsKnown && row.Asks(Field.Preservative);

    // The condition that is open (Unsure; the preservative only where no other is) or that alone failed (No); null where more than one failed.
    private static Fit Of(Row row, Situation situation, out Condition? condition)
    {
        condition = null;
        Condition? failed = null;
        Condition? unsure = null;
        var when = row.When;
        for (var i = 0; i < when.Count; i++)
        {
            switch (when[i].Of(situation[when[i].Field]))
            {
                case Fit.No when failed is not null:
                    return Fit.No;
                case Fit.No:
                    failed = when[i];
                    break;
                case Fit.Unsure:
                    if (unsure is null or { Field: Field.Preservative })
                        unsure = when[i];
                    break;
                default:
                    break;
            }
        }
        condition = failed ?? unsure;
        if (failed is not null)
            return Fit.No;
        return unsure is null ? Fit.Yes : Fit.Unsure;
    }

    // Rows named as overridden by a row that surely holds no longer count, whether they hold or are open; nor do rows for the use alone beside one for the class that the contract names.
    private static List<Row>? SetAside(List<Row>? matched, ref List<Miss>? open)
    {
        var isByClass = matched?.Exists(row => row.Subject != Subject.Advice && row.Asks(Field.StatedClass)) == true;
        if (matched is null || !(isByClass || matched.Exists(row => row.Overrides.Count > 0)))
            return null;
        var exceptions = matched.Where(row => row.Overrides.Count > 0).ToList();
        bool Yields(Row row) =>
            isByClass && !row.Asks(Field.StatedClass)
            || exceptions.Exists(exception => exception.Overrides.Contains(row.Key, StringComparer.Ordinal));
        var setAside = matched.Where(Yields).ToList();
        matched.RemoveAll(Yields);
        open = open?.Where(miss => !Yields(miss.Row)).ToList();
        return setAside;
    }

    private static Finding Conclude(Subject subject, List<Row>? matched, List<Miss>? open)
    {
        if (subject == Subject.Advice || (matched is null && open is null or { Count: 0 }))
            return new Silent();
        var demand = matched?[0].Demand ?? open![0].Row.Demand;
        if (matched is not null && !matched.TrueForAll(row => row.Demand.Equals(demand)))
            return new Contradicted();
        var isOpen =
            open is { Count: > 0 } && (matched is null || !open.TrueForAll(miss => miss.Row.Demand.Equals(demand)));
        return isOpen ? new Depends([.. open!.Select(miss => miss.Field).Distinct()]) : new Settled(demand);
    }

    private static Miss Missed(Row row, Condition condition, Situation situation) =>
        new(row, condition, situation[condition.Field]);
}
