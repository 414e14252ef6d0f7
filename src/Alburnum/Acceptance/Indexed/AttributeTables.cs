namespace Alburnum.Acceptance.Indexed;

/// <summary>Code letters for one range of lot sizes.</summary>
/// <param name="From">Smallest lot, pieces.</param>
/// <param name="To">Largest lot, pieces; null for no limit.</param>
/// <param name="Letters">Code letter at each inspection level.</param>
public sealed record LotSizeRow(int From, int? To, IReadOnlyDictionary<InspectionLevel, char> Letters);

/// <summary>One row of a table of plans.</summary>
/// <param name="Letter">Code letter.</param>
/// <param name="SampleSize">Pieces to cut.</param>
/// <param name="Cells">One cell for each AQL of the tables, in the same order.</param>
public sealed record PlanRow(char Letter, int SampleSize, IReadOnlyList<PlanCell> Cells);

/// <summary>A standard's tables of single sampling plans by attributes, indexed by lot size, inspection level and AQL.</summary>
public sealed class AttributeTables
{
    private readonly IReadOnlyDictionary<Severity, IReadOnlyList<PlanRow>> _plans;

    /// <summary>Checks that the tables hang together: no gap between lot sizes, a row for each letter, every arrow leads to a plan.</summary>
    /// <param name="source">The standard.</param>
    /// <param name="lotSizes">Code letters, smallest lots first.</param>
    /// <param name="aqlsPercent">The AQLs of the columns, rising.</param>
    /// <param name="plans">A table for each severity, letters in order.</param>
    /// <exception cref="FormatException">The tables do not hang together.</exception>
    public AttributeTables(
        Provenance source,
        IReadOnlyList<LotSizeRow> lotSizes,
        IReadOnlyList<double> aqlsPercent,
        IReadOnlyDictionary<Severity, IReadOnlyList<PlanRow>> plans
    )
    {
        Source = source;
        LotSizes = lotSizes;
        AqlsPercent = aqlsPercent;
        _plans = plans;
        Check();
    }

    /// <summary>The standard that the tables come from.</summary>
    public Provenance Source { get; }

    /// <summary>Code letters, smallest lots first.</summary>
    public IReadOnlyList<LotSizeRow> LotSizes { get; }

    /// <summary>The AQLs that have a column.</summary>
    public IReadOnlyList<double> AqlsPercent { get; }

    /// <summary>The rows of one table, letters in order.</summary>
    internal IReadOnlyList<PlanRow> Rows(Severity severity) => _plans[severity];

    /// <summary>The code letter for a lot.</summary>
    /// <param name="lotSize">Pieces in the lot; at least the smallest that the tables know.</param>
    /// <param name="level">Inspection level.</param>
    public char CodeLetter(int lotSize, InspectionLevel level)
    {
        Require.InRange(lotSize, LotSizes[0].From, int.MaxValue, "pieces");
        return LotSizes.First(row => lotSize <= (row.To ?? int.MaxValue)).Letters[level];
    }

    /// <summary>The plan for a lot, arrows followed.</summary>
    /// <param name="lotSize">Pieces in the lot.</param>
    /// <param name="level">Inspection level.</param>
    /// <param name="aqlPercent">AQL; one of <see cref="AqlsPercent"/>.</param>
    /// <param name="severity">Normal, tightened or reduced.</param>
    /// <exception cref="ArgumentException">The AQL has no column, or the tables have no plan there.</exception>
    public IndexedPlan Find(int lotSize, InspectionLevel level, double aqlPercent, Severity severity = Severity.Normal)
    {
        var letter = CodeLetter(lotSize, level);
        var (row, numbers) =
            Follow(letter, aqlPercent, severity)
            ?? throw new ArgumentException(
                $"The tables have no plan for letter {letter} at AQL {aqlPercent}.",
                nameof(level)
            );
        return new(
            new(Math.Min(row.SampleSize, lotSize), numbers.Accept, numbers.Reject),
            lotSize,
            level,
            aqlPercent,
            severity,
            letter,
            row.Letter,
            row.SampleSize >= lotSize,
            Source
        );
    }

    /// <summary>The row and numbers that a letter and an AQL lead to; null where the table has none.</summary>
    public (PlanRow Row, PlanNumbers Numbers)? Follow(char letter, double aqlPercent, Severity severity)
    {
        var rows = _plans[severity];
        var column = Column(aqlPercent);
        var at = Enumerable.Range(0, rows.Count).First(i => rows[i].Letter == letter);
        while (at >= 0 && at < rows.Count)
        {
            switch (rows[at].Cells[column])
            {
                case PlanNumbers numbers:
                    return (rows[at], numbers);
                case PlanBelow:
                    at++;
                    break;
                case PlanAbove:
                    at--;
                    break;
                default:
                    return null;
            }
        }
        return null;
    }

    private int Column(double aqlPercent)
    {
        for (var i = 0; i < AqlsPercent.Count; i++)
            if (Math.Abs(AqlsPercent[i] - aqlPercent) < 1e-9)
                return i;
        throw new ArgumentException(
            $"AQL {aqlPercent} is not in the tables; they know {string.Join(", ", AqlsPercent)}.",
            nameof(aqlPercent)
        );
    }

    private void Check()
    {
        for (var i = 1; i < LotSizes.Count; i++)
            Hold(LotSizes[i - 1].To + 1 == LotSizes[i].From, $"lots of {LotSizes[i].From} do not follow the row above");
        Hold(LotSizes.Count > 0 && LotSizes[^1].To is null, "the last lot size must have no limit");
        Hold(
            LotSizes.All(row => Enum.GetValues<InspectionLevel>().All(row.Letters.ContainsKey)),
            "every lot size needs a letter at every level"
        );
        foreach (var severity in Enum.GetValues<Severity>())
        {
            Hold(_plans.ContainsKey(severity), $"the {severity.InWords()} table is missing");
            var rows = _plans[severity];
            Hold(
                rows.All(row => row.Cells.Count == AqlsPercent.Count),
                $"a row of the {severity.InWords()} table has not one cell for each AQL"
            );
            foreach (var letter in LotSizes.SelectMany(row => row.Letters.Values).Distinct())
            {
                Hold(
                    rows.Any(row => row.Letter == letter),
                    $"letter {letter} has no row in the {severity.InWords()} table"
                );
                Hold(
                    AqlsPercent.All(aql => Follow(letter, aql, severity) is not null),
                    $"an arrow of letter {letter} in the {severity.InWords()} table leads nowhere"
                );
            }
        }
    }

    private static void Hold(bool claim, string otherwise)
    {
        if (!claim)
            throw new FormatException($"The sampling tables are inconsistent: {otherwise}.");
    }
}
