using System.Globalization;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Figures;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Acceptance;

/// <summary>A sampling sheet on the terminal.</summary>
internal static class SamplePrint
{
    private const int BarCells = 8;
    private const int Rows = 13;

    public static void Print(IAnsiConsole console, SampleDocument sheet)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{sheet.Plan}[/]");
        console.WriteLine($"{sheet.Source} ({Wording.Current.Say(sheet.Standing)})");
        console.WriteLine();
        console.WriteLine($"{Said("terminal.cut"), -8}{sheet.Cut}");
        console.WriteLine($"{Said("terminal.passes"), -8}{sheet.Passes}");
        if (sheet.Positions.Count > 0)
        {
            console.WriteLine();
            console.WriteLine(SampleWords.Current.Positions(sheet.Seed ?? 0));
            console.WriteLine(string.Join(" ", sheet.Positions));
        }
        console.WriteLine();
        console.Write(Curves(sheet));
        console.Write(Landmarks(sheet));
        foreach (var note in sheet.Notes)
            console.WriteLine(note);
    }

    private static Table Curves(SampleDocument sheet)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(new TableColumn(Said("terminal.failing")).RightAligned());
        foreach (var reading in sheet.Readings)
            table.AddColumn(new TableColumn(Markup.Escape(reading.Name)));
        var first = sheet.Readings[0].Curve;
        // A plan that may stop early has a mean number of pieces of its own at every quality.
        var mayStop = first.Any(point => point.MeanPiecesCut < sheet.MostPiecesCut - 1e-9);
        if (mayStop)
            table.AddColumn(new TableColumn(SampleWords.Current.MeanPiecesCut).RightAligned());
        var every = Math.Max(1, (int)Math.Ceiling((first.Count - 1.0) / (Rows - 1)));
        for (var i = 0; i < first.Count; i += every)
        {
            var at = i;
            List<Text> row =
            [
                new(Percent(first[at].FailingShare)),
                .. sheet.Readings.Select(reading => new Text(Bar(reading.Curve[at].Acceptance))),
            ];
            if (mayStop)
                row.Add(new(first[at].MeanPiecesCut.ToString("0.0", CultureInfo.InvariantCulture)));
            table.AddRow(row);
        }
        return table;
    }

    private static Table Landmarks(SampleDocument sheet)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(SampleWords.Current.AcceptedWith);
        table.AddColumn(new TableColumn("95 %").RightAligned());
        table.AddColumn(new TableColumn("50 %").RightAligned());
        table.AddColumn(new TableColumn("10 %").RightAligned());
        foreach (var reading in sheet.Readings)
            table.AddRow(
                new Text(reading.Name),
                new Text(Percent(reading.Landmarks.ProducerShare)),
                new Text(Percent(reading.Landmarks.IndifferentShare)),
                new Text(Percent(reading.Landmarks.ConsumerShare))
            );
        return table;
    }

    private static string Bar(double probability)
    {
        var cells = (int)Math.Round(probability * BarCells);
        return $"{new string('█', cells)}{new string('·', BarCells - cells)} {Percent(probability)}";
    }
}
