using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Acceptance;

/// <summary>Refuses what a standard's tables have no plan for.</summary>
public static class TablesFit
{
    /// <summary>The plan of a lot.</summary>
    /// <param name="tables">The standard's tables.</param>
    /// <param name="lot">Pieces in the lot.</param>
    /// <param name="level">Inspection level.</param>
    /// <param name="aqlPercent">The AQL, %.</param>
    /// <param name="severity">Normal, tightened or reduced.</param>
    /// <exception cref="InputRefusedException">The lot is smaller than the tables' smallest, or they have no column for the AQL.</exception>
    internal static IndexedPlan Plan(
        AttributeTables tables,
        int lot,
        InspectionLevel level,
        double aqlPercent,
        Severity severity
    )
    {
        var aql = Aql(tables, aqlPercent);
        return lot >= tables.LotSizes[0].From
            ? tables.Find(lot, level, aql, severity)
            : throw AcceptanceFields.Lot.Refused(
                file: null,
                InputProblem.Number(lot),
                $"{tables.LotSizes[0].From} pieces or more"
            );
    }

    /// <summary>An AQL that the tables have a column for.</summary>
    /// <param name="tables">The standard's tables.</param>
    /// <param name="aqlPercent">The AQL, %.</param>
    /// <exception cref="InputRefusedException">The tables have no such column.</exception>
    public static double Aql(AttributeTables tables, double aqlPercent)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return tables.AqlsPercent.Any(column => Math.Abs(column - aqlPercent) < 1e-9)
            ? aqlPercent
            : throw AcceptanceFields.Aql.Refused(
                file: null,
                InputProblem.Number(aqlPercent),
                $"an AQL of {tables.Source.Document}: {string.Join(", ", tables.AqlsPercent.Select(InputProblem.Number))}"
            );
    }
}
