using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Measuring;

namespace Alburnum.Reports.Documents;

/// <summary>From a reading to the form in which it leaves the program. Lengths are rounded to 0.01 mm, shares to 0.0001.</summary>
public static class ReadingMapping
{
    /// <summary>A reading of a photograph.</summary>
    public static ReadingDocument From(SectionReading reading) =>
        From(
            reading,
            (reading.Outcome as Read)?.Profile,
            [.. ReadingWords.Notes(reading), .. ReadingWords.OnTrust(reading)]
        );

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
            NotDetermined each => (each.Outline, each.Scale),
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Outcome, "Not an outcome."),
        };
        List<double[]> points = [.. (outline?.PointsPx ?? []).Select(Point)];
        var ended = reading.Outcome as NotDetermined;
        var isRim = reading.Shape == SectionShape.Round;
        return new()
        {
            File = reading.FileName,
            Sha256 = reading.Sha256,
            PieceNumber = reading.Piece?.Number,
            PieceLabel = reading.Piece?.Label,
            Shape = reading.Shape,
            SectionMm = reading.Section.SizesMm,
            WidthPx = reading.WidthPx,
            HeightPx = reading.HeightPx,
            PixelsPerMm = scale is null ? null : Math.Round(scale.PixelsPerMm, 3),
            ScaleBasis = scale?.Basis,
            CornersPx = isRim ? null : points,
            RimPx = isRim ? points : null,
            BoundaryPx = [.. (read?.BoundaryPx ?? []).Select(line => line.Select(Point).ToList())],
            Faces = [.. Faces(profile).Select((face, k) => read is null ? face : Detailed(face, k, read))],
            Depth = Depth(profile?.Statistics),
            TreatedShare = Share(profile?.TreatedShare.Value),
            TreatedShareU = Share(profile?.TreatedShare.StandardUncertainty),
            SapwoodTreatedShare = Share(profile?.SapwoodTreatedShare?.Value),
            Quality = reading.Outcome.Quality.Grade,
            Notes = [.. notes.Concat(ReadingWords.Findings(reading.Outcome.Quality)).Distinct(StringComparer.Ordinal)],
            Indicator = reading.Outcome.Indicator?.Key,
            OutlineConfidence = outline is null ? null : Math.Round(outline.Confidence, 3),
            OutlineMayBeWrong = ReadingWords.OutlineMayBeWrong(reading),
            SapwoodTreatedShareU = Share(profile?.SapwoodTreatedShare?.StandardUncertainty),
            Heartwood = (read?.Heartwood ?? ended?.Heartwood) is { } heartwood ? Heartwood(heartwood) : null,
            SapwoodAlone = ended?.Sapwood is { } sapwood ? Sapwood(sapwood) : null,
            LensBow = Share(scale?.LensBow?.Value),
            LensBowU = Share(scale?.LensBow?.StandardUncertainty),
            Required = read?.Reached is { } reached ? Required(reached) : null,
            BetweenIncisions = Depth(read?.Incised?.Between),
            EndedAt = ended?.Stage,
            Fault = ended is null ? null : FaultMapping.Of(ended.Fault),
            Cautions = [.. ReadingWords.Cautions(reading)],
            Patterns = PatternMapping.Of(reading, profile),
            Marks = MarksMapping.From(reading.Marks),
            Budget = read is null ? null : Budget(read.Budget),
        };
    }

    private static SapwoodDocument Sapwood(SapwoodAlone sapwood) =>
        new()
        {
            Share = Math.Round(sapwood.Share.Value, 4),
            ShareU = Math.Round(sapwood.Share.StandardUncertainty, 4),
            Faces =
            [
                .. sapwood.Faces.Select(face => new FaceSapwoodDocument
                {
                    Number = face.Number,
                    StepMm = Math.Round(face.StepMm, 3),
                    LeastMm = face.LeastMm is { } least ? Mm(least) : null,
                    MeanMm = face.MeanMm is { } mean ? Mm(mean) : null,
                    HeartwoodShare = Math.Round(face.HeartwoodShare, 4),
                    DepthMm = [.. face.DepthMm.Select(mm => mm is { } known ? (double?)Mm(known) : null)],
                }),
            ],
        };

    private static HeartwoodDocument Heartwood(HeartwoodReading heartwood)
    {
        var detected = heartwood as DetectedHeartwood;
        double? borderMm = heartwood switch
        {
            ShownHeartwood shown => shown.BorderUncertaintyMm,
            DetectedHeartwood seen => seen.BorderUncertaintyMm,
            _ => null,
        };
        return new()
        {
            DetectedBy = Source(heartwood),
            BorderUMm = borderMm is { } u ? Mm(u) : null,
            PithPx = detected is null ? null : Point(detected.PithPx),
            RadiusMm = detected is null ? null : Mm(detected.RadiusMm),
            BorderPx = detected is { BorderPx.Count: > 0 }
                ? [.. detected.BorderPx.Select(line => line.Select(Point).ToList())]
                : null,
            InWords = ReadingWords.Heartwood(heartwood),
        };
    }

    private static HeartwoodSource Source(HeartwoodReading heartwood) =>
        heartwood switch
        {
            ShownHeartwood => HeartwoodSource.Shown,
            DetectedHeartwood { Sign: HeartwoodSign.Reagent } => HeartwoodSource.Reagent,
            DetectedHeartwood => HeartwoodSource.Colour,
            UnknownHeartwood => HeartwoodSource.Unknown,
            _ => throw new ArgumentOutOfRangeException(nameof(heartwood), heartwood, "Nothing known of heartwood."),
        };

    // A cause that has no part in this section, as the pose of a disc has none in a sawn one, is not listed.
    private static List<BudgetRowDocument> Budget(DepthBudget budget) =>
        [
            .. budget
                .MeanMm.Components.Zip(budget.LeastMm.Components)
                .Where(cause => cause.First.Contribution > 0 || cause.Second.Contribution > 0)
                .Select(cause => new BudgetRowDocument
                {
                    Cause = ReadingWords.Cause(cause.First.Cause),
                    Size = ReadingWords.Size(cause.First.Cause),
                    Type = cause.First.Cause.Type,
                    Standing = cause.First.Cause.Provenance.Standing,
                    Source = cause.First.Cause.Provenance.Citation,
                    MeanUMm = Math.Round(cause.First.Contribution, 3),
                    LeastUMm = Math.Round(cause.Second.Contribution, 3),
                }),
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
                        .Fingers.Select(finger => new FingerDocument
                        {
                            PositionMm = Mm(finger.PositionMm),
                            WidthMm = Mm(finger.WidthMm),
                            DepthMm = Mm(finger.DepthMm),
                        }),
                ]
                : null,
        };

    private static RequiredDocument Required(ReachedDepth reached) =>
        new()
        {
            DepthMm = Mm(reached.RequiredMm),
            ReachedShare = Math.Round(reached.Share.Value, 4),
            ReachedShareU = Math.Round(reached.Share.StandardUncertainty, 4),
            OpenHeartwoodTreatedShare = Share(reached.OpenHeartwoodTreatedShare?.Value),
            OpenHeartwoodTreatedShareU = Share(reached.OpenHeartwoodTreatedShare?.StandardUncertainty),
            Faces =
            [
                .. reached.Faces.Select(face => new RequiredFaceDocument
                {
                    Number = face.Number,
                    ReachedShare = Share(face.Share?.Value),
                    ReachedShareU = Share(face.Share?.StandardUncertainty),
                    OpenHeartwoodShare = Share(face.OpenHeartwoodShare),
                    OpenHeartwoodReachedShare = Share(face.OpenHeartwoodReachedShare?.Value),
                    OpenHeartwoodReachedShareU = Share(face.OpenHeartwoodReachedShare?.StandardUncertainty),
                    OpenHeartwoodShareU = Share(face.OpenHeartwoodShareUncertainty),
                }),
            ],
        };

    private static double? Share(double? share) => share is { } known ? Math.Round(known, 4) : null;

    /// <summary>A piece read with a ruler.</summary>
    public static ReadingDocument From(DepthProfile profile, IReadOnlyList<string> notes) =>
        new()
        {
            Shape = ReadingRequest.ShapeOf(profile.Section),
            SectionMm = profile.Section.SizesMm,
            Faces = Faces(profile),
            Depth = Depth(profile.Statistics),
            Notes = notes,
            Patterns = PatternMapping.Of(profile),
        };

    /// <summary>A photograph that could not be read.</summary>
    /// <param name="refused">The photograph and what is wrong with it.</param>
    /// <param name="request">What was to be read.</param>
    public static ReadingDocument From(RefusedPhotograph refused, ReadingRequest request)
    {
        ArgumentNullException.ThrowIfNull(refused);
        ArgumentNullException.ThrowIfNull(request);
        return new()
        {
            File = refused.File,
            Shape = request.ShapeOrFromSection,
            SectionMm = request.Section.SizesMm,
            Faces = [],
            Quality = QualityGrade.Unusable,
            Notes = [.. refused.Problems.Select(problem => problem.ToString())],
        };
    }

    private static IReadOnlyList<FaceDocument> Faces(DepthProfile? profile) =>
        profile is null
            ? []
            :
            [
                .. profile.Faces.Select(face => new FaceDocument
                {
                    Number = face.Number,
                    StepMm = face.StepMm,
                    PositionsMm = Rounded(face.PositionsMm),
                    DepthMm = Rounded(face.DepthMm),
                    UMm = Rounded(face.StandardUncertaintyMm),
                    Excluded = face.Excluded,
                    AtLeastMm =
                        face.AtLeastMm.Count > 0
                            ? [.. face.AtLeastMm.Select(mm => mm is { } known ? (double?)Mm(known) : null)]
                            : null,
                    SapwoodMm = [.. face.SapwoodDepthMm.Select(depth => depth is { } mm ? (double?)Mm(mm) : null)],
                }),
            ];

    private static DepthDocument? Depth(DepthStatistics? statistics) =>
        statistics is { } depth
            ? new()
            {
                MinMm = Mm(depth.MinimumMm.Value),
                MinUMm = Mm(depth.MinimumMm.StandardUncertainty),
                P5Mm = Mm(depth.FifthPercentileMm.Value),
                P5UMm = Mm(depth.FifthPercentileMm.StandardUncertainty),
                MedianMm = Mm(depth.MedianMm.Value),
                MedianUMm = Mm(depth.MedianMm.StandardUncertainty),
                MeanMm = Mm(depth.MeanMm.Value),
                MeanUMm = Mm(depth.MeanMm.StandardUncertainty),
                MaxMm = Mm(depth.MaximumMm.Value),
                MaxUMm = Mm(depth.MaximumMm.StandardUncertainty),
            }
            : null;

    private static double[] Point(PointPx point) => [Math.Round(point.X, 2), Math.Round(point.Y, 2)];

    private static IReadOnlyList<double> Rounded(IReadOnlyList<double> lengthsMm) => [.. lengthsMm.Select(Mm)];

    private static double Mm(double length) => Math.Round(length, 2);
}
