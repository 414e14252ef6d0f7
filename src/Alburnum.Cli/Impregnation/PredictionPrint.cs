using System.Globalization;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Impregnation;

/// <summary>A prediction at a glance: what is required, what to expect, which model says so, and what it rests on.</summary>
internal static class PredictionPrint
{
    public static void Print(IAnsiConsole console, PredictionDocument document, string? folder)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]");
        console.WriteLine($"Sapwood: {document.Sapwood}. Heartwood: {document.Heartwood}.");
        console.WriteLine($"Required: {document.Demand}.");
        if (document is { Incising: { } cuts, StrengthPenalty: { } penalty })
        {
            console.WriteLine($"Incised: {cuts}.");
            console.WriteLine(penalty);
        }
        console.WriteLine();
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("");
        foreach (var heading in new[] { "Slowest twentieth", "Middle", "Fastest twentieth" })
            table.AddColumn(new TableColumn(heading).RightAligned());
        Row(table, "Least depth of a piece, mm", document.LeastDepthMm, 1);
        Row(table, "Mean depth of a piece, mm", document.MeanDepthMm, 1);
        Row(table, "From a cut end along the grain, mm", document.EndDepthMm, 0);
        Row(table, "Net uptake, L per m³", document.UptakeLPerM3, 0);
        if (document.RetentionKgPerM3 is { } retention)
            Row(table, "Product in the zone, kg/m³", retention, 2);
        if (document.MinutesToDepth is { } minutes)
            Row(table, "Pressure period for the depth, min", new Spread(minutes.High, minutes.Middle, minutes.Low), 0);
        console.Write(table);
        console.WriteLine($"Pieces that meet the requirement everywhere: {Share(document.PieceShare)}.");
        console.WriteLine($"Cores that meet it: {Share(document.CoreShare)}.");
        if (document.ChanceToPass is { } chance)
            console.WriteLine($"Chance that a batch passes its sampling plan: {Figures.Certainty(chance)}.");
        if (document.Solver is { } solver)
        {
            console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Median piece by the flow solver: {solver.MeanDepthMm:0.0} mm, {Figures.WholePercent(solver.ReachedShare)} of the section; {solver.GrossLPerM3:0} L/m³ at most, {solver.NetLPerM3:0} L/m³ kept{(solver.EndDepthMm is { } end ? $"; {end:0} mm from a cut end along the middle" : "")}."
                )
            );
        }
        if (document.Assumptions.Count > 0)
            Paragraph(
                console,
                "Assumed (override with --sapwood, --position, --log-diameter, --heart-radius or --all)",
                document.Assumptions
            );
        Paragraph(console, "Models used", document.Models);
        Paragraph(
            console,
            $"What the numbers rest on (weakest standing: {document.Standing.InWords()})",
            document.RestsOn
        );
        Paragraph(console, "Cautions", document.Cautions);
        if (folder is not null)
        {
            console.WriteLine();
            console.WriteLine(
                Path.Combine(folder, "prediction.json") + (document.Solver is null ? "" : ", section.svg, uptake.svg")
            );
        }
    }

    private static void Paragraph(IAnsiConsole console, string heading, IReadOnlyList<string> lines)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{heading}[/]");
        foreach (var line in lines)
            console.WriteLine("  " + line);
    }

    private static void Row(Table table, string name, Spread spread, int decimals) =>
        table.AddRow(
            new Text(name),
            new Text(Figures.Number(spread.Low, decimals)),
            new Text(Figures.Number(spread.Middle, decimals)),
            new Text(Figures.Number(spread.High, decimals))
        );

    private static string Share(Estimate share) =>
        $"{Figures.Certainty(share.Value)} (from batch to batch ± {Figures.Certainty(share.StandardUncertainty)})";
}
