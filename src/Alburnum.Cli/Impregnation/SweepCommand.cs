using System.ComponentModel;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Impregnation;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>Predicts over two inputs and maps the answer. What is done is kept: the same command goes on where it stopped.</summary>
internal sealed class SweepCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<SweepCommand.Settings>
{
    internal sealed class Settings : PredictSettings
    {
        [CommandOption("--across <INPUT=FROM:TO:STEPS>")]
        [Description("Input that runs to the right, such as minutes=30:240:8")]
        public string? X { get; init; }

        [CommandOption("--up <INPUT=FROM:TO:STEPS>")]
        [Description("Input that runs upwards, such as moisture=15:40:6")]
        public string? Y { get; init; }

        [CommandOption("--of <MEASURE>")]
        [Description("What is mapped: pieces, cores, mean, least, uptake or zone")]
        [DefaultValue("cores")]
        public string Of { get; init; } = "cores";
    }

    private static readonly (string Name, string Words, bool IsShare)[] Measures =
    [
        ("pieces", "share of pieces that meet the demand everywhere", true),
        ("cores", "share of cores that meet the demand", true),
        ("mean", "mean depth of the middle piece, mm", false),
        ("least", "least depth of the middle piece, mm", false),
        ("uptake", "net uptake of the middle piece, L to the m³", false),
        ("zone", "solution in the zone of the middle piece, L to the m³ of zone", false),
    ];

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var (x, y) = (SweepInputs.Parse("--across", settings.X), SweepInputs.Parse("--up", settings.Y));
        if (x.Input == y.Input)
            throw Options.Refused("--up", x.Input.Name, "another input than --across");
        var measure = Array.FindIndex(Measures, known => known.Name == settings.Of);
        if (measure < 0)
            throw Options.Refused("--of", settings.Of, string.Join(", ", Measures.Select(known => known.Name)));
        var folder = settings.Out ?? throw Options.Refused("--out", "nothing", "a folder for the map");
        var pieces = Options.Whole("--pieces", settings.Pieces, 100, 100_000, "pieces");
        var request = settings.Request(facts);
        // Refuses what is wrong apart from the two inputs, before any work.
        TreatingQuestion.Of(request, facts);

        var log = SweepLog.Open(
            folder,
            $"{request} x {settings.X} y {settings.Y} pieces {pieces} seed {settings.Seed}",
            Measures.Length
        );
        var wanted = (
            from row in Enumerable.Range(0, y.Values.Count)
            from column in Enumerable.Range(0, x.Values.Count)
            where !log.Has(column, row)
            select (column, row)
        ).ToList();
        try
        {
            await Progress.EachAsync(
                console,
                "Sweeping",
                wanted,
                at =>
                    $"{x.Input.Name} {Options.Digits(x.Values[at.column])}, {y.Input.Name} {Options.Digits(y.Values[at.row])}",
                at =>
                {
                    var asked = x.Input.With(y.Input.With(request, y.Values[at.row]), x.Values[at.column]);
                    log.Add(at.column, at.row, x.Values[at.column], y.Values[at.row], Answer(asked));
                    return true;
                },
                cancellationToken
            );
        }
        catch (OperationCanceledException)
        {
            console.WriteLine(
                $"Stopped with {log.Count} of {x.Values.Count * y.Values.Count} done; the same command goes on from there."
            );
            return CommandLine.Stopped;
        }
        var map = new SweepMap(
            $"{settings.Species}, {settings.Section}, {settings.Schedule}",
            Measures[measure].Words,
            new SweepAxis(x.Label, x.Values),
            new SweepAxis(y.Label, y.Values),
            [
                .. from row in Enumerable.Range(0, y.Values.Count)
                from column in Enumerable.Range(0, x.Values.Count)
                select log.Value(column, row, measure),
            ],
            Measures[measure].IsShare
        );
        var drawing = SweepDrawing.Draw(map);
        await TextFile.WriteAsync(Path.Combine(folder, "sweep.svg"), Svg.Write(drawing), cancellationToken);
        OutFolder.Write(folder, "sweep.png", Png.Write(drawing));
        console.WriteLine($"{Path.Combine(folder, "sweep.csv")}, sweep.svg, sweep.png: {map.Measure}.");
        if (map.Values.Any(value => value is null))
            console.WriteLine("Boxes without a number: inputs that cannot be together; sweep.csv says why.");
        foreach (var caution in PredictionDocument.UsualCautions)
            console.WriteLine(caution);
        return CommandLine.Done;

        SweepAnswer Answer(TreatingRequest asked)
        {
            try
            {
                var quick = QuickPrediction.Draw(
                    TreatingQuestion.Of(asked, facts).Prediction,
                    settings.Seed,
                    pieces,
                    cancellation: cancellationToken
                );
                return new(
                    [
                        quick.PieceShare.Value,
                        quick.CoreShare.Value,
                        quick.MeanMm.Middle,
                        quick.LeastMm.Middle,
                        quick.UptakeLPerM3.Middle,
                        quick.ZoneLPerM3.Middle,
                    ],
                    ""
                );
            }
            catch (InputRefusedException refused)
            {
                return new([], refused.Problems[0].ToString());
            }
        }
    }
}
