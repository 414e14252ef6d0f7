using System.ComponentModel;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sawing;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>Says which pieces of a cutting pattern show heartwood on which faces, and what that does to conformity.</summary>
internal sealed class SawCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<SawCommand.Settings>
{
    internal sealed class Settings : TreatingSettings
    {
        [CommandOption("--out <FOLDER>")]
        [Description("Folder for what is drawn and written")]
        public string? Out { get; init; }

        [CommandOption("--pattern <NAME>")]
        [Description("How the log of --log-diameter is cut: boxed, halved, quartered, grid or boards")]
        [DefaultValue("grid")]
        public string Pattern { get; init; } = "grid";

        [CommandOption("--kerf <MM>")]
        [Description("Width of a saw cut, mm")]
        [DefaultValue(3.0)]
        public double KerfMm { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var pattern = settings.Pattern switch
        {
            "boxed" => CuttingPattern.Boxed,
            "halved" => CuttingPattern.Halved,
            "quartered" => CuttingPattern.Quartered,
            "grid" => CuttingPattern.Grid,
            "boards" => CuttingPattern.Boards,
            _ => throw Options.Refused("--pattern", settings.Pattern, "boxed, halved, quartered, grid or boards"),
        };
        var diameter =
            settings.LogDiameterMm ?? throw Options.Refused("--log-diameter", "nothing", "the diameter of the log, mm");
        Options.Number("--log-diameter", diameter, 20, 4000, "mm");
        Options.Number("--kerf", settings.KerfMm, 0, 20, "mm");
        var pieces = Options.Whole("--pieces", settings.Pieces, 100, 100_000, "pieces");
        var request = settings.Request(facts) with { LogDiameterMm = null, All = WoodThroughout.Sapwood };
        var input = TreatingQuestion.Of(request, facts);
        if (input.Prediction.Section is not RectangularSection size)
            throw Options.Refused("SECTION", settings.Section, "a sawn size such as \"100x100\"");
        var (sapwood, assumed) = Sapwood(settings, input.Species);
        var sawn = SawnLog.Cut(pattern, size, diameter, sapwood, settings.KerfMm);
        var answers = Answers(sawn, input.Prediction, settings.Seed, pieces, cancellationToken);
        var document = SawDocument.From(
            settings.Pattern,
            diameter,
            sapwood,
            assumed,
            RequirementWords.English.Depths.Say(input.Prediction.Rule),
            sawn,
            answers
        );
        if (settings.Out is { } folder)
        {
            OutFolder.Make(folder);
            await TextFile.WriteAsync(
                Path.Combine(folder, "sawing.svg"),
                Svg.Write(SawingDrawing.Draw(sawn)),
                cancellationToken
            );
        }
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(document));
        else
            Print(document, settings.Out);
        return CommandLine.Done;
    }

    private static (double WidthMm, string Assumed) Sapwood(Settings settings, Species species)
    {
        if (settings.SapwoodMm is { } given)
            return (Options.Number("--sapwood", given, 0, 2000, "mm"), "");
        if (species.SapwoodWidth is not { Value.IsDistinct: true } band)
            throw Options.Refused(
                "--sapwood",
                "nothing",
                $"the width of the sapwood, which is not known of {species.Name}"
            );
        var width = UsualSapwood.Of(band.Value).Mm;
        return (
            width,
            $"Sapwood {Options.Digits(width)} mm wide, the geometric middle of the species' band ({band.Provenance.Standing.InWords()})."
        );
    }

    // Pieces that are alike but for a turn or a mirror share one answer.
    private static List<QuickPrediction> Answers(
        IReadOnlyList<SawnPiece> sawn,
        PredictionQuestion question,
        int seed,
        int draws,
        CancellationToken stop
    )
    {
        var answers = new List<QuickPrediction>();
        for (var i = 0; i < sawn.Count; i++)
        {
            var like = Enumerable
                .Range(0, i)
                .Where(before => sawn[before].IsLike(sawn[i]))
                .Select(before => (int?)before)
                .FirstOrDefault();
            answers.Add(
                like is { } known
                    ? answers[known]
                    : QuickPrediction.Draw(
                        question with
                        {
                            Section = sawn[i].Section,
                            Log = sawn[i].Log,
                        },
                        seed,
                        draws,
                        cancellation: stop
                    )
            );
        }
        return answers;
    }

    private void Print(SawDocument document, string? folder)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]");
        console.WriteLine($"Asked for: {document.Demand}.");
        var table = new Table().Border(TableBorder.Simple);
        foreach (
            var heading in new[]
            {
                "Piece",
                "Size",
                "Heartwood on faces",
                "of section",
                "Mean depth, mm",
                "Pieces that conform",
                "Cores",
            }
        )
            table.AddColumn(heading);
        foreach (var piece in document.Pieces)
        {
            var faces = piece
                .HeartwoodOnFaces.Select((share, i) => (share, i))
                .Where(face => face.share > 0)
                .Select(face => $"{Names[face.i]} {Figures.WholePercent(face.share)}");
            table.AddRow(
                piece.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
                piece.Size,
                piece.HeartwoodOnFaces.All(share => share == 0) ? "none" : string.Join(", ", faces),
                Figures.WholePercent(piece.HeartwoodShare),
                Figures.Number(piece.MeanDepthMm, 1),
                Figures.WholePercent(piece.PieceShare),
                Figures.WholePercent(piece.CoreShare)
            );
        }
        console.Write(table);
        console.WriteLine(
            $"Of all pieces of the log {Figures.WholePercent(document.PieceShare)} conform everywhere; {Figures.WholePercent(document.CoreShare)} of cores do."
        );
        if (document.Assumption.Length > 0)
            console.WriteLine("Assumed: " + document.Assumption);
        console.WriteLine(
            "A round, straight log with the pith in its middle, sapwood of even width, no taper. The quick model answered."
        );
        foreach (var caution in PredictionDocument.UsualCautions)
            console.WriteLine(caution);
        if (folder is not null)
            console.WriteLine(Path.Combine(folder, "sawing.svg"));
    }

    private static readonly string[] Names = ["top", "right", "bottom", "left"];
}

/// <summary>One piece of a cutting pattern as printed; shares of heartwood on the faces: top, right, bottom, left.</summary>
internal sealed record SawPieceDocument(
    int Number,
    string Size,
    IReadOnlyList<double> HeartwoodOnFaces,
    double HeartwoodShare,
    double MeanDepthMm,
    double PieceShare,
    double CoreShare
);

/// <summary>A cutting pattern as printed: each piece, and shares over all of them.</summary>
internal sealed record SawDocument(
    string Title,
    string Demand,
    string Assumption,
    IReadOnlyList<SawPieceDocument> Pieces,
    double PieceShare,
    double CoreShare
)
{
    public static SawDocument From(
        string pattern,
        double logMm,
        double sapwoodMm,
        string assumption,
        string demand,
        IReadOnlyList<SawnPiece> sawn,
        IReadOnlyList<QuickPrediction> answers
    ) =>
        new(
            $"Log of {Options.Digits(logMm)} mm with {Options.Digits(sapwoodMm)} mm of sapwood, {pattern}: {sawn.Count} pieces",
            demand,
            assumption,
            [
                .. sawn.Zip(answers)
                    .Select(
                        (pair, i) =>
                            new SawPieceDocument(
                                i + 1,
                                pair.First.Section.Label,
                                pair.First.HeartwoodOnFace,
                                pair.First.HeartwoodShare,
                                pair.Second.MeanMm.Middle,
                                pair.Second.PieceShare.Value,
                                pair.Second.CoreShare.Value
                            )
                    ),
            ],
            answers.Average(answer => answer.PieceShare.Value),
            answers.Average(answer => answer.CoreShare.Value)
        );
}
