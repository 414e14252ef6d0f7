using System.Security.Cryptography;
using Alburnum.Imaging.Boundary;
using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Judging;
using Alburnum.Imaging.Outline;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Rectifying;
using Alburnum.Imaging.Zones;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging;

/// <summary>Reads the depth of penetration from a photograph of a cross-section.</summary>
public static class SectionReader
{
    /// <summary>Straight sides less sure than this are not measured: the user is asked for corners.</summary>
    private const double SureEnoughOfSides = 0.6;

    /// <summary>The same for a rim: part of it may lie in shadow without another ellipse fitting as well.</summary>
    private const double SureEnoughOfRim = 0.6;

    /// <summary>Scale to read at, where the photograph offers it, pixels per mm.</summary>
    private const double ReadingPxPerMm = 6;

    /// <summary>Most pixels in the flat drawing of the section.</summary>
    private const double MostDrawnPixels = 1.2e6;

    /// <summary>Wood's surroundings drawn around the section, mm.</summary>
    private const double MarginMm = 2;

    /// <summary>Standard uncertainty of a depth from lens, flattening and unevenly sawn sides, as a share of it.</summary>
    private const double ScaleShare = 0.012;

    /// <summary>Focal length of a usual camera, as a share of the photograph's longer side, where the file does not say.</summary>
    private const double FocalPerLongSide = 0.95;

    /// <summary>Reads one photograph.</summary>
    /// <param name="fileName">Name of the file, for messages and records.</param>
    /// <param name="photograph">The file's bytes.</param>
    /// <param name="request">What is known of the section.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <returns>The reading; its profile is null where the photograph does not decide, and the notes say why.</returns>
    /// <exception cref="InputRefusedException">The file is not a readable photograph, or the outline given cannot be one.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static SectionReading Read(
        string fileName,
        ReadOnlyMemory<byte> photograph,
        ReadingRequest request,
        CancellationToken ct
    )
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(request);
        Require.InRange(request.StepMm, 0.25, 1, "mm");
        Require.InRange(request.SectionUncertaintyMm, 0, 100, "mm");
        Require.InRange(request.RequiredMm ?? 1, double.Epsilon, 1000, "mm");
        Require.InRange(request.Candidates.Count, 1, 1000, "indicators");
        var shape = request.ShapeOrFromSection;
        using var file = PhotographFile.Open(fileName, photograph);
        var blank = new SectionReading
        {
            FileName = fileName,
            Sha256 = Convert.ToHexStringLower(SHA256.HashData(photograph.Span)),
            WidthPx = file.WidthPx,
            HeightPx = file.HeightPx,
            Shape = shape,
            Section = request.Section,
            Indicator = request.Indicator,
            Marks = PhotographMarks.Of(request),
            OutlinePx = [],
            OutlineConfidence = 0,
            BoundaryPx = [],
            PixelsPerMm = null,
            Profile = null,
            Quality = new(QualityGrade.Unusable, []),
            Notes = [],
        };
        using var photo = file.Decode(LeastScale(file, request, shape));
        ct.ThrowIfCancellationRequested();
        var outline = Locate(photo, request, shape, fileName);
        if (outline is null || outline.Confidence < (outline.Rim is null ? SureEnoughOfSides : SureEnoughOfRim))
        {
            return blank with
            {
                OutlinePx = outline?.Points ?? [],
                OutlineConfidence = outline?.Confidence ?? 0,
                Notes =
                [
                    "Not determined: the section could not be told from its surroundings. Point out its corners (or rim).",
                ],
            };
        }
        ct.ThrowIfCancellationRequested();
        return ReadWithin(photo, outline, request, shape, blank, ct);
    }

    private static SectionReading ReadWithin(
        Photograph photo,
        FoundOutline outline,
        ReadingRequest request,
        SectionShape shape,
        SectionReading blank,
        CancellationToken ct
    )
    {
        var lens = Lens(photo, outline, request, shape);
        if (lens is not null)
            outline = outline with { Points = [.. lens.Straight.Select(lens.Lens.Drawn)] };
        var (plan, map) = Lay(outline, lens, request.Section, shape);
        if (KnownLength.Of(request, map) is not { } known)
        {
            return blank with
            {
                OutlinePx = outline.Points,
                OutlineConfidence = outline.Confidence,
                Notes = [KnownLength.NotBelieved],
            };
        }
        if (request.ScaleBar is not null)
            (plan, map) = Lay(outline, lens, known.Section, shape);
        var pxPerMm = map.ScaleAt(plan.WidthMm / 2, plan.HeightMm / 2);
        var drawnAt = Math.Min(
            Math.Min(ReadingPxPerMm, Math.Max(1, pxPerMm * photo.StoredPerUpright)),
            Math.Sqrt(MostDrawnPixels / (plan.WidthMm * plan.HeightMm))
        );
        var drawn = RectifiedSection.From(photo, map, plan, drawnAt, MarginMm);
        var quality = PhotographJudge.Of(photo, drawn, plan, map, pxPerMm);
        if (quality.Grade == QualityGrade.Unusable)
        {
            return blank with
            {
                OutlinePx = outline.Points,
                OutlineConfidence = outline.Confidence,
                PixelsPerMm = pxPerMm,
                Quality = quality,
                Notes = ["Not determined: the photograph shows too little of the section."],
            };
        }
        var touches = request.Touches.Select(t => (map.ToMm(t.At), t.Kind)).ToList();
        var samples = WoodSamples.Gather(drawn, plan, touches);
        IReadOnlyList<Indicator> candidates = request.Indicator is { } one ? [one] : request.Candidates;
        var found = new ZoneFinder(samples, candidates).Find(ct);
        var reading = blank with
        {
            OutlinePx = outline.Points,
            OutlineConfidence = outline.Confidence,
            PixelsPerMm = pxPerMm,
            LensBow = lens?.Bow,
            Indicator = found.Indicator,
            Quality = quality,
            Notes = known.Note.Length > 0 ? [known.Note] : [],
        };
        if (found.Indicator is { IsWeakEvidence: true } weak)
            quality = reading.Quality.AtBest(QualityGrade.Fair) with
            {
                Findings = [.. quality.Findings, WeakEvidence(weak)],
            };
        reading = reading with { Quality = quality };
        if (Mistaken(found, samples, request, ct) is { } other)
        {
            return reading with
            {
                Quality = quality.AtBest(QualityGrade.Poor),
                Notes = [IndicatorFit.InWords(request.Indicator!, other)],
            };
        }
        if (found.Zones is null)
        {
            // What was found by itself and shows no front may be a part of the section: let the user point it out.
            return request.OutlinePx is null
                ? reading with
                {
                    OutlineConfidence = Math.Min(outline.Confidence, 0.3),
                    Quality = quality.AtBest(QualityGrade.Poor),
                    Notes = [InWords(found.Finding), "The outline may be wrong: point out the corners (or rim)."],
                }
                : reading with
                {
                    Quality = quality.AtBest(QualityGrade.Poor),
                    Notes = [InWords(found.Finding)],
                };
        }
        var viewShare = 0.0;
        if (outline.Rim is { } rim && known.Section is RoundSection round)
        {
            var front = samples.FrontPoints(found.RoughRows).Select(map.ToPx).ToList();
            var focalPx = FocalPerLongSide * Math.Max(photo.WidthPx, photo.HeightPx);
            (var view, viewShare) = DiscView.Choose(
                rim,
                round.DiameterMm,
                photo.WidthPx,
                photo.HeightPx,
                focalPx,
                front
            );
            map = new(view, null);
            plan = RoundPlan(round, map, outline.Points[0]);
            drawn = RectifiedSection.From(photo, map, plan, drawnAt, MarginMm);
        }
        var table = new EvidenceTable(found.Zones, samples);
        var rowMm = Math.Max(0.12, 1 / drawnAt);
        // Well below the deepest rough front there is nothing to find.
        var deepestMm = (1.25 * samples.DeepestMm(found.RoughRows)) + 8;
        var strips = plan
            .Faces.Select(f =>
                EvidenceStrip.Of(FaceStrip.Over(plan, f, 0.5, rowMm, deepestMm), drawn, plan, table, touches)
            )
            .ToList();
        ct.ThrowIfCancellationRequested();
        var fronts = LeftOut.Mark(FrontReader.Read(plan, strips), touches);
        var bleed = found.Indicator?.BleedMm ?? new Estimate(0.26, 0.08);
        var edge = (lens?.UncertaintyPx ?? outline.UncertaintyPx) / pxPerMm;
        var scale = double.Hypot(known.ScaleShare, ScaleShare);
        var profile = ProfileReader.Read(
            known.Section,
            plan,
            fronts,
            new(plan, strips, fronts),
            bleed,
            edge,
            scale,
            viewShare,
            table.Discriminant.ShareOfMixture,
            request.StepMm
        );
        if (profile is not null && IsDoubtful(profile.Statistics, found.Indicator, request))
        {
            return reading with
            {
                OutlineConfidence = Math.Min(outline.Confidence, 0.3),
                Quality = quality.AtBest(QualityGrade.Poor),
                Notes =
                [
                    "Not determined: an uneven border was seen without a reagent, within an outline that was not pointed out. "
                        + "It may be heartwood, stain or another object: point out the corners (or rim), and name the indicator, or none.",
                ],
            };
        }
        return profile is null
            ? reading with
            {
                Quality = quality.AtBest(QualityGrade.Poor),
                Notes = [.. reading.Notes, "Not determined: nothing on the section is left to read."],
            }
            : ReadingDetails.With(
                reading with
                {
                    BoundaryPx = FrontLines.Of(plan, profile, map),
                },
                profile,
                plan,
                map,
                () => HeartwoodFinder.Look(drawn, plan, fronts, table.Zones.Light, SignsOf(request)),
                request
            );
    }

    // Another indicator than the one named, where the photograph clearly shows that one.
    private static Indicator? Mistaken(
        ZonesFound found,
        WoodSamples samples,
        ReadingRequest request,
        CancellationToken ct
    )
    {
        if (request.Indicator is not { } named || request.Candidates.All(each => each.Key == named.Key))
            return null;
        var zones = found.Zones ?? new ZoneFinder(samples, request.Candidates).Find(ct).Zones;
        return zones is null ? null : IndicatorFit.Better(zones, named, request.Candidates);
    }

    private static HeartwoodSigns SignsOf(ReadingRequest request) =>
        request.HeartwoodReagent is { } reagent ? HeartwoodSigns.Of(reagent) : HeartwoodSigns.Natural;

    // Only four sawn sides are straight in the world; corners that the user holds exact are not moved.
    private static FoundLens? Lens(
        Photograph photo,
        FoundOutline outline,
        ReadingRequest request,
        SectionShape shape
    ) =>
        shape is SectionShape.Rectangle or SectionShape.Square && !request.OutlineIsExact
            ? LensFinder.Find(
                photo,
                outline.Points,
                Math.Sqrt(Math.Abs(Polygon.Area(outline.Points)) / request.Section.AreaMm2)
            )
            : null;

    private static (SectionPlan Plan, SectionMap Map) Lay(
        FoundOutline outline,
        FoundLens? lens,
        Section section,
        SectionShape shape
    )
    {
        var p = lens?.Straight ?? outline.Points;
        if (outline.Rim is { } rim && section is RoundSection round)
        {
            var map = new SectionMap(rim.FromDisc(round.DiameterMm), null);
            return (RoundPlan(round, map, p[0]), map);
        }
        var turned = false;
        if (section is RectangularSection s && shape != SectionShape.CoreStrip)
        {
            var across = p[0].DistanceTo(p[1]) + p[2].DistanceTo(p[3]);
            var down = p[1].DistanceTo(p[2]) + p[3].DistanceTo(p[0]);
            turned =
                Math.Abs(Math.Log(across / down / (s.WidthMm / s.HeightMm)))
                > Math.Abs(Math.Log(across / down / (s.HeightMm / s.WidthMm))) + 1e-9;
        }
        var plan = SectionPlan.For(section, shape, turned, 0);
        var (w, h) = (plan.WidthMm, plan.HeightMm);
        PointPx[] to = [.. p];
        return shape switch
        {
            SectionShape.HalfRound => (
                plan,
                new(Homography.FromThree([new(0, 0), new(w, 0), new(w / 2, h)], to), null)
            ),
            SectionShape.Quartered => (plan, new(Homography.FromThree([new(0, h), new(0, 0), new(w, 0)], to), null)),
            _ => (plan, new(Homography.FromFour([new(0, 0), new(w, 0), new(w, h), new(0, h)], to), lens?.Lens)),
        };
    }

    private static SectionPlan RoundPlan(RoundSection round, SectionMap map, PointPx firstRimPoint)
    {
        var first = map.ToMm(firstRimPoint);
        var r = round.DiameterMm / 2;
        return SectionPlan.Round(round.DiameterMm, Math.Atan2(first.Y - r, first.X - r));
    }

    private static FoundOutline? Locate(Photograph photo, ReadingRequest request, SectionShape shape, string fileName)
    {
        var given = request.OutlinePx;
        if (given is null)
        {
            return (shape, request.Section) switch
            {
                (SectionShape.Rectangle or SectionShape.Square, RectangularSection s) => OutlineFinder.Sides(
                    photo,
                    s.WidthMm,
                    s.HeightMm
                ),
                (SectionShape.Round, _) => OutlineFinder.Rim(photo),
                _ => null,
            };
        }
        var (least, words) = shape switch
        {
            SectionShape.Round => (5, "5 or more rim points"),
            SectionShape.HalfRound or SectionShape.Quartered => (3, "3 points"),
            _ => (4, "4 corners"),
        };
        if (given.Count < least || (shape != SectionShape.Round && given.Count != least))
            throw Refused(fileName, $"{given.Count} points", words);
        if (
            given.Any(p =>
                !(
                    p.X >= -photo.WidthPx
                    && p.X <= 2.0 * photo.WidthPx
                    && p.Y >= -photo.HeightPx
                    && p.Y <= 2.0 * photo.HeightPx
                )
            )
        )
            throw Refused(fileName, "a point far outside the photograph", "points on the photograph, in pixels");
        if (shape == SectionShape.Round)
        {
            var one = new double[given.Count];
            Array.Fill(one, 1);
            var rough =
                Ellipse.Fit([.. given], one) ?? throw Refused(fileName, "points that do not lie round a rim", words);
            var exact = new FoundOutline(OutlineSnap.RimPoints(rough), rough, 1, 1);
            return request.OutlineIsExact ? exact : Kept(OutlineSnap.Rim(photo, rough, 0.04 * rough.Major), exact);
        }
        IReadOnlyList<PointPx> clockwise = Polygon.Area(given) > 0 ? given : [given[0], .. given.Skip(1).Reverse()];
        if (Math.Abs(Polygon.Area(clockwise)) < 400)
            throw Refused(fileName, "corners that enclose next to nothing", words);
        var asGiven = new FoundOutline(clockwise, null, 1, 1.5);
        if (request.OutlineIsExact || clockwise.Count == 3)
            return asGiven;
        var shortest = Enumerable.Range(0, 4).Min(k => clockwise[k].DistanceTo(clockwise[(k + 1) % 4]));
        return Kept(OutlineSnap.Sides(photo, clockwise, 0.025 * shortest), asGiven);
    }

    // Where no edge shows, the user's own points stand.
    private static FoundOutline Kept(FoundOutline? snapped, FoundOutline given) =>
        snapped is { Confidence: > 0.3 } ? snapped with { Confidence = 1 } : given;

    private static double LeastScale(PhotographFile file, ReadingRequest request, SectionShape shape)
    {
        var size = request.Section.SizesMm.Max();
        return request.OutlinePx is { Count: > 1 } points && shape != SectionShape.CoreStrip
            ? LeastScale(
                Math.Max(points.Max(p => p.X) - points.Min(p => p.X), points.Max(p => p.Y) - points.Min(p => p.Y)),
                size
            )
            : LeastScale(file.WidthPx, file.HeightPx, size);
    }

    /// <summary>Scale to decode at where no outline is given: the section is taken to fill about half the picture.</summary>
    internal static double LeastScale(int widthPx, int heightPx, double sizeMm) =>
        LeastScale(0.5 * Math.Max(widthPx, heightPx), sizeMm);

    private static double LeastScale(double extentPx, double sizeMm) =>
        Math.Clamp(ReadingPxPerMm / Math.Max(1e-3, extentPx / sizeMm), 0.05, 1);

    private static string InWords(ZoneFinding finding) =>
        finding switch
        {
            ZoneFinding.AllTreated =>
                "Not determined: no front shows, and the colour is that of treated wood throughout. Touch a place that is untreated, or confirm on a fresh cut that the piece is fully penetrated.",
            ZoneFinding.NoneTreated =>
                "Not determined: no front shows, and the colour is that of untreated wood throughout. Check that the indicator has developed; if it has, the piece is untreated.",
            _ =>
                "Not determined: treated and untreated wood cannot be told apart. Spray again, let it develop, and photograph in even light.",
        };

    // Weak evidence in a place that nobody showed, and not even a border: bare wood looks like this.
    private static bool IsDoubtful(DepthStatistics depth, Indicator? indicator, ReadingRequest request) =>
        indicator is { IsWeakEvidence: true }
        && request.Indicator is null
        && request.OutlinePx is null
        && depth.FifthPercentileMm.Value < 0.15 * depth.MeanMm.Value
        && depth.MaximumMm.Value > 2 * depth.MeanMm.Value;

    private static string WeakEvidence(Indicator indicator) =>
        $"Read without a reagent ({indicator.Name}): stain, wet wood or heartwood may pass for treated wood. Spray an indicator where the verdict matters.";

    private static InputRefusedException Refused(string file, string found, string expected) =>
        new(new InputProblem(file, 0, "", "corners", found, expected));
}
