using Alburnum.Reports.Documents;
using Alburnum.Reports.Sheets;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

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
        table.AddColumns(
            Said("terminal.photograph"),
            Said("terminal.least"),
            Said("terminal.five-percent-below"),
            Said("terminal.mean"),
            Said("terminal.greatest"),
            Said("terminal.treated"),
            Said("terminal.quality")
        );
        foreach (var column in table.Columns.Skip(1).Take(5))
            column.RightAligned().NoWrap();
        foreach (var reading in readings)
        {
            var name = Markup.Escape(reading.Name);
            if (reading.Depth is { } depth)
            {
                table.AddRow(
                    name,
                    ReadingWords.WithU(new(depth.MinMm, depth.MinUMm)),
                    ReadingWords.WithU(new(depth.P5Mm, depth.P5UMm)),
                    ReadingWords.WithU(new(depth.MeanMm, depth.MeanUMm)),
                    ReadingWords.WithU(new(depth.MaxMm, depth.MaxUMm)),
                    $"{Figures.Number(100 * (reading.TreatedShare ?? 0), 1)} %",
                    ReadingWords.Quality(reading.Quality)
                );
            }
            else
            {
                table.AddRow(name, "–", "–", "–", "–", "–", ReadingWords.Quality(reading.Quality));
            }
        }
        console.Write(table);
        console.WriteLine(ReadingWords.Uncertainty);
        foreach (var reading in readings)
        foreach (var line in Beyond(reading))
            console.WriteLine($"{reading.Name}: {line}");
        var untold = readings
            .Where(reading =>
                reading.Heartwood is { BorderUMm: null } h && !reading.Notes.Contains(h.InWords, StringComparer.Ordinal)
            )
            .ToList();
        Alike(console, untold.Select(reading => (reading, reading.Heartwood!.InWords)));
        foreach (var reading in readings)
            if (reading.Budget is { } budget)
                Print(console, reading.Name, budget, reading.Depth!);
        Foot(console, readings);
    }

    // What is said of several photographs alike is said once.
    private static void Alike(IAnsiConsole console, IEnumerable<(ReadingDocument Of, string Says)> said)
    {
        foreach (var same in said.GroupBy(each => each.Says, each => each.Of, StringComparer.Ordinal))
        {
            var who =
                same.Count() == 1 ? same.Single().Name
                : same.Any(reading => reading.PieceNumber is not null) ? ReadingWords.Pieces(same.Count())
                : ReadingWords.Photographs(same.Count());
            console.WriteLine($"{who}: {same.Key}");
        }
    }

    private static void Foot(IAnsiConsole console, IReadOnlyList<ReadingDocument> readings)
    {
        // Why a file could not be opened is said on the error output.
        Alike(
            console,
            readings
                .Where(reading => reading.Sha256 is not null)
                .SelectMany(reading =>
                    SectionRows.Patterns(reading).Concat(reading.Notes).Select(note => (reading, note))
                )
        );
        foreach (var caution in readings.SelectMany(reading => reading.Cautions).Distinct(StringComparer.Ordinal))
            console.WriteLine(caution);
    }

    private static void Print(
        IAnsiConsole console,
        string name,
        IReadOnlyList<BudgetRowDocument> budget,
        DepthDocument depth
    )
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumns(
            Said("sheet.cause"),
            Said("terminal.mean"),
            Said("terminal.least"),
            Said("sheet.cause-size"),
            Said("sheet.cause-type"),
            Said("sheet.cause-source")
        );
        table.Columns[1].RightAligned().NoWrap();
        table.Columns[2].RightAligned().NoWrap();
        foreach (var row in budget)
        {
            table.AddRow(
                row.Cause,
                Figures.Number(row.MeanUMm, 3),
                Figures.Number(row.LeastUMm, 3),
                Markup.Escape(row.Size),
                row.Type.ToString(),
                Markup.Escape(Said("sheet.named", ("name", Wording.Current.Say(row.Standing)), ("says", row.Source)))
            );
        }
        table.AddRow(
            ReadingWords.Together,
            Figures.Number(depth.MeanUMm, 3),
            Figures.Number(depth.MinUMm, 3),
            ReadingWords.SumOfSquares,
            "",
            ""
        );
        console.WriteLine(ReadingWords.Budget(name));
        console.Write(table);
    }

    // What was asked for beyond depth.
    private static IEnumerable<string> Beyond(ReadingDocument reading)
    {
        if (reading.Required is { } required)
        {
            yield return ReadingWords.Reached(required.ReachedShare, required.ReachedShareU, required.DepthMm);
            if (required.OpenHeartwoodTreatedShare is { } open)
                yield return ReadingWords.OpenHeartwoodTreated(
                    open,
                    required.OpenHeartwoodTreatedShareU,
                    required.DepthMm
                );
        }
        if (reading.SapwoodTreatedShare is { } sapwood)
            yield return ReadingWords.SapwoodTreated(sapwood, reading.SapwoodTreatedShareU, reading.Heartwood?.InWords);
        if (reading is { SapwoodAlone: not null, Heartwood: { } heartwood })
            yield return heartwood.InWords;
        if (reading.BetweenIncisions is { } border)
            yield return ReadingWords.BetweenIncisions(
                new(border.MinMm, border.MinUMm),
                new(border.MeanMm, border.MeanUMm),
                reading.Faces.Sum(face => face.Fingers?.Count ?? 0)
            );
    }
}
