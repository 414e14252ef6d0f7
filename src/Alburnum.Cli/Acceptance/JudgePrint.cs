using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Figures;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Acceptance;

/// <summary>A judged batch on the terminal, what was found last.</summary>
internal static class JudgePrint
{
    private const int PiecesShown = 40;

    public static void Print(IAnsiConsole console, JudgeDocument document)
    {
        console.WriteLine();
        if (document.Demand is { } demand)
        {
            console.WriteLine(JudgeWords.Current.Required(demand));
            console.WriteLine();
            console.Write(Pieces(document));
        }
        foreach (var reason in document.BesideFindings)
            console.WriteLine(reason);
        if (document.OtherReading is { } other)
            console.WriteLine(other);
        foreach (var line in (document.Risks?.InWords ?? []).Concat(document.Help))
            console.WriteLine(line);
        FindingsPrint.Print(console, document.Findings);
    }

    private static Table Pieces(JudgeDocument document)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(Said("terminal.piece"));
        table.AddColumn(Said("terminal.verdict"));
        table.AddColumn(new TableColumn(Said("terminal.probability")).RightAligned());
        table.AddColumn(Said("terminal.why"));
        foreach (var piece in document.Pieces.Take(PiecesShown))
            table.AddRow(
                new Text(piece.Piece),
                new Text(Wording.Current.Say(piece.Verdict), new Style(VerdictColour.Of(piece.Verdict))),
                new Text(Probability(piece)),
                new Text(string.Join(" ", piece.Reasons))
            );
        if (document.Pieces.Count > PiecesShown)
            table.Caption(Said("terminal.and-more", ("count", Whole(document.Pieces.Count - PiecesShown))));
        return table;
    }

    // Both ends, where the evidence leaves it open between them: the verdict goes by the less favourable one.
    private static string Probability(JudgePiece piece)
    {
        if (piece is not { Probability: { } probability, ProbabilityLow: { } low, ProbabilityHigh: { } high })
            return "–";
        var (least, most) = (Certainty(low), Certainty(high));
        return least == most ? Certainty(probability) : Said("terminal.between", ("low", least), ("high", most));
    }
}
