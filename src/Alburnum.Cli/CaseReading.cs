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
        var indicator = IndicatorOf(folder);
        var readings = await Progress.EachAsync(
            console,
            "Reading sections",
            folder.Photographs,
            photograph => photograph.FileName,
            photograph => Measure(photograph, folder, indicator, stop),
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

    private static Indicator? IndicatorOf(CaseFolder folder) =>
        folder.Indicator is not { } key
            ? null
            : Indicators.Usual.FirstOrDefault(indicator => indicator.Key == key)
                ?? throw new InputRefusedException(
                    new InputProblem(
                        Path.Combine(folder.Path, "case.yaml"),
                        0,
                        "",
                        "indicator",
                        key,
                        string.Join(", ", Indicators.Usual.Select(indicator => indicator.Key))
                    )
                );

    private static SectionReading Measure(
        CasePhotograph photograph,
        CaseFolder folder,
        Indicator? indicator,
        CancellationToken stop
    ) =>
        SectionReader.Read(
            Path.Combine(folder.Path, photograph.FileName),
            photograph.Bytes,
            new ReadingRequest
            {
                Section = folder.Case.Enquiry.Section!,
                OutlinePx = photograph.OutlinePx?.Select(point => new PointPx(point.X, point.Y)).ToList(),
                Indicator = indicator,
            },
            stop
        ) with
        {
            FileName = photograph.FileName,
        };

    private static PieceEvidence Evidence(string piece, SectionReading reading) =>
        new(piece, EvidenceKind.Photograph, reading.Profile, reading.Profile is null ? reading.Notes : []);
}
