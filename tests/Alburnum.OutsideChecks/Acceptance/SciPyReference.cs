using System.Globalization;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Acceptance;

/// <summary>The stored output of reference/acceptance.py, a second implementation in another language.</summary>
internal static class SciPyReference
{
    public const string Program = "SciPy 1.10.1 (Debian 12)";
    public const string Script = "tests/Alburnum.OutsideChecks/reference/acceptance.py, output stored beside it";

    public static IReadOnlyList<(double[] Arguments, double Value)> Rows(string what)
    {
        var rows = File.ReadLines(Repository.At("tests", "Alburnum.OutsideChecks", "reference", "acceptance-scipy.csv"))
            .Where(line => line.StartsWith(what + ",", StringComparison.Ordinal))
            .Select(line => line.Split(',')[1..])
            .Select(cells => (cells[..^1].Where(cell => cell.Length > 0).Select(Number).ToArray(), Number(cells[^1])))
            .ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
