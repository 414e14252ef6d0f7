using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sawing;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

/// <summary>How a log is to be cut, and what its pieces must reach.</summary>
public sealed record SawingRequest
{
    /// <summary>The wood, the schedule and the depth, with the log's diameter; the section is a sawn one, of boards only its height counts. Where a piece lies comes from the pattern.</summary>
    public required TreatingRequest Treating { get; init; }

    /// <summary>How the log is cut.</summary>
    public required CuttingPattern Pattern { get; init; }

    /// <summary>Width of a saw cut, mm. 0 to 20.</summary>
    public required double KerfMm { get; init; }

    /// <summary>Pieces to draw for each place in the log, 100 to 1 000 000.</summary>
    public required int Pieces { get; init; }

    /// <summary>Seed of the draws, the same for each place.</summary>
    public required int Seed { get; init; }
}

/// <summary>One piece of a log, and what to expect of it.</summary>
/// <param name="Piece">Where it lies, and where heartwood comes to its faces.</param>
/// <param name="Quick">What is expected.</param>
public sealed record PredictedPiece(SawnPiece Piece, QuickPrediction Quick);

/// <summary>A log cut into pieces, with what to expect of each.</summary>
public sealed record PredictedLog
{
    /// <summary>How it was cut.</summary>
    public required CuttingPattern Pattern { get; init; }

    /// <summary>What was asked of each piece; its log is not used.</summary>
    public required TreatingQuestion Asked { get; init; }

    /// <summary>Diameter of the log under bark, mm.</summary>
    public required double LogDiameterMm { get; init; }

    /// <summary>Width of the sapwood, mm.</summary>
    public required double SapwoodMm { get; init; }

    /// <summary>What was assumed because nobody said it.</summary>
    public required IReadOnlyList<LogAssumption> Assumptions { get; init; }

    /// <summary>The pieces, from the top left; one or more.</summary>
    public required IReadOnlyList<PredictedPiece> Pieces { get; init; }

    /// <summary>Share of all pieces that conform everywhere, 0 to 1; null where no depth is asked for.</summary>
    public double? PieceShare =>
        Asked.Prediction.IsDepthAsked ? Pieces.Average(piece => piece.Quick.PieceShare.Value) : null;

    /// <summary>Share of cores, one taken anywhere on any piece, that conform, 0 to 1; null likewise.</summary>
    public double? CoreShare =>
        Asked.Prediction.IsDepthAsked ? Pieces.Average(piece => piece.Quick.CoreShare.Value) : null;
}

/// <summary>Finds which pieces of a cutting pattern show heartwood on which faces, and what that does to conformity.</summary>
public static class SawLog
{
    /// <summary>Most pieces that a log is cut into: each place in it is drawn by itself, which takes a tenth of a second or more.</summary>
    private const int MostPieces = 500;

    /// <summary>Cuts the log and predicts each piece.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="facts">Permeabilities and schedules.</param>
    /// <param name="progress">Told the share of the pieces that is done; null where nobody looks.</param>
    /// <param name="stop">Stops between batches.</param>
    /// <exception cref="InputRefusedException">The log is too small, or something asked cannot be or is not known of the species.</exception>
    public static PredictedLog Run(
        SawingRequest request,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        var (treating, file) = (request.Treating, request.Treating.File);
        var diameter = Diameter(treating);
        var asked = TreatingQuestion.Of(treating with { LogDiameterMm = null, All = WoodThroughout.Sapwood }, facts);
        if (treating.Section is not RectangularSection size)
            throw TreatmentFields.Section.Refused(file, treating.Section.Label, "a sawn size such as \"100x100\"");
        var (sapwood, assumptions) = Sapwood(treating);
        var sawn = Sawn(request, size, diameter, sapwood);
        if (sawn.Count > MostPieces)
            throw TreatmentFields.LogDiameter.Refused(
                file,
                $"{InputProblem.Number(diameter)} mm, which gives {sawn.Count} pieces of {size.Label}",
                $"a log and a section that give at most {MostPieces} pieces"
            );
        return new()
        {
            Pattern = request.Pattern,
            Asked = asked,
            LogDiameterMm = diameter,
            SapwoodMm = sapwood,
            Assumptions = assumptions,
            Pieces = Predicted(sawn, asked.Prediction, request, progress, stop),
        };
    }

    private static IReadOnlyList<SawnPiece> Sawn(
        SawingRequest request,
        RectangularSection size,
        double diameterMm,
        double sapwoodMm
    )
    {
        LogTooSmall small;
        try
        {
            return SawnLog.Cut(request.Pattern, size, diameterMm, sapwoodMm, request.KerfMm);
        }
        catch (LogFaultException refused) when (refused.Fault is LogTooSmall fault)
        {
            small = fault;
        }
        throw new InputRefusedException(
            new InputProblem(
                "log",
                0,
                "",
                "diameter",
                InputProblem.Number(diameterMm),
                $"at least {InputProblem.Number(Math.Ceiling(small.LeastMm))} mm for this pattern and size"
            )
        );
    }

    private static double Diameter(TreatingRequest treating)
    {
        var field = TreatmentFields.LogDiameter;
        return field.InRange(
            treating.LogDiameterMm ?? throw field.Refused(treating.File, "nothing", "the diameter of the log, mm"),
            treating.File
        );
    }

    private static (double Mm, IReadOnlyList<LogAssumption> Assumptions) Sapwood(TreatingRequest treating)
    {
        if (TreatingQuestion.SapwoodOf(treating) is { } given)
            return (given, []);
        if (treating.Species.SapwoodWidth is not { Value.IsDistinct: true } band)
            throw TreatmentFields.Sapwood.Refused(
                treating.File,
                "nothing",
                $"the width of the sapwood, which is not known of {treating.Species.Name}"
            );
        var usual = UsualSapwood.Of(band.Value);
        return (usual.Mm, [new SapwoodAsUsual(usual, band.Provenance.Standing)]);
    }

    // Pieces that are alike but for a turn or a mirror share one answer.
    private static List<PredictedPiece> Predicted(
        IReadOnlyList<SawnPiece> sawn,
        PredictionQuestion question,
        SawingRequest request,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        List<PredictedPiece> predicted = [];
        var front = WayRun.Table(question);
        foreach (var piece in sawn)
        {
            var quick =
                predicted.Find(before => before.Piece.IsLike(piece))?.Quick
                ?? QuickPrediction.Draw(
                    question with
                    {
                        Section = piece.Section,
                        Log = piece.Log,
                    },
                    front,
                    request.Seed,
                    request.Pieces,
                    cancellation: stop
                );
            predicted.Add(new(piece, quick));
            progress?.Report(new((double)predicted.Count / sawn.Count));
        }
        return predicted;
    }
}
