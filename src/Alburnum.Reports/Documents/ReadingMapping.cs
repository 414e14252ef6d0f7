using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Documents;

/// <summary>From a reading to the form in which it leaves the program. Lengths are rounded to 0.01 mm, shares to 0.0001.</summary>
public static class ReadingMapping
{
    /// <summary>A reading of a photograph.</summary>
    public static ReadingDocument From(SectionReading reading) =>
        From(reading, (reading.Outcome as Read)?.Profile, ReadingWords.Notes(reading));

    /// <summary>A reading of a photograph in a case.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="profile">Its profile, in which a stated sapwood depth may be filled in; null where none was read.</param>
    /// <param name="notes">What is said of the reading.</param>
    public static ReadingDocument From(SectionReading reading, DepthProfile? profile, IReadOnlyList<string> notes)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var read = reading.Outcome as Read;
        var (outline, scale) = reading.Outcome switch
        {
            Read known => (known.Outline, known.Scale),
            NotDetermined ended => (ended.Outline, ended.Scale),
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Outcome, "Not an outcome."),
        };
        List<double[]> points = [.. (outline?.PointsPx ?? []).Select(Point)];
        var isRim = reading.Shape == SectionShape.Round;
        return new(
            reading.FileName,
            reading.Sha256,
            Name(reading.Shape),
            reading.Section.SizesMm,
            reading.WidthPx,
            reading.HeightPx,
            scale is null ? null : Math.Round(scale.PixelsPerMm, 3),
            isRim ? null : points,
            isRim ? points : null,
            [.. (read?.BoundaryPx ?? []).Select(line => line.Select(Point).ToList())],
            [.. Faces(profile).Select((face, k) => read is null ? face : Detailed(face, k, read))],
            Depth(profile?.Statistics),
            profile is null ? null : Math.Round(profile.TreatedShare.Value, 4),
            profile is null ? null : Math.Round(profile.TreatedShare.StandardUncertainty, 4),
            profile?.SapwoodTreatedShare is { } share ? Math.Round(share.Value, 4) : null,
            ReadingWords.Grade(reading.Outcome.Quality.Grade),
            [.. notes.Concat(ReadingWords.Findings(reading.Outcome.Quality)).Distinct(StringComparer.Ordinal)]
        )
        {
            Indicator = reading.Outcome.Indicator?.Key,
            OutlineConfidence = Math.Round(outline?.Confidence ?? 0, 3),
            SapwoodTreatedShareU = Share(profile?.SapwoodTreatedShare?.StandardUncertainty),
            Heartwood = read is null ? null : Heartwood(read.Heartwood),
            LensBow = Share(scale?.LensBow?.Value),
            LensBowU = Share(scale?.LensBow?.StandardUncertainty),
            Required = read?.Reached is { } reached ? Required(reached) : null,
            BetweenIncisions = Depth(read?.Incised?.Between),
            Marks = MarksMapping.From(reading.Marks),
            Budget = read is null ? null : Budget(read.Budget),
        };
    }

    private static HeartwoodDocument Heartwood(HeartwoodReading heartwood)
    {
        var detected = heartwood as DetectedHeartwood;
        double? borderMm = heartwood switch
        {
            ShownHeartwood shown => shown.BorderUncertaintyMm,
            DetectedHeartwood seen => seen.BorderUncertaintyMm,
            _ => null,
        };
        return new(
            ReadingWords.HeartwoodSource(heartwood),
            borderMm is { } u ? Mm(u) : null,
            detected is null ? null : Point(detected.PithPx),
            detected is null ? null : Mm(detected.RadiusMm),
            detected is { BorderPx.Count: > 0 }
                ? [.. detected.BorderPx.Select(line => line.Select(Point).ToList())]
                : null,
            ReadingWords.Heartwood(heartwood)
        );
    }

    private static List<BudgetRowDocument> Budget(DepthBudget budget) =>
        [
            .. budget.MeanMm.Components.Zip(
                budget.LeastMm.Components,
                (mean, least) =>
                    new BudgetRowDocument
                    {
                        Cause = ReadingWords.Cause(mean.Cause),
                        Size = ReadingWords.Size(mean.Cause),
                        Type = mean.Cause.Type.ToString(),
                        Standing = mean.Cause.Provenance.Standing.InWords(),
                        Source = mean.Cause.Provenance.Citation,
                        MeanUMm = Math.Round(mean.Contribution, 3),
                        LeastUMm = Math.Round(least.Contribution, 3),
                    }
            ),
        ];

    private static FaceDocument Detailed(FaceDocument face, int k, Read read) =>
        face with
        {
            NearestUntreatedMm =
                k < read.NearestUntreatedMm.Count
                    ? [.. read.NearestUntreatedMm[k].Select(mm => mm is { } known ? (double?)Mm(known) : null)]
                    : null,
            EnvelopeMm = read.Incised is { } own ? Rounded(own.Faces[k].EnvelopeMm) : null,
            Fingers = read.Incised is { } incised
                ?
                [
                    .. incised
                        .Faces[k]
                        .Fingers.Select(finger => new FingerDocument(
                            Mm(finger.PositionMm),
                            Mm(finger.WidthMm),
                            Mm(finger.DepthMm)
                        )),
                ]
                : null,
        };

    private static RequiredDocument Required(ReachedDepth reached) =>
        new(
            Mm(reached.RequiredMm),
            Math.Round(reached.Share.Value, 4),
            Math.Round(reached.Share.StandardUncertainty, 4),
            Share(reached.OpenHeartwoodTreatedShare?.Value),
            Share(reached.OpenHeartwoodTreatedShare?.StandardUncertainty),
            [
                .. reached.Faces.Select(face => new RequiredFaceDocument(
                    face.Number,
                    Share(face.Share?.Value),
                    Share(face.Share?.StandardUncertainty),
                    Share(face.OpenHeartwoodShare),
                    Share(face.OpenHeartwoodReachedShare?.Value),
                    Share(face.OpenHeartwoodReachedShare?.StandardUncertainty)
                )
                {
                    OpenHeartwoodShareU = Share(face.OpenHeartwoodShareUncertainty),
                }),
            ]
        );

    private static double? Share(double? share) => share is { } known ? Math.Round(known, 4) : null;

    /// <summary>A piece read with a ruler.</summary>
    public static ReadingDocument From(DepthProfile profile, IReadOnlyList<string> notes) =>
        new(
            null,
            null,
            Name(ReadingRequest.ShapeOf(profile.Section)),
            profile.Section.SizesMm,
            null,
            null,
            null,
            null,
            null,
            null,
            Faces(profile),
            Depth(profile.Statistics),
            null,
            null,
            null,
            "read with a ruler",
            notes
        );

    /// <summary>The name of the shape that a request asks for.</summary>
    public static string ShapeOf(ReadingRequest request) => Name(request.ShapeOrFromSection);

    private static string Name(SectionShape shape) =>
        shape switch
        {
            SectionShape.Rectangle => "rectangle",
            SectionShape.Square => "square",
            SectionShape.Round => "round",
            SectionShape.HalfRound => "half-round",
            SectionShape.Quartered => "quartered",
            SectionShape.CoreStrip => "core",
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Not a shape."),
        };

    private static IReadOnlyList<FaceDocument> Faces(DepthProfile? profile) =>
        profile is null
            ? []
            :
            [
                .. profile.Faces.Select(face => new FaceDocument(
                    face.Number,
                    face.StepMm,
                    Rounded(face.PositionsMm),
                    Rounded(face.DepthMm),
                    Rounded(face.StandardUncertaintyMm),
                    face.Excluded,
                    [.. face.SapwoodDepthMm.Select(depth => depth is { } mm ? (double?)Mm(mm) : null)]
                )),
            ];

    private static DepthDocument? Depth(DepthStatistics? statistics) =>
        statistics is { } depth
            ? new(
                Mm(depth.MinimumMm.Value),
                Mm(depth.MinimumMm.StandardUncertainty),
                Mm(depth.FifthPercentileMm.Value),
                Mm(depth.FifthPercentileMm.StandardUncertainty),
                Mm(depth.MedianMm.Value),
                Mm(depth.MedianMm.StandardUncertainty),
                Mm(depth.MeanMm.Value),
                Mm(depth.MeanMm.StandardUncertainty),
                Mm(depth.MaximumMm.Value),
                Mm(depth.MaximumMm.StandardUncertainty)
            )
            : null;

    private static double[] Point(PointPx point) => [Math.Round(point.X, 2), Math.Round(point.Y, 2)];

    private static IReadOnlyList<double> Rounded(IReadOnlyList<double> lengthsMm) => [.. lengthsMm.Select(Mm)];

    private static double Mm(double length) => Math.Round(length, 2);
}
