using System.Collections.Concurrent;
using System.ComponentModel;
using System.Globalization;
using Alburnum.Imaging;
using Alburnum.Imaging.Pictures;
using Alburnum.Imaging.Reading;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Reports;
using Alburnum.Reports.Documents;
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
        [Description("rectangle, square, round, half-round, quartered or core; from the size unless said")]
        public string? Shape { get; init; }

        [CommandOption("--corners <POINTS>")]
        [Description("Corners (or rim points) in pixels of the upright photograph, clockwise: \"x,y x,y x,y x,y\"")]
        public string? Corners { get; init; }

        [CommandOption("--indicator <NAME>")]
        [Description("The indicator sprayed, for instance copper-blue, or none; told from the photograph unless said")]
        public string? Indicator { get; init; }

        [CommandOption("--scale <POINTS>")]
        [Description(
            "Two points a known length apart, and the length in mm: \"x,y x,y 50\"; else the nominal size gives the scale"
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
        public double? HeartwoodRadius { get; init; }

        [CommandOption("--heartwood-reagent <REAGENT>")]
        [Description("Reagent sprayed to colour the heartwood: pine or white-oak; else its own colour is looked for")]
        public string? HeartwoodReagent { get; init; }

        [CommandOption("--incised")]
        [Description("The faces are incised: report the border between incisions and the fingers at them apart")]
        public bool Incised { get; init; }

        [CommandOption("--least-depth|--required <MM>")]
        [Description("Report the share of the perimeter that reaches this depth")]
        public double? Required { get; init; }

        [CommandOption("--step <MM>")]
        [Description("Distance between positions along a face, 0.25 to 1 mm; 1 unless said")]
        public double Step { get; init; } = 1;

        [CommandOption("--budget")]
        [Description("Also print what makes mean and least depth uncertain, cause by cause")]
        public bool Budget { get; init; }

        [CommandOption("--json")]
        [Description("Print the readings as JSON")]
        public bool Json { get; init; }

        [CommandOption("--overlay <FOLDER>")]
        [Description(
            "Folder for the photographs with what was read drawn over them, readings.json and contact-sheet.jpg"
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
        var files = PhotographPaths.Of(settings.Photographs);
        if (settings.Overlay is { } folder)
            OutFolder.Make(folder);
        var progress = settings.Json
            ? AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) })
            : console;
        var names = OverlayNames(files);
        var written = new ConcurrentBag<string>();
        IReadOnlyList<Measured> measured;
        try
        {
            measured = await Progress.EachAsync(
                progress,
                "Measuring",
                [.. files.Zip(names)],
                pair => pair.First,
                pair => Measure(pair.First, pair.Second, request, settings.Overlay, written, cancellationToken),
                cancellationToken
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
                ReadingJson.Write(documents),
                cancellationToken
            );
            var sheet = ContactSheet.Jpeg([.. measured.Select(m => m.Print!)], FontFiles.Read("Lato-Regular.ttf"));
            OutFolder.Write(to, "contact-sheet.jpg", sheet);
        }
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(ReadingJson.Write(documents));
        else if (measured.Any(m => m.Problems.Count == 0))
            MeasureSummary.Print(console, documents);
        var problems = measured.SelectMany(m => m.Problems).ToList();
        foreach (var problem in problems)
            await Console.Error.WriteLineAsync(problem.ToString().AsMemory(), cancellationToken);
        return measured.All(m => m.Problems.Count > 0) ? CommandLine.Refused : CommandLine.Done;
    }

    private static void RefuseBeside(string file, SectionReading reading)
    {
        var beside = MarkText
            .Beside(reading)
            .Select(touch => new InputProblem(
                file,
                0,
                "",
                touch.Kind switch
                {
                    TouchKind.Treated => "--treated",
                    TouchKind.Untreated => "--untreated",
                    _ => "--leave-out",
                },
                touch.Found,
                touch.Expected
            ))
            .ToList();
        if (beside.Count > 0)
            throw new InputRefusedException(beside);
    }

    private static Measured Measure(
        string file,
        string overlayName,
        ReadingRequest request,
        string? overlay,
        ConcurrentBag<string> written,
        CancellationToken stop
    )
    {
        try
        {
            var bytes = PhotographPaths.Read(file);
            var reading = SectionReader.Read(file, bytes, request, stop);
            RefuseBeside(file, reading);
            ContactPrint? print = null;
            if (overlay is not null)
            {
                var path = Path.Combine(overlay, overlayName);
                written.Add(path);
                OutFolder.Write(overlay, overlayName, OverlayPicture.Jpeg(file, bytes, reading, OverlayLongSidePx));
                print = new(
                    OverlayPicture.Jpeg(file, bytes, reading, ContactSheet.PrintPx),
                    Path.GetFileName(file),
                    MeasureSummary.InOneLine(reading)
                );
            }
            return new(ReadingMapping.From(reading), print, []);
        }
        catch (InputRefusedException refused)
        {
            // One broken photograph does not stop the rest.
            return new(
                MeasureSummary.Refused(file, request, refused),
                overlay is null ? null : new(default, Path.GetFileName(file), "could not be read"),
                refused.Problems
            );
        }
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
