using System.Globalization;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks;

/// <summary>The stored output of an independent program: lines of "what,number,number,…" in the reference folder.</summary>
internal static class ReferenceTable
{
    /// <summary>The numbers of each line about one thing.</summary>
    /// <param name="file">File in the reference folder.</param>
    /// <param name="what">First cell of the lines wanted.</param>
    public static TheoryData<double[]> Rows(string file, string what)
    {
        var rows = File.ReadLines(Repository.At("tests", "Alburnum.OutsideChecks", "reference", file))
            .Where(line => line.StartsWith(what + ",", StringComparison.Ordinal))
            .Select(line =>
                line.Split(',')[1..].Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()
            );
        return [.. rows];
    }
}
