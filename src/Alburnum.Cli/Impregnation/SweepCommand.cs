using System.ComponentModel;
using System.Globalization;
using Alburnum.Facts;
using Alburnum.Records;
using Alburnum.Records.Facts;
using Alburnum.Records.Sweeps;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Impregnation;

/// <summary>Predicts over two inputs and maps the answer. What is done is kept: the same command continues where it stopped.</summary>
internal sealed class SweepCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<SweepCommand.Settings>
{
    private static readonly (string Name, SweepMeasure Measure)[] Measures =
    [
        ("pieces", SweepMeasure.Pieces),
        ("cores", SweepMeasure.Cores),
        ("mean", SweepMeasure.MeanDepth),
        ("least", SweepMeasure.LeastDepth),
        ("uptake", SweepMeasure.Uptake),
        ("zone", SweepMeasure.Zone),
    ];

    internal sealed class Settings : PredictSettings
    {
        [CommandOption("--across <INPUT=FROM:TO:STEPS>")]
        [Description("Input along the horizontal axis, such as minutes=30:240:8")]
        public string? X { get; init; }

        [CommandOption("--up <INPUT=FROM:TO:STEPS>")]
        [Description("Input along the vertical axis, such as moisture=15:40:6")]
        public string? Y { get; init; }

        [CommandOption("--of <MEASURE>")]
        [Description(
            "What is mapped: pieces, cores, mean, least, uptake or zone. By default cores; mean where no depth is asked for"
        )]
        public string? Of { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var request = Request(settings);
        var measure = Measure(settings.Of, SweepPredictions.IsDepthAsked(request, facts));
        var folder = settings.Out ?? throw Options.Refused("--out", "nothing", "a folder for the map");
        OutFolder.Examine(folder);
        var table = SweepPredictions.Open(Path.Combine(folder, "sweep.csv"), request, facts);
        IReadOnlyList<SweptPoint> points;
        try
        {
            points = await Progress.ShowAsync(
                Progress.Beside(console, settings.Json),
                Said("terminal.sweeping"),
                progress => SweepPredictions.RunAsync(request, table, facts, progress, cancellationToken)
            );
        }
        catch (OperationCanceledException)
        {
            console.WriteLine(SweepWords.Current.Stopped(table.Points.Count, request.Points));
            return CommandLine.Stopped;
        }
        var document = SweepMapping.Of(request, points, measure);
        var drawing = SweepDrawing.Draw(document);
        await WholeFile.WriteAsync(Path.Combine(folder, "sweep.svg"), Svg.Write(drawing), cancellationToken);
        OutFolder.Write(folder, "sweep.png", Png.Write(drawing));
        return console.Show(document, settings.Json, () => Print(document, folder));
    }

    private SweepRequest Request(Settings settings)
    {
        var (across, up) = (Axis("--across", settings.X), Axis("--up", settings.Y));
        return across.Input == up.Input
            ? throw Options.Refused("--up", across.Input.Name, "a different input from --across")
            : new()
            {
                Treating = settings.Request(facts),
                Across = across,
                Up = up,
                Pieces = Options.Whole("--pieces", settings.Pieces, Ranges.DrawnPieces),
                Seed = settings.Seed,
            };
    }

    private static SweepMeasure Measure(string? asked, bool isDepthAsked)
    {
        var name = asked ?? (isDepthAsked ? "cores" : "mean");
        var place = Array.FindIndex(Measures, known => known.Name == name);
        if (place < 0)
            throw Options.Refused("--of", name, string.Join(", ", Measures.Select(known => known.Name)));
        var measure = Measures[place].Measure;
        return isDepthAsked || !measure.IsShare()
            ? measure
            : throw Options.Refused(
                "--of",
                name,
                "a depth that they must reach (--depth), or mean, least, uptake or zone"
            );
    }

    // Reads "minutes=30:240:8": an input, its first and last value, and how many.
    private static SweptInput Axis(string option, string? text)
    {
        var names = string.Join(", ", SweepInput.All.Select(input => input.Name));
        var sides = (text ?? "").Split('=');
        var parts = sides.Length == 2 ? sides[1].Split(':') : [];
        if (
            parts.Length != 3
            || !TreatingOptions.Number(parts[0], out var from)
            || !TreatingOptions.Number(parts[1], out var to)
            || !int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var count)
            || !(to > from)
            || count is < 2 or > SweptInput.MostValues
        )
            throw Options.Refused(
                option,
                text ?? "nothing",
                $"an input, its first and last value and how many (2 to {SweptInput.MostValues}), such as minutes=30:240:8; inputs: {names}"
            );
        var input =
            SweepInput.All.FirstOrDefault(known => known.Name == sides[0])
            ?? throw Options.Refused(option, sides[0], names);
        return SweptInput.Even(input, from, to, count);
    }

    private void Print(SweepDocument document, string folder)
    {
        console.WriteLine(
            SweepWords.Current.Files(
                $"{Path.Combine(folder, "sweep.csv")}, sweep.svg, sweep.png",
                document.MeasureInWords
            )
        );
        if (document.Rows.Any(row => row.Contains(null)))
            console.WriteLine(SweepWords.Current.Impossible);
        foreach (var caution in document.Cautions)
            console.WriteLine(caution);
    }
}
