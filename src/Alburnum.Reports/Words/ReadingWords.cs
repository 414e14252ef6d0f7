using System.Globalization;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Measures;
using Alburnum.Penetration;
using Alburnum.Timber;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Words;

/// <summary>What is said of a reading, made from its data.</summary>
public static class ReadingWords
{
    /// <summary>"good", "fair", "poor" or "unusable".</summary>
    public static string Grade(QualityGrade grade) =>
        grade switch
        {
            QualityGrade.Good => Said("reading.grade.good"),
            QualityGrade.Fair => Said("reading.grade.fair"),
            QualityGrade.Poor => Said("reading.grade.poor"),
            QualityGrade.Unusable => Said("reading.grade.unusable"),
            _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, "Not a grade."),
        };

    /// <summary>What stands in place of a photograph's quality where the piece was read with a ruler.</summary>
    public static string WithRuler => Said("reading.with-ruler");

    /// <summary>How good a reading's photograph is; of a reading without one, that it was made with a ruler.</summary>
    public static string Quality(QualityGrade? grade) => grade is { } seen ? Grade(seen) : WithRuler;

    /// <summary>What is said of every piece read with a ruler.</summary>
    public static string RulerNote => Said("reading.ruler-note");

    /// <summary>What is amiss with a photograph and what to do, one sentence each.</summary>
    public static IReadOnlyList<string> Findings(Quality quality) => [.. quality.Findings.Select(Finding)];

    /// <summary>What is said of the reading itself, one sentence each.</summary>
    public static IReadOnlyList<string> Notes(SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Outcome switch
        {
            Read read => [.. Scale(read.Scale), .. Missed(read.Heartwood), .. Through(read.Profile)],
            NotDetermined { Fault: NothingLeft fault } ended => [.. Scale(ended.Scale), Fault(fault)],
            NotDetermined { Fault: NoFront fault } ended =>
            [
                Fault(fault),
                .. UnderReagent(fault, reading.HeartwoodReagent),
                .. OutlineMayBeWrong(reading) ? [Said("reading.outline-may-be-wrong")] : (string[])[],
                .. Sapwood(ended.Sapwood),
                .. ended.Heartwood is { } heartwood ? Missed(heartwood) : [],
            ],
            NotDetermined { Fault: OutlineNotFound } when reading.Piece is not null =>
            [
                Said("reading.fault.outline-of-piece"),
            ],
            NotDetermined ended => [Fault(ended.Fault)],
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Outcome, "Not an outcome."),
        };
    }

    /// <summary>That the depths are to the scale of a nominal size which nobody measured; empty where they are not.</summary>
    public static IReadOnlyList<string> OnTrust(SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Outcome is Read { Scale: { Basis: ScaleBasis.NominalSize, Section: var section } }
            ? [Said("reading.scale.nominal", ("section", section.Label))]
            : [];
    }

    /// <summary>What to mind with the reagents that were sprayed: what they do not show, and what they do to the person who sprays them.</summary>
    public static IEnumerable<string> Cautions(SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Outcome.Indicator is { } indicator)
        {
            if (indicator.Detection is { } limit)
                yield return Said(
                    "reading.detection",
                    ("indicator", indicator.Name),
                    ("element", limit.Element),
                    ("above", Figures.Digits(limit.AboveMgPerKg)),
                    ("atMost", Figures.Digits(limit.AtMostMgPerKg)),
                    ("scope", limit.Scope),
                    Source(limit.Provenance)
                );
            foreach (var caution in indicator.Cautions)
                yield return Said("reading.caution", ("reagent", indicator.Name), ("caution", caution));
        }
        if (reading.HeartwoodReagent is { } reagent)
        {
            yield return Said(
                "reading.heartwood-reagent",
                ("reagent", reagent.Name),
                ("timbers", reagent.Timbers),
                ("heartwood", reagent.HeartwoodInWords),
                ("sapwood", reagent.SapwoodInWords),
                Source(reagent.Provenance)
            );
            foreach (var caution in reagent.Cautions)
                yield return Said("reading.caution", ("reagent", reagent.Name), ("caution", caution));
        }
    }

    private static (string, string) Source(Provenance provenance) =>
        (
            "source",
            Said("reading.source", ("citation", provenance.Citation), ("standing", Current.Say(provenance.Standing)))
        );

    /// <summary>Whether pointing the outline out may help: nothing was pointed out, and no depth could be read.</summary>
    internal static bool OutlineMayBeWrong(SectionReading reading) =>
        reading is { Outcome: NotDetermined { OutlineMayBeWrong: true }, Marks.OutlinePx: null };

    /// <summary>How to point the outline out in a case, where that would help; null where it would not.</summary>
    /// <param name="piece">Name of the piece in the case.</param>
    /// <param name="reading">Its reading.</param>
    public static string? HowToPointOut(string piece, SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return OutlineMayBeWrong(reading)
            ? Said(
                reading.Shape == SectionShape.Round ? "reading.point-out.rim" : "reading.point-out.corners",
                ("piece", piece),
                ("width", Digits(reading.WidthPx, "0")),
                ("height", Digits(reading.HeightPx, "0"))
            )
            : null;
    }

    /// <summary>How the heartwood was found, or why not and what to do.</summary>
    public static string Heartwood(HeartwoodReading heartwood) =>
        heartwood switch
        {
            ShownHeartwood shown => Said("reading.heartwood.shown", ("mm", Digits(shown.BorderUncertaintyMm, "0.0"))),
            DetectedHeartwood detected => Said(
                detected.Sign == HeartwoodSign.Reagent ? "reading.heartwood.by-reagent" : "reading.heartwood.by-colour",
                ("mm", Digits(detected.BorderUncertaintyMm, "0.0"))
            ),
            UnknownHeartwood unknown => Said(
                unknown.Fault switch
                {
                    HeartwoodFault.NoBorderShown => "reading.heartwood.fault.no-border-shown",
                    HeartwoodFault.TooLittleUntreated => "reading.heartwood.fault.too-little-untreated",
                    HeartwoodFault.NoRings => "reading.heartwood.fault.no-rings",
                    HeartwoodFault.OneColour => "reading.heartwood.fault.one-colour",
                    HeartwoodFault.TooShort => "reading.heartwood.fault.too-short",
                    HeartwoodFault.NoArc => "reading.heartwood.fault.no-arc",
                    _ => throw new ArgumentOutOfRangeException(nameof(heartwood), unknown.Fault, "Not a fault."),
                }
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(heartwood), heartwood, "Nothing known of heartwood."),
        };

    /// <summary>A cause of uncertainty by its name.</summary>
    public static string Cause(UncertaintyCause cause) => Said($"reading.cause.{cause.Key}");

    /// <summary>How large a cause is, and of what.</summary>
    public static string Size(UncertaintyCause cause)
    {
        ArgumentNullException.ThrowIfNull(cause);
        var places = cause.Figures.Select(figure => (figure.Name, Digits(figure.Value, "0.###"))).ToList();
        places.AddRange(cause.Parts.Select(part => (part.Name, Current.Part(part.Part))));
        if (cause.Share is { } share)
            places.Add(("share", Digits(share, "0.###")));
        return Said($"reading.size.{cause.OfWhat}", [.. places]);
    }

    /// <summary>What the figures of a table of depths mean.</summary>
    public static string Uncertainty => Said("reading.uncertainty", ("plusMinus", Figures.PlusMinus));

    /// <summary>How many photographs.</summary>
    public static string Photographs(int count) => Wording.Current.Count("count.photograph", count);

    /// <summary>So many pieces.</summary>
    public static string Pieces(int count) => Wording.Current.Count("count.piece", count);

    /// <summary>How much of the perimeter reaches a depth.</summary>
    /// <param name="share">Share of the perimeter, 0 to 1.</param>
    /// <param name="u">Its standard uncertainty.</param>
    /// <param name="mm">The depth, mm.</param>
    public static string Reached(double share, double u, double mm) =>
        Said("reading.reached", ("percent", Percent(share, u)), ("mm", Digits(mm, "0.######")));

    /// <summary>How much of the heartwood that lies open is treated down to a depth.</summary>
    /// <param name="share">Share of that heartwood, 0 to 1.</param>
    /// <param name="u">Its standard uncertainty; null where not known.</param>
    /// <param name="mm">The depth, mm.</param>
    public static string OpenHeartwoodTreated(double share, double? u, double mm) =>
        Said("reading.open-heartwood-treated", ("percent", Percent(share, u)), ("mm", Digits(mm, "0.######")));

    /// <summary>How much of the sapwood is treated.</summary>
    /// <param name="share">Share of the sapwood, 0 to 1.</param>
    /// <param name="u">Its standard uncertainty; null where not known.</param>
    /// <param name="heartwood">How the heartwood was found, in words.</param>
    public static string SapwoodTreated(double share, double? u, string? heartwood) =>
        Said("reading.sapwood-treated", ("percent", Percent(share, u)), ("heartwood", heartwood ?? ""));

    /// <summary>How deep the border lies between incisions.</summary>
    /// <param name="leastMm">Its least depth, mm.</param>
    /// <param name="meanMm">Its mean depth, mm.</param>
    /// <param name="fingers">Fingers that reach deeper.</param>
    public static string BetweenIncisions(Estimate leastMm, Estimate meanMm, int fingers) =>
        Said(
            "reading.between-incisions",
            ("least", WithU(leastMm)),
            ("mean", WithU(meanMm)),
            ("fingers", Figures.Whole(fingers))
        );

    /// <summary>A depth with its standard uncertainty, both in mm.</summary>
    public static string WithU(Estimate mm) => Figures.Measured(mm.Value, mm.StandardUncertainty, "");

    /// <summary>Heading of an uncertainty budget.</summary>
    /// <param name="name">The photograph's name.</param>
    public static string Budget(string name) => Said("reading.budget", ("name", name));

    /// <summary>All causes of uncertainty together.</summary>
    public static string Together => Said("reading.together");

    /// <summary>How all causes of uncertainty are put together.</summary>
    public static string SumOfSquares => Said("reading.sum-of-squares");

    /// <summary>A reading in a few words.</summary>
    public static string InOneLine(SectionReading? reading)
    {
        if (reading is null)
            return Said("reading.not-read");
        var line = reading.Outcome is Read { Profile.Statistics: var depth }
            ? Said(
                "reading.in-one-line",
                ("least", Digits(depth.MinimumMm.Value, "f1")),
                ("mean", Digits(depth.MeanMm.Value, "f1"))
            )
            : Said("figures.not-determined");
        return reading.Outcome.Quality.Grade is QualityGrade.Good
            ? line
            : Said("reading.with-grade", ("reading", line), ("grade", Grade(reading.Outcome.Quality.Grade)));
    }

    private static IEnumerable<string> Scale(SectionScale? scale) =>
        scale?.Basis switch
        {
            ScaleBasis.KnownLength => [Said("reading.scale.known-length", ("section", scale.Section.Label))],
            ScaleBasis.Card => [Said("reading.scale.card", ("section", scale.Section.Label))],
            _ => [],
        };

    // Of faces that show a front along less than half of their length: those beside a corner alone go without saying.
    private static IEnumerable<string> Through(DepthProfile profile)
    {
        foreach (var face in profile.Faces)
        {
            double[] depths = [.. face.AtLeastMm.OfType<double>()];
            if (depths.Length > 0 && face.Excluded.Count(isLeftOut => !isLeftOut) < 0.5 * face.Excluded.Count)
                yield return Said(
                    "reading.through",
                    ("face", Figures.Whole(face.Number)),
                    ("length", Digits(depths.Length * face.StepMm, "f0")),
                    ("mm", Digits(depths.Min(), "f0"))
                );
        }
    }

    private static IEnumerable<string> Sapwood(SapwoodAlone? sapwood) =>
        sapwood is null
            ? []
            :
            [
                Said(
                    "reading.sapwood-alone",
                    ("share", Percent(sapwood.Share.Value, sapwood.Share.StandardUncertainty))
                ),
                .. sapwood.Faces.Select(Sapwood),
            ];

    private static string Sapwood(FaceSapwood face)
    {
        List<string> says =
        [
            face is { LeastMm: { } least, MeanMm: { } mean }
                ? Said("reading.sapwood-of-face.depth", ("least", Digits(least, "f1")), ("mean", Digits(mean, "f1")))
                : Said("reading.sapwood-of-face.through"),
        ];
        if (face.HeartwoodShare > 0)
            says.Add(Said("reading.sapwood-of-face.heartwood", ("share", Percent(face.HeartwoodShare, u: null))));
        if (face is { LeastMm: not null, ThroughShare: > 0 })
            says.Add(Said("reading.sapwood-of-face.none-behind", ("share", Percent(face.ThroughShare, u: null))));
        return Said("reading.sapwood-of-face", ("face", Figures.Whole(face.Number)), ("says", string.Join("; ", says)));
    }

    private static IEnumerable<string> Missed(HeartwoodReading heartwood) =>
        heartwood is UnknownHeartwood { IsMissed: true } ? [Heartwood(heartwood)] : [];

    private static string Fault(ReadingFault fault) =>
        fault switch
        {
            OutlineNotFound => Said("reading.fault.outline"),
            KnownLengthDisagrees(var part) => Said("reading.fault.known-length", ("part", Current.Part(part))),
            TooLittleShown => Said("reading.fault.too-little"),
            NoColour => Said("reading.fault.no-colour"),
            OtherIndicator(var named, var seen) => Other(named, seen),
            NoFront { IsTreated: true } => Said("reading.fault.all-treated"),
            NoFront { IsTreated: null } => Said("reading.fault.either-treated"),
            NoFront { Named: var named } => NoneTreated(named),
            DoubtfulBorder => Said("reading.fault.doubtful-border"),
            NothingLeft => Said("reading.fault.nothing-left"),
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
        };

    private static IEnumerable<string> UnderReagent(NoFront fault, HeartwoodReagent? reagent) =>
        reagent is null || fault.IsTreated == true
            ? []
            : [Said("reading.none-treated.under-reagent", ("reagent", reagent.Name))];

    private static string NoneTreated(Indicator? named) =>
        named switch
        {
            null => Said("reading.fault.none-treated"),
            { IsWeakEvidence: true } => Said("reading.fault.none-treated.no-reagent"),
            _ => Said(
                "reading.fault.none-treated.named",
                ("indicator", named.Name),
                ("treated", named.TreatedInWords),
                ("untreated", named.UntreatedInWords)
            ),
        };

    private static string Other(Indicator named, Indicator seen) =>
        Said(
            "reading.fault.other-indicator",
            ("named", named.Name),
            ("namedTreated", named.TreatedInWords),
            ("namedUntreated", named.UntreatedInWords),
            ("seen", seen.Name),
            ("seenTreated", seen.TreatedInWords),
            ("seenUntreated", seen.UntreatedInWords),
            ("key", seen.Key)
        );

    private static string Finding(QualityFinding finding) =>
        finding switch
        {
            FewPixels few => Said("reading.finding.few-pixels", ("pxPerMm", Digits(few.PxPerMm))),
            Blurred blurred => Said("reading.finding.blurred", ("mm", Digits(blurred.OverMm))),
            OverExposed over => Said("reading.finding.over-exposed", ("percent", Digits(100 * over.Share))),
            UnderExposed(var light) => Said("reading.finding.under-exposed", ("light", Figures.Number(light, 0))),
            SeeThrough see => Said("reading.finding.see-through", ("percent", Digits(100 * see.Share))),
            PointsOffEdge { Corners.Count: 0 } => Said("reading.finding.off-edge.rim"),
            PointsOffEdge(var corners) => Said(
                "reading.finding.off-edge.corners",
                ("corners", string.Join(", ", corners.Select(Figures.Whole)))
            ),
            CardDisagrees(var shown, var kept) => Said(
                "reading.finding.card-disagrees",
                ("shown", shown.Label),
                ("kept", kept.Label)
            ),
            WeakEvidence weak => Said("reading.finding.weak-evidence", ("indicator", weak.Indicator.Name)),
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding, "Not a finding."),
        };

    private static string Percent(double share, double? u) =>
        u is { } known && Digits(100 * known, "f1") is var shown and not "0.0"
            ? $"{Digits(100 * share, "f1")} ± {shown} %"
            : $"{Digits(100 * share, "f1")} %";

    private static string Digits(double value, string format = "0.#") =>
        value.ToString(format, CultureInfo.InvariantCulture);
}
