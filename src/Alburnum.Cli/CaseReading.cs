using Alburnum.Cases;
using Alburnum.Imaging;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Spectre.Console;

namespace Alburnum.Cli;

/// <summary>A case folder measured and judged; nothing of it is kept or written yet.</summary>
/// <param name="Folder">The folder as it was read.</param>
/// <param name="Readings">The reading of each piece that was photographed, by the piece's name.</param>
/// <param name="Result">The case from enquiry to verdict.</param>
internal sealed record CaseReading(
    CaseFolder Folder,
    IReadOnlyDictionary<string, SectionReading> Readings,
    CaseResult Result
)
{
    /// <summary>Reads a folder, measures its photographs and runs the case.</summary>
    /// <exception cref="InputRefusedException">Anything in the folder is missing or wrong.</exception>
    public static async Task<CaseReading> OfAsync(IAnsiConsole console, string path, CancellationToken stop)
    {
        var facts = FactLibrary.Load(FactLibrary.DefaultFolder);
        var folder = CaseFolderReader.Read(path, facts);
        var indicators = IndicatorFile.Load(FactLibrary.DefaultFolder);
        var indicator = IndicatorOf(folder, indicators);
        var readings = await Progress.EachAsync(
            console,
            "Reading sections",
            folder.Photographs,
            photograph => photograph.FileName,
            photograph => Measure(photograph, folder, indicator, indicators, stop),
            stop
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
        return new(folder, byPiece, result);
    }

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
}
