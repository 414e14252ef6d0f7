using System.ComponentModel;
using System.Globalization;
using Alburnum.Facts;
using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sawing;
using Alburnum.Records;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Impregnation;

/// <summary>Says which pieces of a cutting pattern show heartwood on which faces, and what that does to conformity.</summary>
internal sealed class SawCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<SawCommand.Settings>
{
    internal sealed class Settings : TreatingSettings
    {
        [CommandOption("--pieces <N>")]
        [Description("Pieces to draw")]
        [DefaultValue(Draws.Pieces)]
        public int Pieces { get; init; }

        [CommandOption("--out <FOLDER>")]
        [Description("Folder for drawings and results")]
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
        if (settings.Out is { } place)
            OutFolder.Examine(place);
        var request = new SawingRequest
        {
            Treating = settings.Request(facts),
            Pattern = PatternOf(settings.Pattern),
            KerfMm = Options.Number("--kerf", settings.KerfMm, Ranges.KerfMm),
            Pieces = Options.Whole("--pieces", settings.Pieces, Ranges.DrawnPieces),
            Seed = settings.Seed,
        };
        var log = await Progress.RunAsync(
            console,
            Said("terminal.treating-pieces"),
            progress => SawLog.Run(request, facts, progress, cancellationToken),
            cancellationToken
        );
        if (settings.Out is { } folder)
        {
            OutFolder.Make(folder);
            await WholeFile.WriteAsync(
                Path.Combine(folder, "sawing.svg"),
                Svg.Write(SawingDrawing.Draw([.. log.Pieces.Select(piece => piece.Piece)])),
                cancellationToken
            );
        }
        var document = SawingMapping.Of(log);
        return console.Show(document, settings.Json, () => Print(document, settings.Out));
    }

    private static CuttingPattern PatternOf(string name) =>
        name switch
        {
            "boxed" => CuttingPattern.Boxed,
            "halved" => CuttingPattern.Halved,
            "quartered" => CuttingPattern.Quartered,
            "grid" => CuttingPattern.Grid,
            "boards" => CuttingPattern.Boards,
            _ => throw Options.Refused("--pattern", name, "boxed, halved, quartered, grid or boards"),
        };

    private void Print(SawingDocument document, string? folder)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]");
        console.WriteLine(TreatingWords.Current.Required(document.Demand));
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumns(
            Said("terminal.piece"),
            Said("terminal.size"),
            Said("terminal.heartwood-on-faces"),
            Said("terminal.of-section"),
            Said("terminal.mean-depth"),
            Said("terminal.pieces-that-conform"),
            Said("terminal.cores")
        );
        foreach (var piece in document.Pieces)
            table.AddRow(
                piece.Number.ToString(CultureInfo.InvariantCulture),
                piece.Size,
                SawingWords.Current.Faces(piece.HeartwoodOnFaces),
                Figures.WholePercent(piece.HeartwoodShare),
                Figures.Number(piece.MeanDepthMm, 1),
                Figures.Certainty(piece.PieceShare),
                Figures.Certainty(piece.CoreShare)
            );
        console.Write(table);
        console.WriteLine(SawingWords.Current.Shares(document.PieceShare, document.CoreShare));
        foreach (var assumption in document.Assumptions)
            console.WriteLine(TreatingWords.Current.Assumed(assumption));
        foreach (var caution in document.Cautions)
            console.WriteLine(caution);
        if (folder is not null)
            console.WriteLine(Path.Combine(folder, "sawing.svg"));
    }
}
