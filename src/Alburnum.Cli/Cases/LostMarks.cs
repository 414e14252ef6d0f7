using Alburnum.Records.Marks;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Cases;

/// <summary>Says which marks of a case's last run are not in its folder: they were made on its page, and this run went without them.</summary>
internal static class LostMarks
{
    /// <summary>Says it, or that it cannot be said.</summary>
    /// <param name="console">Where it is said.</param>
    /// <param name="before">The last run; null where this version cannot read it.</param>
    /// <param name="now">This run.</param>
    public static void Print(IAnsiConsole console, CaseDocument? before, CaseDocument now)
    {
        if (before is null)
        {
            console.WriteLine(CaseWords.Current.BeforeCannotBeRead);
            return;
        }
        var readings = now.Pieces.ToDictionary(piece => piece.Name, piece => piece.Reading, StringComparer.Ordinal);
        foreach (var piece in before.Pieces)
        {
            var lines = Lines(piece.Reading);
            if (
                lines.Count == 0
                || !readings.TryGetValue(piece.Name, out var reading)
                || reading.Sha256 != piece.Reading.Sha256
                || lines.SequenceEqual(Lines(reading), StringComparer.Ordinal)
            )
                continue;
            console.WriteLine(CaseWords.Current.OtherMarks(piece.Name));
            foreach (var line in lines)
                console.WriteLine($"    {line}");
        }
    }

    private static IReadOnlyList<string> Lines(ReadingDocument reading) =>
        MarkText.CaseLines(MarksMapping.Written(reading.Marks));
}
