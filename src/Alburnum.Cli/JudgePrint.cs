using Spectre.Console;

namespace Alburnum.Cli;

/// <summary>A batch verdict on the terminal, the verdict last.</summary>
internal static class JudgePrint
{
    private const int PiecesShown = 40;

    public static void Print(IAnsiConsole console, JudgeDocument document)
    {
        console.WriteLine();
        if (document.Demand is { } demand)
        {
            console.WriteLine($"Asked for: {demand}");
            console.WriteLine();
            console.Write(Pieces(document));
        }
        foreach (var reason in document.Penetration.Reasons.Concat(document.Retention?.Reasons ?? []))
            console.WriteLine(reason);
        console.WriteLine(document.Believed);
        if (document.OtherReading is { } other)
            console.WriteLine(other);
        foreach (var help in document.Help)
            console.WriteLine(help);
        console.WriteLine();
        console.Write(
            new Text(
                document.Verdict.ToUpperInvariant(),
                new Style(Colour(document.Verdict), decoration: Decoration.Bold)
            )
        );
        console.WriteLine(
            document.Probability is { } probability ? $"  probability of conformity {Options.Percent(probability)}" : ""
        );
        console.WriteLine(document.InWords);
    }

    private static Table Pieces(JudgeDocument document)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("Piece");
        table.AddColumn("Verdict");
        table.AddColumn(new TableColumn("Probability").RightAligned());
        table.AddColumn("Why");
        foreach (var piece in document.Pieces.Take(PiecesShown))
            table.AddRow(
                new Text(piece.Piece),
                new Text(piece.Verdict, new Style(Colour(piece.Verdict))),
                new Text(piece.Probability is { } probability ? Options.Percent(probability) : "–"),
                new Text(string.Join(" ", piece.Reasons))
            );
        if (document.Pieces.Count > PiecesShown)
            table.Caption($"and {document.Pieces.Count - PiecesShown} more");
        return table;
    }

    private static Color Colour(string verdict) =>
        verdict switch
        {
            "conforms" => Color.Green,
            "does not conform" => Color.Red,
            _ => Color.Yellow,
        };
}
