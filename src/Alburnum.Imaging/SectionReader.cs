using System.Security.Cryptography;
using Alburnum.Facts;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Stages;

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
        ArgumentNullException.ThrowIfNull(request);
        Require.Within(request.StepMm, Ranges.StepMm);
        if (request.RequiredMm is { } requiredMm)
            Require.Within(requiredMm, Ranges.DepthMm);
        Require.InRange(request.Candidates.Count, 1, MostCandidates, "indicators");
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
            HeartwoodReagent = request.HeartwoodReagent,
            Outcome = Outcome(scene, ct),
        };
    }

    private static ReadingOutcome Outcome(Scene scene, CancellationToken ct) =>
        OutlineStage
            .Find(scene, ct)
            .Then(located => FlatteningStage.Flatten(scene, located))
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

    /// <summary>Scale to decode at where no outline is given: the section is taken to fill about half the picture.</summary>
    internal static double LeastScale(int widthPx, int heightPx, double sizeMm) =>
        LeastScale(FilledShare * Math.Max(widthPx, heightPx), sizeMm);

    private static double LeastScale(double extentPx, double sizeMm) =>
        Math.Clamp(Scene.ReadingPxPerMm / Math.Max(LeastPxPerMm, extentPx / sizeMm), LeastDecodedScale, 1);
}
