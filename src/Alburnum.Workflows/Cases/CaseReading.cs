using Alburnum.Cases;
using Alburnum.Imaging;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Ledger;
using Alburnum.Records.Marks;
using Alburnum.Requirements;
using Alburnum.Workflows.Measuring;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Workflows.Cases;

/// <summary>A case measured and judged; nothing of it is kept or written yet.</summary>
/// <param name="Folder">The case as it was read.</param>
/// <param name="Readings">The reading of each piece that was photographed, by the piece's name.</param>
/// <param name="LeftOut">What it leaves out, and what that would have changed.</param>
/// <param name="Expected">What was expected of the timber.</param>
/// <param name="Judged">The case from enquiry to verdict.</param>
/// <param name="Warnings">What must be known before the demand is read.</param>
/// <param name="Insects">Insects that would make treatment wise although the code asks for none.</param>
public sealed record CaseReading(
    CaseFolder Folder,
    IReadOnlyDictionary<string, SectionReading> Readings,
    WithLeftOut LeftOut,
    CaseExpectation Expected,
    JudgedCase Judged,
    IReadOnlyList<RequirementRemark> Warnings,
    IReadOnlyList<Insect> Insects
)
{
    /// <summary>What it was worked out with, beside the files of the case.</summary>
    public required RunInputs Inputs { get; init; }

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
        var evidence = folder
            .Photographs.Select(photograph =>
                Evidence(photograph.Piece, byPiece[photograph.Piece], IsIncised(photograph, folder))
            )
            .Concat(folder.RulerReadings);
        var judged = Judge(folder, expected, [.. evidence], facts);
        var leftOut = await EachItem.DoAsync(
            folder.LeftOut,
            photograph => photograph.FileName,
            photograph => (photograph, ReadLeftOut(photograph, folder, facts, stop)),
            progress: null,
            stop
        );
        var warnings = RequirementWarnings.Of(judged.Required.Answer, folder.Rulebook, judged.Required.Contract, facts);
        var insects = FindRequirement.InsectsNotRuledOut(judged.Required.Answer, judged.Required.Contract, facts);
        return new(folder, byPiece, WithLeftOut.Of(judged, leftOut), expected, judged, warnings, insects)
        {
            Inputs = new(
                ProgramName.WithVersion,
                facts.Sha256,
                folder.Rulebook.FullTitle,
                facts.Rulebooks.Sha256Of(folder.Rulebook)
            ),
        };
    }

    // Without marks, as it came.
    private static SectionReading? ReadLeftOut(
        LeftOutPhotograph photograph,
        CaseFolder folder,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        if (photograph.File is not { } file)
            return null;
        try
        {
            return Measured(
                new(photograph.Piece, Line: 0, file, file.FileName, WrittenMarks.None, IsIncised: null),
                folder,
                facts,
                stop
            );
        }
        catch (InputRefusedException)
        {
            return null;
        }
    }

    private static bool? IsIncised(CasePhotograph photograph, CaseFolder folder) =>
        photograph.IsIncised ?? folder.Case.Enquiry.IsIncised;

    /// <summary>Measures one photograph of a case and judges its piece alone.</summary>
    internal static PieceReading OfPiece(
        CasePhotograph photograph,
        CaseFolder folder,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        var reading = Measured(photograph, folder, facts, stop);
        var evidence = Evidence(photograph.Piece, reading, IsIncised(photograph, folder));
        var judged = Judge(folder, CaseExpectation.None, [evidence], facts);
        return new(judged.Pieces[0], reading);
    }

    private static JudgedCase Judge(
        CaseFolder folder,
        CaseExpectation expected,
        IReadOnlyList<PieceEvidence> evidence,
        FactLibrary facts
    ) =>
        folder
            .Case.Under(folder.Rulebook, facts.Rulebooks.All)
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
                    IsIncised = IsIncised(photograph, folder) == true,
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

    internal static PieceEvidence Evidence(string piece, SectionReading reading, bool? isIncised)
    {
        var read = reading.Outcome as Read;
        return new(piece, EvidenceKind.Photograph, read?.Profile)
        {
            IsIncised = isIncised,
            IsOffEdge = read is { IsOffEdge: true },
            IsSizeOnTrust = read?.Scale.Basis == ScaleBasis.NominalSize,
        };
    }
}

/// <summary>One piece measured and judged alone.</summary>
/// <param name="Piece">The piece with its judgement.</param>
/// <param name="Reading">The reading of its photograph.</param>
public sealed record PieceReading(JudgedPiece Piece, SectionReading Reading);
