using System.Security.Cryptography;
using Alburnum.Facts;
using Alburnum.Imaging.Front;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Stages;

namespace Alburnum.Imaging;

/// <summary>Reads the depth of penetration from a photograph of a cross-section.</summary>
public static class SectionReader
{
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
        ArgumentNullException.ThrowIfNull(request);
        Require.InRange(request.StepMm, Ranges.StepMm.Low, Ranges.StepMm.High, "mm");
        Require.InRange(request.SectionUncertaintyMm, 0, 100, "mm");
        Require.InRange(request.RequiredMm ?? 1, double.Epsilon, 1000, "mm");
        Require.InRange(request.Candidates.Count, 1, 1000, "indicators");
        using var file = PhotographFile.Open(fileName, photograph);
        using var photo = file.Decode(LeastScale(file, request));
        ct.ThrowIfCancellationRequested();
        var scene = new Scene(fileName, photo, request);
        return new()
        {
            FileName = fileName,
            Sha256 = sha256 ?? Convert.ToHexStringLower(SHA256.HashData(photograph.Span)),
            WidthPx = file.WidthPx,
            HeightPx = file.HeightPx,
            Shape = scene.Shape,
            Section = request.Section,
            Marks = PhotographMarks.Of(request),
            Outcome = Outcome(scene, ct),
        };
    }

    private static ReadingOutcome Outcome(Scene scene, CancellationToken ct)
    {
        var outline = OutlineStage.Find(scene);
        // What each stage tells is laid down here, for the case that it is the last.
        var soFar = new NotDetermined(ReadingStage.Outline, new OutlineNotFound())
        {
            Quality = new(QualityGrade.Unusable, []),
            Indicator = scene.Request.Indicator,
            Outline = outline?.Told,
            Scale = null,
        };
        if (outline is null || !OutlineStage.IsSure(outline))
            return soFar;
        ct.ThrowIfCancellationRequested();
        var located = OutlineStage.Locate(scene, outline);
        soFar = soFar with { Outline = located.Outline.Told };
        if (FlatteningStage.Flatten(scene, located) is not { } flat)
            return soFar with { Stage = ReadingStage.Flattening, Fault = new KnownLengthDisagrees() };
        soFar = soFar with { Quality = QualityStage.Judge(scene, flat), Scale = flat.Scale(located.Lens) };
        if (soFar.Quality.Grade == QualityGrade.Unusable)
            return soFar with { Stage = ReadingStage.Quality, Fault = new TooLittleShown() };
        var zones = ZonesStage.Tell(scene, flat, ct);
        soFar = soFar with
        {
            Indicator = zones.Found.Indicator,
            Quality = soFar.Quality.WithEvidence(zones.Found.Indicator),
        };
        return ZonesStage.Fault(scene, zones, ct) is { } fault
            ? Ended(soFar, ReadingStage.Zones, fault)
            : Front(scene, located, flat, zones, soFar, ct);
    }

    private static ReadingOutcome Front(
        Scene scene,
        LocatedSection located,
        FlatSection laid,
        SectionZones zones,
        NotDetermined soFar,
        CancellationToken ct
    )
    {
        var (flat, poseShare) = FrontStage.Posed(scene, located, laid, zones);
        var front = FrontStage.Trace(flat, zones);
        ct.ThrowIfCancellationRequested();
        var errors = FrontStage.Errors(located, flat, zones.Found.Indicator, poseShare);
        var read = new ProfileReader(front, errors, scene.Request.StepMm).Read(flat.Known.Section);
        if (read is null)
            return Ended(soFar, ReadingStage.Front, new NothingLeft());
        return FrontStage.Doubt(scene.Request, zones.Found.Indicator, read.Profile.Statistics) is { } doubtful
            ? Ended(soFar, ReadingStage.Front, doubtful)
            : ReadingDetails.Of(scene.Request, flat, front, read, soFar);
    }

    // A photograph that shows the section and still no depth is worth taking again.
    private static NotDetermined Ended(NotDetermined soFar, ReadingStage stage, ReadingFault fault) =>
        soFar with
        {
            Stage = stage,
            Fault = fault,
            Quality = soFar.Quality.AtBest(QualityGrade.Poor),
        };

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

    /// <summary>Scale to decode at where no outline is given: the section is taken to fill about half the picture.</summary>
    internal static double LeastScale(int widthPx, int heightPx, double sizeMm) =>
        LeastScale(0.5 * Math.Max(widthPx, heightPx), sizeMm);

    // JPEG pictures cannot be reduced further than this while they are decoded.
    private static double LeastScale(double extentPx, double sizeMm) =>
        Math.Clamp(Scene.ReadingPxPerMm / Math.Max(1e-3, extentPx / sizeMm), 0.05, 1);
}
