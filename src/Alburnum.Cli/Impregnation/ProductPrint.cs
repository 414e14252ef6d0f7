using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;

namespace Alburnum.Cli.Impregnation;

/// <summary>Where the product of a treatment stays, at a glance.</summary>
internal static class ProductPrint
{
    private static ProductWords Words => ProductWords.Current;

    public static void Print(
        IAnsiConsole console,
        IReadOnlyList<WallsBasis> walls,
        IEnumerable<IReadOnlyList<string>> rows,
        IReadOnlyList<IReadOnlyList<ProductBandDocument>> bands,
        IReadOnlyList<string> notes
    )
    {
        Heading(console, Words.Title);
        console.Write(Of(["", .. walls.Select(Words.Walls)], rows));
        var shown = Enumerable.Range(0, walls.Count).Where(n => bands[n].Count > 0).ToList();
        if (shown.Count > 0)
        {
            console.MarkupLineInterpolated($"[bold]{Words.OverDepth}[/]");
            console.Write(
                Of(Words.BandHeadings(shown.Select(n => walls[n])), Words.BandRows([.. shown.Select(n => bands[n])]))
            );
        }
        foreach (var note in notes)
            console.WriteLine("  " + note);
    }

    public static void Budget(IAnsiConsole console, IReadOnlyList<UncertainPartDocument> parts, double combined)
    {
        Heading(console, Words.Budget);
        console.Write(
            Of(
                Words.BudgetHeadings,
                parts
                    .Append(new(Words.Together, combined))
                    .Select(part => Words.Part(part.Cause, part.KgPerM3, combined))
            )
        );
    }

    private static void Heading(IAnsiConsole console, string heading)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{heading}[/]");
    }

    private static Table Of(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(headings[0]);
        foreach (var heading in headings.Skip(1))
            table.AddColumn(new TableColumn(Markup.Escape(heading)).RightAligned());
        foreach (var row in rows)
            table.AddRow(row.Select(cell => new Text(cell)));
        return table;
    }
}
