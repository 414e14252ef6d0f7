using Alburnum.Imaging;
using Alburnum.Penetration;

namespace Alburnum.Reports.Documents;

/// <summary>From a reading to the form in which it leaves the program. Lengths are rounded to 0.01 mm, shares to 0.0001.</summary>
public static class ReadingMapping
{
    /// <summary>A reading of a photograph.</summary>
    public static ReadingDocument From(SectionReading reading) => From(reading, reading.Profile);

    /// <summary>A reading of a photograph, with a profile that was filled in later (for instance with a stated sapwood depth).</summary>
    public static ReadingDocument From(SectionReading reading, DepthProfile? profile)
    {
        var outline = reading.OutlinePx.Select(Point).ToList();
        var isRim = reading.Shape == SectionShape.Round;
        return new(
            reading.FileName,
            reading.Sha256,
            Name(reading.Shape),
            reading.Section.SizesMm,
            reading.WidthPx,
            reading.HeightPx,
            reading.PixelsPerMm is { } scale ? Math.Round(scale, 3) : null,
            isRim ? null : outline,
            isRim ? outline : null,
            [.. reading.BoundaryPx.Select(line => line.Select(Point).ToList())],
            [.. Faces(profile).Select((face, k) => Detailed(face, k, reading))],
            Depth(profile?.Statistics),
            profile is null ? null : Math.Round(profile.TreatedShare.Value, 4),
            profile is null ? null : Math.Round(profile.TreatedShare.StandardUncertainty, 4),
            profile?.SapwoodTreatedShare is { } share ? Math.Round(share.Value, 4) : null,
            reading.Quality.InWords,
            [.. reading.Notes.Concat(reading.Quality.Findings).Distinct(StringComparer.Ordinal)]
        )
        {
            Indicator = reading.Indicator?.Key,
            OutlineConfidence = Math.Round(reading.OutlineConfidence, 3),
            SapwoodTreatedShareU = Share(profile?.SapwoodTreatedShare?.StandardUncertainty),
            Heartwood = reading.Heartwood is { } heartwood ? Heartwood(heartwood) : null,
            LensBow = Share(reading.LensBow?.Value),
            LensBowU = Share(reading.LensBow?.StandardUncertainty),
            Required = reading.Reached is { } reached ? Required(reached) : null,
            BetweenIncisions = Depth(reading.BetweenIncisions),
            Marks = MarksMapping.From(reading.Marks),
        };
    }

    private static HeartwoodDocument Heartwood(HeartwoodReading heartwood) =>
        new(
            heartwood.EvidenceInWords,
            heartwood.BorderUncertaintyMm is { } u ? Mm(u) : null,
            heartwood.PithPx is { } pith ? Point(pith) : null,
            heartwood.RadiusMm is { } radius ? Mm(radius) : null,
            heartwood.BorderPx.Count > 0 ? [.. heartwood.BorderPx.Select(line => line.Select(Point).ToList())] : null,
            heartwood.InWords
        );

    private static FaceDocument Detailed(FaceDocument face, int k, SectionReading reading) =>
        face with
        {
            NearestUntreatedMm =
                k < reading.NearestUntreatedMm.Count
                    ? [.. reading.NearestUntreatedMm[k].Select(mm => mm is { } known ? (double?)Mm(known) : null)]
                    : null,
            EnvelopeMm = reading.Incised is { } own ? Rounded(own[k].EnvelopeMm) : null,
            Fingers = reading.Incised is { } incised
                ?
                [
                    .. incised[k]
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
