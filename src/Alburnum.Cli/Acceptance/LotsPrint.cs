using Alburnum.Acceptance.Indexed;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Acceptance;

/// <summary>A plant's lots on the terminal, where it stands last.</summary>
internal static class LotsPrint
{
    private const int LotsShown = 40;

    public static void Print(IAnsiConsole console, LotsDocument document)
    {
        console.WriteLine();
        console.WriteLine(
            LotWords.English.InspectedBy(document.Standard, document.Level, document.Aql, document.SwitchingStanding)
        );
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("Lot");
        table.AddColumn(new TableColumn("Pieces").RightAligned());
        table.AddColumn("Inspection");
        table.AddColumn(new TableColumn("Cut").RightAligned());
        table.AddColumn(new TableColumn("May fail").RightAligned());
        table.AddColumn(new TableColumn("Failed").RightAligned());
        table.AddColumn("Outcome");
        table.AddColumn("Next");
        foreach (var lot in document.Lots.TakeLast(LotsShown))
            table.AddRow(
                new Text(lot.Lot),
                new Text(InputProblem.Number(lot.Pieces)),
                new Text($"{lot.Severity.InWords()}, {lot.Letter}"),
                new Text(InputProblem.Number(lot.Cut)),
                new Text(InputProblem.Number(lot.MayFail)),
                new Text(InputProblem.Number(lot.Failures)),
                new Text(LotWords.English.Say(lot.Outcome)),
                new Text(LotWords.English.Say(lot.Next))
            );
        if (document.Lots.Count > LotsShown)
            table.Caption(LotWords.English.Latest(LotsShown, document.Lots.Count));
        console.Write(table);
        foreach (var lot in document.Lots.Where(lot => lot.Because is not null))
            console.WriteLine($"  {LotWords.English.Switched(lot.Lot, lot.Next, lot.Because!)}");
        console.WriteLine(document.InWords);
    }
}
