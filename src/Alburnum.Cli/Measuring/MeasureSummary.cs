using System.Globalization;
using Alburnum.Imaging.Reading;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Measuring;

/// <summary>Readings on a terminal.</summary>
internal static class MeasureSummary
{
    private const int WidthWhenPiped = 2000;

    /// <summary>A table with one row for each photograph, then the notes.</summary>
    public static void Print(IAnsiConsole console, IReadOnlyList<ReadingDocument> readings)
    {
        // Without a terminal there is no edge to break lines at.
        if (!console.Profile.Out.IsTerminal)
            console.Profile.Width = Math.Max(console.Profile.Width, WidthWhenPiped);
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumns("Photograph", "Least", "5 % below", "Mean", "Greatest", "Treated", "Quality");
        foreach (var column in table.Columns.Skip(1).Take(5))
            column.RightAligned().NoWrap();
        foreach (var reading in readings)
        {
            var name = Markup.Escape(Path.GetFileName(reading.File ?? ""));
            if (reading.Depth is { } depth)
            {
                table.AddRow(
                    name,
                    WithU(depth.MinMm, depth.MinUMm),
                    WithU(depth.P5Mm, depth.P5UMm),
                    WithU(depth.MeanMm, depth.MeanUMm),
                    WithU(depth.MaxMm, depth.MaxUMm),
                    string.Create(CultureInfo.InvariantCulture, $"{100 * reading.TreatedShare:f1} %"),
                    DocumentWords.Quality(reading.Quality)
                );
            }
            else
            {
                table.AddRow(name, "–", "–", "–", "–", "–", DocumentWords.Quality(reading.Quality));
            }
        }
        console.Write(table);
        console.WriteLine("Depths in mm. ± is the standard uncertainty: about two in three true values lie within it.");
        foreach (var reading in readings)
        foreach (var line in Beyond(reading))
            console.WriteLine($"{Path.GetFileName(reading.File)}: {line}");
        var untold = readings
            .Where(reading =>
                reading.Heartwood is { BorderUMm: null } h && !reading.Notes.Contains(h.InWords, StringComparer.Ordinal)
            )
            .ToList();
        foreach (var same in untold.GroupBy(reading => reading.Heartwood!.InWords, StringComparer.Ordinal))
        {
            var who = same.Count() == 1 ? Path.GetFileName(same.Single().File) : $"{same.Count()} photographs";
            console.WriteLine($"{who}: {same.Key}");
        }
        foreach (var reading in readings)
            if (reading.Budget is { } budget)
                Print(console, Path.GetFileName(reading.File ?? ""), budget, reading.Depth!);
        // Why a file could not be opened is said on the error output.
        foreach (var reading in readings.Where(reading => reading.Sha256 is not null))
        foreach (var note in reading.Notes)
            console.WriteLine($"{Path.GetFileName(reading.File)}: {note}");
    }

    private static void Print(
        IAnsiConsole console,
        string name,
        IReadOnlyList<BudgetRowDocument> budget,
        DepthDocument depth
    )
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumns("Cause", "Mean", "Least", "How large", "Type", "Standing and source");
        table.Columns[1].RightAligned().NoWrap();
        table.Columns[2].RightAligned().NoWrap();
        foreach (var row in budget)
        {
            table.AddRow(
                row.Cause,
                Figure(row.MeanUMm),
                Figure(row.LeastUMm),
                Markup.Escape(row.Size),
                row.Type.ToString(),
                Markup.Escape($"{row.Standing.InWords()}: {row.Source}")
            );
        }
        table.AddRow("together", Figure(depth.MeanUMm), Figure(depth.MinUMm), "root of the sum of squares", "", "");
        console.WriteLine($"{name}: standard uncertainty of mean and least depth, mm, cause by cause.");
        console.Write(table);
    }

    private static string Figure(double mm) => mm.ToString("0.000", CultureInfo.InvariantCulture);

    // What was asked for beyond depth.
    private static IEnumerable<string> Beyond(ReadingDocument reading)
    {
        if (reading.Required is { } required)
        {
            yield return $"{Percent(required.ReachedShare, required.ReachedShareU)} of the perimeter reaches {Options.Digits(required.DepthMm)} mm.";
            if (required.OpenHeartwoodTreatedShare is { } open)
                yield return $"{Percent(open, required.OpenHeartwoodTreatedShareU)} of the exposed-heartwood zone down to {Options.Digits(required.DepthMm)} mm is treated.";
        }
        if (reading.SapwoodTreatedShare is { } sapwood)
            yield return $"{Percent(sapwood, reading.SapwoodTreatedShareU)} of the sapwood is treated. {reading.Heartwood?.InWords}";
        if (reading.BetweenIncisions is { } border)
        {
            var fingers = reading.Faces.Sum(face => face.Fingers?.Count ?? 0);
            yield return $"Between the incisions {WithU(border.MinMm, border.MinUMm)} mm at least, {WithU(border.MeanMm, border.MeanUMm)} mm on average; {fingers} fingers reach deeper.";
        }
    }

    private static string Percent(double share, double? u) =>
        string.Create(CultureInfo.InvariantCulture, $"{100 * share:f1} ± {100 * u:f1} %");

    /// <summary>A reading in a few words.</summary>
    public static string InOneLine(SectionReading reading) =>
        (
            reading.Outcome is Read { Profile.Statistics: var depth }
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"least {depth.MinimumMm.Value:f1} mm, mean {depth.MeanMm.Value:f1} mm"
                )
                : "not determined"
        )
        + (
            reading.Outcome.Quality.Grade == QualityGrade.Good
                ? ""
                : $"; photograph {ReadingWords.Grade(reading.Outcome.Quality.Grade)}"
        );

    private static string WithU(double value, double u) =>
        string.Create(CultureInfo.InvariantCulture, $"{value:f1} ± {u:f1}");
}
