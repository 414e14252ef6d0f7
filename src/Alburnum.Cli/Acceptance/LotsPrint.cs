using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Acceptance;

/// <summary>A plant's lots on the terminal, where it stands last.</summary>
internal static class LotsPrint
{
    private const int LotsShown = 40;

    public static void Print(IAnsiConsole console, LotsDocument document)
    {
        console.WriteLine();
        console.WriteLine(
            LotWords.Current.InspectedBy(document.Standard, document.Level, document.Aql, document.SwitchingStanding)
        );
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(Said("terminal.lot"));
        table.AddColumn(new TableColumn(Said("terminal.pieces")).RightAligned());
        table.AddColumn(Said("terminal.inspection"));
        table.AddColumn(new TableColumn(Said("terminal.cut")).RightAligned());
        table.AddColumn(new TableColumn(Said("terminal.may-fail")).RightAligned());
        table.AddColumn(new TableColumn(Said("terminal.failed")).RightAligned());
        table.AddColumn(Said("terminal.outcome"));
        table.AddColumn(Said("terminal.next"));
        foreach (var lot in document.Lots.TakeLast(LotsShown))
            table.AddRow(
                new Text(lot.Lot),
                new Text(InputProblem.Number(lot.Pieces)),
                new Text($"{Wording.Current.Say(lot.Severity)}, {lot.Letter}"),
                new Text(InputProblem.Number(lot.Cut)),
                new Text(InputProblem.Number(lot.MayFail)),
                new Text(InputProblem.Number(lot.Failures)),
                new Text(LotWords.Current.Say(lot.Outcome)),
                new Text(LotWords.Current.Say(lot.Next))
            );
        if (document.Lots.Count > LotsShown)
            table.Caption(LotWords.Current.Latest(LotsShown, document.Lots.Count, Options.Json));
        console.Write(table);
        foreach (var lot in document.Lots.Where(lot => lot.Because is not null))
            console.WriteLine($"  {LotWords.Current.Switched(lot.Lot, lot.Next, lot.Because!)}");
        console.WriteLine(document.InWords);
    }
}
