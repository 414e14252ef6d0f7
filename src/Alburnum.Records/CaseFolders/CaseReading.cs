using Alburnum.Cases;
using Alburnum.Imaging;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.Facts;

namespace Alburnum.Records.CaseFolders;

/// <summary>A case measured and judged; nothing of it is kept or written yet.</summary>
/// <param name="Folder">The case as it was read.</param>
/// <param name="Readings">The reading of each piece that was photographed, by the piece's name.</param>
/// <param name="Result">The case from enquiry to verdict.</param>
public sealed record CaseReading(
    CaseFolder Folder,
    IReadOnlyDictionary<string, SectionReading> Readings,
    CaseResult Result
)
{
    /// <summary>Judges a case on the readings of its photographs.</summary>
    /// <param name="folder">The case.</param>
    /// <param name="readings">A reading for each photograph, in their order.</param>
    /// <param name="facts">Has the case's rulebook.</param>
    public static CaseReading Judge(CaseFolder folder, IReadOnlyList<SectionReading> readings, FactLibrary facts)
    {
        var byPiece = folder
            .Photographs.Zip(readings, (photograph, reading) => (photograph.Piece, reading))
            .ToDictionary(pair => pair.Piece, pair => pair.reading, StringComparer.Ordinal);
        var evidence = byPiece.Select(pair => Evidence(pair.Key, pair.Value)).Concat(folder.RulerReadings);
        return new(
            folder,
            byPiece,
            CaseRun.Run(folder.Case, facts.Rulebook(folder.Rulebook), [.. evidence], DecisionRule.Usual)
        );
    }

    /// <summary>Judges one piece of a case alone.</summary>
    public static PieceResult JudgePiece(CaseFolder folder, string piece, SectionReading reading, FactLibrary facts) =>
        CaseRun
            .Run(folder.Case, facts.Rulebook(folder.Rulebook), [Evidence(piece, reading)], DecisionRule.Usual)
            .Pieces[0];

    /// <summary>Measures one photograph of a case.</summary>
    /// <param name="photograph">The photograph with its marks.</param>
    /// <param name="folder">The case.</param>
    /// <param name="indicators">Every indicator known.</param>
    /// <param name="stop">Stops the reading.</param>
    /// <exception cref="InputRefusedException">It is not a photograph that can be read, or a mark lies beside it.</exception>
    public static SectionReading Measure(
        CasePhotograph photograph,
        CaseFolder folder,
        IReadOnlyList<Indicator> indicators,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(photograph);
        ArgumentNullException.ThrowIfNull(folder);
        var request = photograph.Marks.On(
            new ReadingRequest
            {
                Section = folder.Case.Enquiry.Section!,
                Indicator = folder.Indicator,
                Candidates = indicators,
                IsIncised = photograph.IsIncised ?? folder.Case.Enquiry.IsIncised == true,
            }
        );
        var reading = SectionReader.Read(
            photograph.ShownName,
            photograph.Bytes,
            request,
            stop,
            photograph.File.Sha256
        ) with
        {
            FileName = photograph.FileName,
        };
        RefuseBeside(photograph, folder, reading);
        return reading;
    }

    private static void RefuseBeside(CasePhotograph photograph, CaseFolder folder, SectionReading reading)
    {
        var beside = MarkText
            .Beside(reading)
            .Select(touch => new InputProblem(
                folder.CaseFile,
                photograph.Line,
                photograph.Piece,
                touch.Kind switch
                {
                    TouchKind.Treated => "treated",
                    TouchKind.Untreated => "untreated",
                    _ => "leaveOut",
                },
                touch.Found,
                touch.Expected
            ))
            .ToList();
        if (beside.Count > 0)
            throw new InputRefusedException(beside);
    }

    private static PieceEvidence Evidence(string piece, SectionReading reading) =>
        new(piece, EvidenceKind.Photograph, (reading.Outcome as Read)?.Profile, []);
}
