using System.Globalization;
using Alburnum.Acceptance.Indexed;

namespace Alburnum.Workflows.Acceptance;

/// <summary>Refuses what a standard's tables have no plan for.</summary>
public static class TablesFit
{
    /// <summary>A lot that the tables have plans for.</summary>
    /// <param name="tables">The standard's tables.</param>
    /// <param name="lot">Pieces in the lot.</param>
    /// <param name="name">What it is called where it was written.</param>
    /// <exception cref="InputRefusedException">The lot is smaller than the tables' smallest.</exception>
    public static int Lot(AttributeTables tables, int lot, string name)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return lot >= tables.LotSizes[0].From
            ? lot
            : throw Refused(name, Digits(lot), $"{tables.LotSizes[0].From} pieces or more");
    }

    /// <summary>An AQL that the tables have a column for.</summary>
    /// <param name="tables">The standard's tables.</param>
    /// <param name="aqlPercent">The AQL, %.</param>
    /// <param name="name">What it is called where it was written.</param>
    /// <exception cref="InputRefusedException">The tables have no such column.</exception>
    public static double Aql(AttributeTables tables, double aqlPercent, string name)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return tables.AqlsPercent.Any(column => Math.Abs(column - aqlPercent) < 1e-9)
            ? aqlPercent
            : throw Refused(
                name,
                Digits(aqlPercent),
                $"an AQL of {tables.Source.Document}: {string.Join(", ", tables.AqlsPercent.Select(Digits))}"
            );
    }

    private static InputRefusedException Refused(string name, string found, string expected) =>
        new(new InputProblem(name, 0, "", "", found, expected));

    private static string Digits(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
