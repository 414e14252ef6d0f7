using System.Collections.Concurrent;
using System.ComponentModel;
using System.Globalization;
using Alburnum.Imaging.Pictures;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Facts;
using Alburnum.Reports;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Measuring;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Measuring;

/// <summary>Measures depth of penetration on photographs of sprayed cross-sections.</summary>
internal sealed class MeasureCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<MeasureCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<PHOTO>")]
        [Description("Photographs, or folders of them")]
        public required string[] Photographs { get; init; }

        [CommandOption("--section <SIZE>")]
        [Description("Nominal size in mm: 100x75, \"round 120\" or 120, \"half round 120\", \"quartered 120\"")]
        public required string Section { get; init; }

        [CommandOption("--shape <SHAPE>")]
        [Description("rectangle, square, round, half-round, quartered or core; if not given, taken from the size")]
        public string? Shape { get; init; }

        [CommandOption("--corners <POINTS>")]
        [Description("Corners (or rim points) in pixels of the upright photograph, clockwise: \"x,y x,y x,y x,y\"")]
        public string? Corners { get; init; }

        [CommandOption("--indicator <NAME>")]
        [Description(
            "The indicator sprayed, for instance copper-blue, or none; if not given, detected from the photograph"
        )]
        public string? Indicator { get; init; }

        [CommandOption("--scale <POINTS>")]
        [Description(
            "Two points a known length apart, and the length in mm: \"x,y x,y 50\"; otherwise the nominal size gives the scale"
        )]
        public string? Scale { get; init; }

        [CommandOption("--treated <POINTS>")]
        [Description("Places that are treated, in pixels of the upright photograph: \"x,y x,y\"")]
        public string? Treated { get; init; }

        [CommandOption("--untreated <POINTS>")]
        [Description("Places that are not treated")]
        public string? Untreated { get; init; }

        [CommandOption("--leave-out <POINTS>")]
        [Description("Places not to be read: a knot, a split, a drip; the depth there is left out")]
        public string? LeaveOut { get; init; }

        [CommandOption("--heartwood <POINTS>")]
        [Description("Outline of the heartwood, three points or more")]
        public string? Heartwood { get; init; }

        [CommandOption("--heartwood-ring <POINTS>")]
        [Description("Three points or more on the growth ring at which the heartwood ends")]
        public string? HeartwoodRing { get; init; }

        [CommandOption("--pith <POINT>")]
        [Description("The pith, for --heartwood-radius; may lie outside the section")]
        public string? Pith { get; init; }

        [CommandOption("--heartwood-radius <MM>")]
        [Description("Radius of the heartwood about the pith")]
        public string? HeartwoodRadius { get; init; }

        [CommandOption("--heartwood-reagent <REAGENT>")]
        [Description(
            "Reagent sprayed to colour the heartwood: pine or white-oak; otherwise its natural colour is looked for"
        )]
        public string? HeartwoodReagent { get; init; }

        [CommandOption("--incised")]
        [Description("The faces are incised: report the border between incisions separately from the fingers at them")]
        public bool Incised { get; init; }

        [CommandOption("--least-depth|--required <MM>")]
        [Description("Report the share of the perimeter that reaches this depth")]
        public double? Required { get; init; }

        [CommandOption("--step <MM>")]
        [Description("Distance between positions along a face, 0.25 to 1 mm; default: 1")]
        public double Step { get; init; } = 1;

        [CommandOption("--budget")]
        [Description("Also print what makes mean and least depth uncertain, cause by cause")]
        public bool Budget { get; init; }

        [CommandOption("--json")]
        [Description("Print the readings as JSON")]
        public bool Json { get; init; }

        [CommandOption("--overlay <FOLDER>")]
        [Description(
            "Folder for the photographs with the reading drawn over them, readings.json and contact-sheet.jpg"
        )]
        public string? Overlay { get; init; }
    }

    private sealed record Measured(ReadingDocument Document, ContactPrint? Print, IReadOnlyList<InputProblem> Problems);

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var request = MeasureRequest.From(settings, facts.Indicators, facts.HeartwoodReagents);
        if (settings.Overlay is { } folder)
            OutFolder.Make(folder);
        var names = OverlayNames(request.Files);
        var written = new ConcurrentBag<string>();
        IReadOnlyList<Measured> measured;
        try
        {
            measured = await Progress.ShowAsync(
                Progress.Beside(console, settings.Json),
                "Measuring",
                told =>
                    MeasurePhotographs.EachAsync(
                        request,
                        (i, photograph) => Shown(photograph, request.Reading, settings.Overlay, names[i], written),
                        told,
                        cancellationToken
                    )
            );
        }
        catch (OperationCanceledException)
        {
            // Half a batch is no batch.
            foreach (var overlay in written)
                File.Delete(overlay);
            throw;
        }
        var documents = measured.Select(m => settings.Budget ? m.Document : m.Document with { Budget = null }).ToList();
        if (settings.Overlay is { } to)
        {
            await TextFile.WriteAsync(
                Path.Combine(to, "readings.json"),
                DocumentJson.Write<IReadOnlyList<ReadingDocument>>(documents),
                cancellationToken
            );
            var sheet = ContactSheet.Jpeg([.. measured.Select(m => m.Print!)], FontFiles.Read("Lato-Regular.ttf"));
            OutFolder.Write(to, "contact-sheet.jpg", sheet);
        }
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(DocumentJson.Write<IReadOnlyList<ReadingDocument>>(documents));
        else if (measured.Any(m => m.Problems.Count == 0))
            MeasureSummary.Print(console, documents);
        var problems = measured.SelectMany(m => m.Problems).ToList();
        foreach (var problem in problems)
            await Console.Error.WriteLineAsync(problem.ToString().AsMemory(), cancellationToken);
        return measured.All(m => m.Problems.Count > 0) ? CommandLine.Refused : CommandLine.Done;
    }

    private static Measured Shown(
        MeasuredPhotograph photograph,
        ReadingRequest request,
        string? overlay,
        string overlayName,
        ConcurrentBag<string> written
    )
    {
        try
        {
            return photograph switch
            {
                ReadPhotograph read => new(
                    ReadingMapping.From(read.Reading),
                    overlay is null ? null : Overlay(read, overlay, overlayName, written),
                    []
                ),
                RefusedPhotograph refused => Refused(refused, request, overlay),
                _ => throw new ArgumentOutOfRangeException(nameof(photograph), photograph, "Not an outcome."),
            };
        }
        catch (InputRefusedException refused)
        {
            // One picture that cannot be written does not stop the rest.
            return Refused(new(photograph.File, refused.Problems), request, overlay);
        }
    }

    private static Measured Refused(RefusedPhotograph refused, ReadingRequest request, string? overlay) =>
        new(
            ReadingMapping.From(refused, request),
            overlay is null ? null : new(default, Path.GetFileName(refused.File), "could not be read"),
            refused.Problems
        );

    private static ContactPrint Overlay(ReadPhotograph read, string folder, string name, ConcurrentBag<string> written)
    {
        written.Add(Path.Combine(folder, name));
        OutFolder.Write(folder, name, OverlayPicture.Jpeg(read.File, read.Bytes, read.Reading, OverlayLongSidePx));
        return new(
            OverlayPicture.Jpeg(read.File, read.Bytes, read.Reading, ContactSheet.PrintPx),
            Path.GetFileName(read.File),
            ReadingWords.InOneLine(read.Reading)
        );
    }

    private const int OverlayLongSidePx = 1600;

    // Two folders may hold photographs of the same name.
    private static List<string> OverlayNames(IReadOnlyList<string> files)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var names = new List<string>();
        foreach (var file in files)
        {
            var stem = Path.GetFileNameWithoutExtension(file);
            var name = $"{stem}.overlay.jpg";
            for (var n = 2; !taken.Add(name); n++)
                name = string.Create(CultureInfo.InvariantCulture, $"{stem}-{n}.overlay.jpg");
            names.Add(name);
        }
        return names;
    }
}
