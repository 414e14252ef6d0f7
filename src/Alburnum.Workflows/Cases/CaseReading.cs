using Alburnum.Cases;
using Alburnum.Imaging;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Measuring;

namespace Alburnum.Workflows.Cases;

/// <summary>A case measured and judged; nothing of it is kept or written yet.</summary>
/// <param name="Folder">The case as it was read.</param>
/// <param name="Readings">The reading of each piece that was photographed, by the piece's name.</param>
/// <param name="Expected">What was expected of the timber.</param>
/// <param name="Judged">The case from enquiry to verdict.</param>
public sealed record CaseReading(
    CaseFolder Folder,
    IReadOnlyDictionary<string, SectionReading> Readings,
    CaseExpectation Expected,
    JudgedCase Judged
)
{
    /// <summary>Measures every photograph of a case, side by side, and judges it.</summary>
    internal static async Task<CaseReading> OfAsync(
        CaseFolder folder,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        var expected = CaseExpectation.Of(folder, facts, stop);
        var readings = await EachItem.DoAsync(
            folder.Photographs,
            photograph => photograph.FileName,
            photograph => Measured(photograph, folder, facts, stop),
            progress,
            stop
        );
        var byPiece = folder
            .Photographs.Zip(readings, (photograph, reading) => (photograph.Piece, reading))
            .ToDictionary(pair => pair.Piece, pair => pair.reading, StringComparer.Ordinal);
        var evidence = byPiece.Select(pair => Evidence(pair.Key, pair.Value)).Concat(folder.RulerReadings);
        return new(folder, byPiece, expected, Judge(folder, expected, [.. evidence]));
    }

    /// <summary>Measures one photograph of a case and judges its piece alone.</summary>
    internal static PieceReading OfPiece(
        CasePhotograph photograph,
        CaseFolder folder,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        var reading = Measured(photograph, folder, facts, stop);
        var judged = Judge(folder, CaseExpectation.None, [Evidence(photograph.Piece, reading)]);
        return new(judged.Pieces[0], reading);
    }

    private static JudgedCase Judge(
        CaseFolder folder,
        CaseExpectation expected,
        IReadOnlyList<PieceEvidence> evidence
    ) =>
        folder
            .Case.Under(folder.Rulebook)
            .Predicted(expected.Prediction?.Quick, expected.Charge?.Plan, expected.NotPredicted)
            .Measured(evidence)
            .Judged(DecisionRule.Usual);

    private static SectionReading Measured(
        CasePhotograph photograph,
        CaseFolder folder,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        var request = MarksOnPhotograph
            .Of(photograph.Marks)
            .On(
                new ReadingRequest
                {
                    Section = folder.Case.Enquiry.Section!,
                    Indicator = folder.Indicator,
                    Candidates = facts.Indicators,
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
        var beside = MarksOnPhotograph.Beside(photograph.Marks, reading);
        if (beside.Count > 0)
            throw new InputRefusedException([
                .. beside.Select(fault =>
                    fault.At(folder.CaseFile, field => field) with
                    {
                        Line = photograph.Line,
                        Row = photograph.Piece,
                    }
                ),
            ]);
        return reading;
    }

    private static PieceEvidence Evidence(string piece, SectionReading reading) =>
        new(piece, EvidenceKind.Photograph, (reading.Outcome as Read)?.Profile);
}

/// <summary>One piece measured and judged alone.</summary>
/// <param name="Piece">The piece with its judgement.</param>
/// <param name="Reading">The reading of its photograph.</param>
public sealed record PieceReading(JudgedPiece Piece, SectionReading Reading);
