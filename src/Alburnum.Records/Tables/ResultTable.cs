using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Records.Tables;

/// <summary>Results of the pieces cut from one batch: already judged, or as depths still to be judged.</summary>
public abstract record BatchResults;

/// <summary>Pieces that somebody has judged.</summary>
/// <param name="Pieces">Number of each piece and its verdict; undecided where it was not determined.</param>
public sealed record JudgedPieces(IReadOnlyList<(string Piece, Verdict Verdict)> Pieces) : BatchResults;

/// <summary>Pieces with their depths.</summary>
/// <param name="Section">Their nominal section.</param>
/// <param name="Pieces">Each piece with its readings.</param>
public sealed record MeasuredPieces(Section Section, IReadOnlyList<RulerPiece> Pieces) : BatchResults;

/// <summary>
/// Reads a table of results. With the columns <c>piece, result</c> the pieces are already judged (pass, fail, not determined); with those of
/// <see cref="RulerTable"/> they are to be judged.
/// </summary>
public static class ResultTable
{
    private const string ResultColumn = "result";

    /// <summary>Reads a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="section">Nominal section of the pieces; null where it was not stated (no depths can be read then).</param>
    /// <exception cref="InputRefusedException">Anything is missing or wrong; carries every problem found.</exception>
    public static BatchResults Read(Table table, Section? section)
    {
        ArgumentNullException.ThrowIfNull(table);
        List<InputProblem> problems = [];
        BatchResults results = table.Columns.Contains(ResultColumn, StringComparer.Ordinal)
            ? Judged(table, problems)
            : new MeasuredPieces(ToMeasure(table, section), RulerTable.Read(table, section!, problems));
        return problems.Count == 0 ? results : throw new InputRefusedException(problems);
    }

    private static JudgedPieces Judged(Table table, List<InputProblem> problems)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var lines = TableLine.ReadAll(
            table,
            ["piece", ResultColumn],
            [],
            problems,
            line => (Piece: line.OwnText("piece", first, "piece"), Verdict: VerdictOf(line))
        );
        return new([.. lines.SelectMany(line => line.Verdict is { } said ? new[] { (line.Piece, said) } : [])]);
    }

    /// <summary>What the cell says; null where it was refused.</summary>
    private static Verdict? VerdictOf(TableLine line)
    {
        var text = line.Text(ResultColumn);
        Verdict? verdict = text switch
        {
            "pass" => Verdict.Conforms,
            "fail" => Verdict.DoesNotConform,
            "not determined" => Verdict.Undecided,
            _ => null,
        };
        if (verdict is null)
            line.Refuse(ResultColumn, text.Length > 0 ? $"\"{text}\"" : "nothing", "pass, fail or not determined");
        return verdict;
    }

    /// <summary>The section of pieces that are to be judged by their depths.</summary>
    private static Section ToMeasure(Table table, Section? section)
    {
        if (!table.Columns.Intersect(RulerTable.Columns.Skip(1), StringComparer.Ordinal).Any())
            throw new InputRefusedException(
                new InputProblem(
                    table.Name,
                    table.HeaderLine,
                    "",
                    "",
                    $"the columns {string.Join(", ", table.Columns)}",
                    $"piece and {ResultColumn}; or {string.Join(", ", RulerTable.Columns)}"
                )
            );
        return section
            ?? throw new InputRefusedException(
                new InputProblem(
                    table.Name,
                    table.HeaderLine,
                    "",
                    "",
                    "depths, without the section of their pieces",
                    $"the section as well, {SectionText.Expected}"
                )
            );
    }
}
