using System.Security.Cryptography;
using Alburnum.Facts;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Stages;
using Alburnum.Timber;

namespace Alburnum.Imaging;

/// <summary>Reads the depth of penetration from a photograph of a cross-section.</summary>
public static class SectionReader
{
    /// <summary>Share of the photograph's longer side that a section is taken to fill where no outline is given. Our own choice.</summary>
    private const double FilledShare = 0.5;

    /// <summary>Fewer pixels per mm than this are none.</summary>
    private const double LeastPxPerMm = 1e-3;

    /// <summary>No photograph is decoded smaller than this share of its size. Our own choice.</summary>
    private const double LeastDecodedScale = 0.05;

    /// <summary>Most indicators compared.</summary>
    private const int MostCandidates = 1000;

    /// <summary>Reads one photograph.</summary>
    /// <param name="fileName">Name of the file, for messages and records.</param>
    /// <param name="photograph">The file's bytes.</param>
    /// <param name="request">What is known of the section.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <param name="sha256">SHA-256 of the bytes where it is known already; null: it is computed.</param>
    /// <returns>The reading: a depth, or the stage at which it ended and why.</returns>
    /// <exception cref="InputRefusedException">The file is not a readable photograph, or the outline given cannot be one.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static SectionReading Read(
        string fileName,
        ReadOnlyMemory<byte> photograph,
        ReadingRequest request,
        CancellationToken ct,
        string? sha256 = null
    )
    {
        ArgumentNullException.ThrowIfNull(fileName);
        Check(request);
        using var file = PhotographFile.Open(fileName, photograph);
        using var photo = file.Decode(LeastScale(file, request));
        ct.ThrowIfCancellationRequested();
        var scene = new Scene(fileName, photo, request);
        return Of(scene, sha256 ?? Sha256(photograph), Outcome(scene, OutlineStage.Find(scene, ct), ct));
    }

    /// <summary>Reads each of several pieces of one section on one photograph.</summary>
    /// <param name="fileName">Name of the file, for messages and records.</param>
    /// <param name="photograph">The file's bytes.</param>
    /// <param name="pieces">How many pieces there are, and what they are called.</param>
    /// <param name="request">What is known of each; a section sawn or round, and no outline.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <returns>The readings in reading order, as many as there are pieces: of each a depth, or the stage at which it ended and why.</returns>
    /// <exception cref="InputRefusedException">The file is not a readable photograph, or does not show as many pieces.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static IReadOnlyList<SectionReading> ReadEach(
        string fileName,
        ReadOnlyMemory<byte> photograph,
        SeveralPieces pieces,
        ReadingRequest request,
        CancellationToken ct
    )
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(pieces);
        Check(request);
        using var file = PhotographFile.Open(fileName, photograph);
        using var photo = file.Decode(LeastScale(file, request.Section, pieces.Count));
        ct.ThrowIfCancellationRequested();
        var scene = new Scene(fileName, photo, request);
        if (!PiecesStage.Find(scene, pieces.Count, ct).Has(out var found, out var none))
            throw new InputRefusedException(none.At(fileName, pieces.Count));
        var sha256 = Sha256(photograph);
        var readings = new SectionReading[found.Count];
        Parallel.For(
            0,
            found.Count,
            new ParallelOptions { CancellationToken = ct },
            k =>
                readings[k] = Of(scene, sha256, Outcome(scene, OutlineStage.OfPiece(scene, found[k]), ct)) with
                {
                    Piece = new(k + 1, pieces.Labels?[k], found[k].Middle),
                }
        );
        return readings;
    }

    private static void Check(ReadingRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        Require.Within(request.StepMm, Ranges.StepMm);
        if (request.RequiredMm is { } requiredMm)
            Require.Within(requiredMm, Ranges.DepthMm);
        Require.InRange(request.Candidates.Count, 1, MostCandidates, "indicators");
    }

    private static string Sha256(ReadOnlyMemory<byte> photograph) =>
        Convert.ToHexStringLower(SHA256.HashData(photograph.Span));

    private static SectionReading Of(Scene scene, string sha256, ReadingOutcome outcome) =>
        new()
        {
            FileName = scene.FileName,
            Sha256 = sha256,
            WidthPx = scene.Photo.WidthPx,
            HeightPx = scene.Photo.HeightPx,
            Shape = scene.Shape,
            Section = scene.Request.Section,
            Marks = PhotographMarks.Of(scene.Request),
            HeartwoodReagent = scene.Request.HeartwoodReagent,
            Outcome = outcome,
        };

    private static ReadingOutcome Outcome(
        Scene scene,
        Outcome<LocatedSection, NotDetermined> located,
        CancellationToken ct
    ) =>
        located
            .Then(section => FlatteningStage.Flatten(scene, section))
            .Then(flat => QualityStage.Judge(scene, flat))
            .Then(judged => ZonesStage.Detect(scene, judged, ct))
            .Then(zones => FrontStage.Read(scene, zones, ct))
            .Match<ReadingOutcome>(read => read, ended => ended);

    private static double LeastScale(PhotographFile file, ReadingRequest request)
    {
        var sizeMm = request.Section.SizesMm.Max();
        return request.OutlinePx is { Count: > 1 } points && request.ShapeOrFromSection != SectionShape.CoreStrip
            ? LeastScale(
                Math.Max(points.Max(p => p.X) - points.Min(p => p.X), points.Max(p => p.Y) - points.Min(p => p.Y)),
                sizeMm
            )
            : LeastScale(file.WidthPx, file.HeightPx, sizeMm);
    }

    // Side by side with room between them, so many pieces are taken to fill about half the picture each way.
    private static double LeastScale(PhotographFile file, Section section, int count) =>
        LeastScale(FilledShare * Math.Sqrt((double)file.WidthPx * file.HeightPx), Math.Sqrt(count * section.AreaMm2));

    /// <summary>Scale to decode at where no outline is given: the section is taken to fill about half the picture.</summary>
    internal static double LeastScale(int widthPx, int heightPx, double sizeMm) =>
        LeastScale(FilledShare * Math.Max(widthPx, heightPx), sizeMm);

    private static double LeastScale(double extentPx, double sizeMm) =>
        Math.Clamp(Scene.ReadingPxPerMm / Math.Max(LeastPxPerMm, extentPx / sizeMm), LeastDecodedScale, 1);
}
