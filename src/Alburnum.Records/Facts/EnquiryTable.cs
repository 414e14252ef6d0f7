using System.Globalization;
using Alburnum.Facts;
using Alburnum.Requirements;
using CsvHelper;
using CsvHelper.Configuration;

namespace Alburnum.Records.Facts;

/// <summary>Reads archived enquiries from a CSV table; columns as in docs/how-to/find-a-requirement.md, all but the header optional.</summary>
public static class EnquiryTable
{
    private static readonly string Columns = string.Join(", ", EnquiryFields.All.Select(field => field.Column));

    /// <summary>Reads every row, or refuses with every problem.</summary>
    /// <param name="path">Path of the table.</param>
    /// <param name="facts">Names of components and species.</param>
    /// <exception cref="InputRefusedException">The table is missing or a cell cannot be read.</exception>
    public static IReadOnlyList<Enquiry> Read(string path, FactLibrary facts)
    {
        if (!File.Exists(path))
            throw new InputRefusedException(
                new InputProblem(path, 0, "", "", "no such file", "a CSV table of enquiries")
            );
        using var text = new StringReader(FileTrouble.Refusing(path, "a table in CSV", () => File.ReadAllText(path)));
        return Read(text, path, facts);
    }

    /// <summary>As <see cref="Read(string, FactLibrary)"/>, from an open text.</summary>
    /// <param name="text">The table.</param>
    /// <param name="file">Name for messages.</param>
    /// <param name="facts">Names of components and species.</param>
    public static IReadOnlyList<Enquiry> Read(TextReader text, string file, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var problems = new List<InputProblem>();
        var enquiries = new List<Enquiry>();
        using var csv = new CsvReader(
            text,
            new CsvConfiguration(CultureInfo.InvariantCulture) { TrimOptions = TrimOptions.Trim, BadDataFound = null }
        );
        if (!csv.Read() || !csv.ReadHeader())
            throw new InputRefusedException(new InputProblem(file, 1, "", "", "an empty table", Columns));
        foreach (
            var column in csv.HeaderRecord!.Except(
                EnquiryFields.All.Select(field => field.Column),
                StringComparer.Ordinal
            )
        )
            problems.Add(new InputProblem(file, 1, "", column, "an unknown column", Columns));

        var row = new CellFields(csv, file, problems);
        while (csv.Read())
            enquiries.Add(EnquiryReader.Read(row, facts));
        return problems.Count == 0 ? enquiries : throw new InputRefusedException(problems);
    }

    private sealed class CellFields(CsvReader csv, string file, List<InputProblem> problems) : IFields
    {
        public string? Text(AskedField field) =>
            csv.TryGetField<string>(field.Column, out var text) && !string.IsNullOrEmpty(text) ? text : null;

        public void Refuse(AskedField field, string found, string expected) =>
            problems.Add(new InputProblem(file, csv.Parser.RawRow, "", field.Column, found, expected));
    }
}
