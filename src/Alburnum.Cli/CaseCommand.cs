using System.ComponentModel;
using System.Reflection;
using Alburnum.Cases;
using Alburnum.Imaging;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Sheets;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Runs a case folder from enquiry to report.</summary>
internal sealed class CaseCommand(IAnsiConsole console) : AsyncCommand<CaseCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandArgument(0, "<FOLDER>")]
        [Description("Case folder: case.yaml, photographs, tables in CSV")]
        public required string Folder { get; init; }

        [CommandOption("--out <DIR>")]
        [Description("Where report.pdf and report.json go; the case folder unless said")]
        public string? Out { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var facts = FactLibrary.Load(FactLibrary.DefaultFolder);
        var folder = CaseFolderReader.Read(settings.Folder, facts);
        var indicators = IndicatorFile.Load(FactLibrary.DefaultFolder);
        var indicator = IndicatorOf(folder, indicators);
        var readings = await Progress.EachAsync(
            console,
            "Reading sections",
            folder.Photographs,
            photograph => photograph.FileName,
            photograph => Measure(photograph, folder, indicator, indicators, cancellationToken),
            cancellationToken
        );
        var byPiece = folder
            .Photographs.Zip(readings, (photograph, reading) => (photograph.Piece, reading))
            .ToDictionary(pair => pair.Piece, pair => pair.reading, StringComparer.Ordinal);
        var result = CaseRun.Run(
            folder.Case,
            facts.Rulebook(folder.Rulebook),
            [.. byPiece.Select(pair => Evidence(pair.Key, pair.Value)), .. folder.RulerReadings],
            DecisionRule.Usual
        );
        var document = CaseMapping.From(
            result,
            byPiece,
            CautionFile.Load(FactLibrary.DefaultFolder),
            ProgramName,
            DateTime.UtcNow
        );
        await KeepAsync(folder, document, settings, cancellationToken);
        CaseSummary.Print(console, document, settings.Out ?? settings.Folder);
        return CommandLine.Done;
    }

    private static string ProgramName { get; } =
        $"Alburnum {Assembly.GetExecutingAssembly().GetName().Version!.ToString(3)}";

    private static Indicator? IndicatorOf(CaseFolder folder, IReadOnlyList<Indicator> indicators) =>
        folder.Indicator is not { } key
            ? null
            : indicators.FirstOrDefault(indicator => indicator.Key == key)
                ?? throw new InputRefusedException(
                    new InputProblem(
                        Path.Combine(folder.Path, "case.yaml"),
                        0,
                        "",
                        "indicator",
                        key,
                        string.Join(", ", indicators.Select(indicator => indicator.Key))
                    )
                );

    private static SectionReading Measure(
        CasePhotograph photograph,
        CaseFolder folder,
        Indicator? indicator,
        IReadOnlyList<Indicator> indicators,
        CancellationToken stop
    )
    {
        var reading = SectionReader.Read(
            Path.Combine(folder.Path, photograph.FileName),
            photograph.Bytes,
            new ReadingRequest
            {
                Section = folder.Case.Enquiry.Section!,
                OutlinePx = photograph.OutlinePx?.Select(point => new PointPx(point.X, point.Y)).ToList(),
                Indicator = indicator,
                Candidates = indicators,
                IsIncised = folder.Case.Enquiry.IsIncised == true,
            },
            stop
        );
        return reading with
        {
            FileName = photograph.FileName,
            Notes = WantsOutline(reading, photograph)
                ? [.. reading.Notes, HowToPointOut(photograph.Piece, reading)]
                : reading.Notes,
        };
    }

    private static bool WantsOutline(SectionReading reading, CasePhotograph photograph) =>
        photograph.OutlinePx is null && reading.Profile is null && reading.OutlineConfidence < 1;

    private static string HowToPointOut(string piece, SectionReading reading) =>
        $"To point the outline out, write it under piece {piece} in case.yaml and run the case again: "
        + (
            reading.Shape == SectionShape.Round
                ? "outline: [\"x,y\", …] with five or more points on the rim, "
                : "outline: [\"x,y\", \"x,y\", \"x,y\", \"x,y\"] with the corners, clockwise, "
        )
        + $"in pixels of the upright photograph ({reading.WidthPx} × {reading.HeightPx}).";

    private static PieceEvidence Evidence(string piece, SectionReading reading) =>
        new(piece, EvidenceKind.Photograph, reading.Profile, reading.Profile is null ? reading.Notes : []);

    private static async Task KeepAsync(
        CaseFolder folder,
        CaseDocument document,
        Settings settings,
        CancellationToken stop
    )
    {
        var json = CaseJson.Write(document);
        var photographs = folder
            .Photographs.Select(photograph => new PhotographRecord(
                CaseStore.Fingerprint(photograph.Bytes.Span),
                photograph.FileName,
                photograph.Bytes
            ))
            .ToList();
        var pictures = photographs
            .DistinctBy(photograph => photograph.Sha256, StringComparer.Ordinal)
            .ToDictionary(
                photograph => photograph.Sha256,
                photograph => (ReadOnlyMemory<byte>)Thumbnail.Jpeg(photograph.FileName, photograph.Bytes, 900),
                StringComparer.Ordinal
            );
        var pdf = CaseReport.Write(document, pictures);
        var run = new CaseRecord(
            document.Reference,
            document.Title,
            document.Client,
            document.RunAt,
            document.Verdict.Verdict,
            json,
            photographs
        );
        await CaseStore
            .Open(settings.StorePath)
            .AddAsync(run, token => ReportFiles.WriteAsync(settings.Out ?? settings.Folder, pdf, json, token), stop);
    }
}
