using System.ComponentModel;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Reports;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Measuring;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Measuring;

/// <summary>Measures depth of penetration on photographs of sprayed cross-sections.</summary>
internal sealed class MeasureCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<MeasureCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<PHOTO>")]
        [Description("Photographs, or folders of them")]
        public required string[] Photographs { get; init; }

        [CommandOption("--section <SIZE>")]
        [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Section), Note = "")]
        public string? Section { get; init; }

        [CommandOption("--core")]
        [Description("The photographs show an increment core; its section is its diameter and length, such as 5x80")]
        public bool IsCore { get; init; }

        [CommandOption("--pieces <NUMBER>")]
        [Description("How many cut ends of that section each photograph shows, 2 to 60; default: one")]
        public int? Pieces { get; init; }

        [CommandOption("--labels <LIST>")]
        [Description(
            "What the cut ends are called, left to right and row by row: \"A1,A2,A3\"; otherwise they are numbered"
        )]
        public string? Labels { get; init; }

        [CommandOption("--corners <POINTS>")]
        [Description("Corners (or rim points) in pixels of the upright photograph, clockwise: \"x,y x,y x,y x,y\"")]
        public string? Corners { get; init; }

        [CommandOption("--indicator <NAME>")]
        [HelpOf(typeof(ReagentFields), nameof(ReagentFields.Indicator))]
        public string? Indicator { get; init; }

        [CommandOption("--scale <POINTS>")]
        [Description(
            "Two points a known length apart, and the length in mm: \"x,y x,y 50\"; otherwise the nominal size gives the scale"
        )]
        public string? Scale { get; init; }

        [CommandOption("--measured-size <SIZE>")]
        [Description(
            "Size of the section as measured on the piece, such as 98.5x101; otherwise the nominal size is taken on trust"
        )]
        public string? MeasuredSize { get; init; }

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
        [HelpOf(typeof(ReagentFields), nameof(ReagentFields.Heartwood))]
        public string? HeartwoodReagent { get; init; }

        [CommandOption("--incised")]
        [Description("The faces are incised: report the border between incisions separately from the fingers at them")]
        public bool Incised { get; init; }

        [CommandOption("--depth <MM>")]
        [HelpOf(
            typeof(TreatmentFields),
            nameof(TreatmentFields.Depth),
            Note = "also reports the share of the perimeter that reaches it"
        )]
        public double? Depth { get; init; }

        [CommandOption("--step <MM>")]
        [Description("Distance between positions along a face, 0.25 to 1 mm; default: 1")]
        public double Step { get; init; } = 1;

        [CommandOption("--budget")]
        [Description("Also print what makes mean and least depth uncertain, cause by cause")]
        public bool Budget { get; init; }

        [CommandOption("--overlay <FOLDER>")]
        [Description(
            "Folder for the photographs with the reading drawn over them, readings.json and contact-sheet.jpg"
        )]
        public string? Overlay { get; init; }
    }

    private sealed record Measured(IReadOnlyList<ReadingDocument> Documents, IReadOnlyList<InputProblem> Problems);

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var request = MeasureRequest.From(settings, facts.Indicators, facts.HeartwoodReagents);
        Measured Shown(MeasuredPhotograph photograph) => Of(photograph, request.Reading, settings.Budget);
        var measured = await Progress.ShowAsync(
            Progress.Beside(console, settings.Json),
            Said("terminal.measuring"),
            progress =>
                settings.Overlay is { } folder
                    ? DrawReadings.RunAsync(request, Drawn(folder), Shown, progress, cancellationToken)
                    : MeasurePhotographs.EachAsync(
                        request,
                        (_, photograph) => Shown(photograph),
                        progress,
                        cancellationToken
                    )
        );
        var documents = Documents(measured);
        console.Show(
            documents,
            settings.Json,
            () =>
            {
                if (measured.Any(m => m.Problems.Count == 0))
                    MeasureSummary.Print(console, documents);
            }
        );
        foreach (var problem in measured.SelectMany(m => m.Problems))
            await Console.Error.WriteLineAsync(problem.ToString().AsMemory(), cancellationToken);
        return measured.All(m => m.Problems.Count > 0) ? CommandLine.Refused : CommandLine.Done;
    }

    private static DrawingRequest<Measured> Drawn(string folder) =>
        new(
            folder,
            FontFiles.Read("Lato-Regular.ttf"),
            ReadingWords.InOneLine,
            measured => DocumentJson.Write(Documents(measured))
        );

    private static Measured Of(MeasuredPhotograph photograph, ReadingRequest request, bool withBudget) =>
        photograph switch
        {
            ReadPhotograph read => new(
                [
                    .. read
                        .Readings.Select(ReadingMapping.From)
                        .Select(reading => withBudget ? reading : reading with { Budget = null }),
                ],
                []
            ),
            RefusedPhotograph refused => new([ReadingMapping.From(refused, request)], refused.Problems),
            _ => throw new ArgumentOutOfRangeException(nameof(photograph), photograph, "Not an outcome."),
        };

    private static IReadOnlyList<ReadingDocument> Documents(IReadOnlyList<Measured> measured) =>
        [.. measured.SelectMany(m => m.Documents)];
}
