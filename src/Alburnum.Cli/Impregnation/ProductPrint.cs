using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;

namespace Alburnum.Cli.Impregnation;

/// <summary>Where the product of a treatment stays, at a glance.</summary>
internal static class ProductPrint
{
    // Printed as 0.00, kg/m³.
    private const double Nothing = 0.005;

    private static ProductWords Words => ProductWords.Current;

    public static IEnumerable<IReadOnlyList<string>> Rows(IReadOnlyList<ChargeProductDocument> products)
    {
        yield return [Words.Zone, .. products.Select(product => Measured(product.ZoneKgPerM3))];
        yield return [Words.Mean, .. products.Select(product => Measured(product.MeanKgPerM3))];
        yield return [Words.Depth, .. products.Select(product => Figures.Number(product.DepthMm, 1))];
        yield return [Words.Beyond, .. products.Select(product => Figures.WholePercent(product.SelectiveShare))];
        if (products.Any(product => product.StrengthAfterPercent is not null))
            yield return
            [
                Words.StrengthAfter,
                .. products.Select(product => product.StrengthAfterPercent is { } after ? Measured(after) : ""),
            ];
    }

    public static IEnumerable<IReadOnlyList<string>> Rows(IReadOnlyList<PieceProductDocument> products)
    {
        yield return [Words.Zone, .. products.Select(product => Words.Said(product.ZoneKgPerM3))];
        yield return [Words.Mean, .. products.Select(product => Words.Said(product.MeanKgPerM3))];
        yield return [Words.Depth, .. products.Select(product => Words.Said(product.DepthMm, 1))];
    }

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
                Of(Words.BandHeadings(shown.Select(n => walls[n])), BandRows([.. shown.Select(n => bands[n])]))
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

    // Down to the first band that holds nothing.
    private static IEnumerable<IReadOnlyList<string>> BandRows(IReadOnlyList<IReadOnlyList<ProductBandDocument>> bands)
    {
        var held = bands[0].Index().Count(band => bands.Any(each => Most(each[band.Index].KgPerM3) >= Nothing));
        return bands[0]
            .Take(held + 1)
            .Select(
                (band, n) =>
                    (IReadOnlyList<string>)
                        [
                            Words.Band(band.FromMm, band.ToMm),
                            .. bands.SelectMany(each =>
                                new[] { Words.Said(each[n].KgPerM3), Words.Said(each[n].AssayKgPerM3) }
                            ),
                        ]
            );
    }

    private static double Most(Spread woods) => Math.Max(woods.Low, Math.Max(woods.Middle, woods.High));

    private static string Measured(Estimate value) =>
        value.StandardUncertainty > 0
            ? Figures.Measured(value.Value, value.StandardUncertainty, "")
            : Figures.Number(value.Value, 2);

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
