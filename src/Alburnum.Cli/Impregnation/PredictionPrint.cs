using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Impregnation;

/// <summary>A prediction at a glance: what is required, what to expect, which model says so, and what it rests on.</summary>
internal static class PredictionPrint
{
    private static PredictionWords Words => PredictionWords.Current;

    public static void Print(IAnsiConsole console, PredictionDocument document, string? folder)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]");
        console.WriteLine(Words.Woods(document.Sapwood, document.Heartwood));
        console.WriteLine(TreatingWords.Current.Required(document.Demand));
        if (document is { Incising: { } cuts, StrengthPenalty: { } penalty })
        {
            console.WriteLine(Words.Incised(cuts));
            console.WriteLine(penalty);
        }
        console.WriteLine();
        console.Write(Spreads(document));
        foreach (var sentence in Words.Meet(document.PieceShare, document.CoreShare))
            console.WriteLine(sentence);
        foreach (var sentence in document.UsualInWords)
            console.WriteLine(sentence);
        if (document.ChanceToPass is { } chance)
            console.WriteLine(Words.ChanceToPass(chance));
        if (document.Solver is { } solver)
            Print(console, solver, document.Incising is not null);
        if (document.Plant is { } plant)
            Paragraph(console, PlantWords.Current.Title, plant.InWords);
        if (document.Product.Count > 0)
            ProductPrint.Print(
                console,
                [.. document.Product.Select(product => product.Walls)],
                ProductPrint.Rows(document.Product),
                [.. document.Product.Select(product => product.Bands)],
                document.ProductNotes
            );
        if (document.Assumptions.Count > 0)
            Paragraph(
                console,
                Said(
                    "terminal.assumed-override",
                    (
                        "options",
                        Current.Joined(
                            "rows.either",
                            ["--sapwood, --position, --log-diameter, --heartwood-radius", "--all"]
                        )
                    )
                ),
                document.Assumptions
            );
        Paragraph(console, Words.ModelsUsed, document.Models);
        Paragraph(console, Words.RestsOn(document.Standing), document.RestsOn);
        Paragraph(console, Said("sheet.cautions"), document.Cautions);
        if (folder is not null)
        {
            console.WriteLine();
            console.WriteLine(
                Path.Combine(folder, "prediction.json") + (document.Solver is null ? "" : ", section.svg, uptake.svg")
            );
        }
    }

    private static void Print(IAnsiConsole console, SolverDocument solver, bool isIncised)
    {
        var solved = Words.SolvedPiece(
            solver.MeanDepthMm,
            solver.ReachedShare,
            solver.GrossLPerM3,
            solver.NetLPerM3,
            solver.EndDepthMm
        );
        console.WriteLine(isIncised ? Words.WithoutCuts(solved) : solved);
        if (
            solver is
            {
                GridErrorMm: { } mm,
                GridErrorLPerM3: { } litres,
                StepErrorMm: { } stepMm,
                StepErrorLPerM3: { } stepLitres
            }
        )
            console.WriteLine(Words.SolverError((mm, litres), (stepMm, stepLitres)));
        if (solver.MiddleCelsius is { } celsius)
            console.WriteLine(Words.MiddleCelsius(celsius));
        if (solver.Difference is { } difference)
            console.WriteLine(difference);
    }

    private static void Paragraph(IAnsiConsole console, string heading, IReadOnlyList<string> lines)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{heading}[/]");
        foreach (var line in lines)
            console.WriteLine("  " + line);
    }

    private static Table Spreads(PredictionDocument document)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("");
        foreach (var heading in new[] { Said("terminal.slowest"), Said("terminal.middle"), Said("terminal.fastest") })
            table.AddColumn(new TableColumn(heading).RightAligned());
        Row(Words.LeastDepth(document.LeastDepthMm));
        Row(Words.MeanDepth(document.MeanDepthMm));
        if (document.BorderDepthMm is { } border)
            Row(Words.BorderDepth(border));
        Row(Words.EndDepth(document.EndDepthMm));
        Row(Words.Uptake(document.UptakeLPerM3));
        if (document.RetentionKgPerM3 is { } retention)
            Row(Words.Retention(retention));
        if (document.MinutesToDepth is { } minutes)
            Row(Words.PressurePeriod(minutes));
        return table;

        void Row(IReadOnlyList<string> cells) => table.AddRow(cells.Select(cell => new Text(cell)));
    }
}
