using System.Globalization;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Measures;

namespace Alburnum.Reports.Words;

/// <summary>What is said of a reading, made from its data.</summary>
public static class ReadingWords
{
    private const string PointOut = "The outline may be wrong: point out the corners (or rim).";

    private const string HeartwoodAdvice =
        "Where the rule asks for the sapwood, show the border by hand, or spray a reagent for heartwood that suits the timber.";

    /// <summary>"good", "fair", "poor" or "unusable".</summary>
    public static string Grade(QualityGrade grade) =>
        grade switch
        {
            QualityGrade.Good => "good",
            QualityGrade.Fair => "fair",
            QualityGrade.Poor => "poor",
            QualityGrade.Unusable => "unusable",
            _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, "Not a grade."),
        };

    /// <summary>What is amiss with a photograph and what to do, one sentence each.</summary>
    public static IReadOnlyList<string> Findings(Quality quality) => [.. quality.Findings.Select(Finding)];

    /// <summary>What is said of the reading itself, one sentence each.</summary>
    public static IReadOnlyList<string> Notes(SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Outcome switch
        {
            Read read => [.. Scale(read.Scale), .. Missed(read.Heartwood)],
            NotDetermined { Fault: NoFront fault } when reading.Marks.OutlinePx is null => [Fault(fault), PointOut],
            NotDetermined { Fault: NothingLeft fault } ended => [.. Scale(ended.Scale), Fault(fault)],
            NotDetermined ended => [Fault(ended.Fault)],
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Outcome, "Not an outcome."),
        };
    }

    /// <summary>How to point the outline out in a case, where that would help; null where it would not.</summary>
    /// <param name="piece">Name of the piece in the case.</param>
    /// <param name="reading">Its reading.</param>
    public static string? HowToPointOut(string piece, SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading is not { Outcome: NotDetermined { OutlineMayBeWrong: true }, Marks.OutlinePx: null })
            return null;
        var points =
            reading.Shape == SectionShape.Round
                ? "corners: [\"x,y\", …] with five or more points on the rim, "
                : "corners: [\"x,y\", \"x,y\", \"x,y\", \"x,y\"], clockwise, ";
        return $"To point the outline out, mark the photograph on the case's page, or write under piece {piece} in case.yaml {points}"
            + $"in pixels of the upright photograph ({reading.WidthPx} × {reading.HeightPx}), and run the case again.";
    }

    /// <summary>How the heartwood was told, or why not and what to do.</summary>
    public static string Heartwood(HeartwoodReading heartwood) =>
        heartwood switch
        {
            ShownHeartwood shown => $"Heartwood as shown, border ± {Digits(shown.BorderUncertaintyMm, "0.0")} mm.",
            DetectedHeartwood detected =>
                $"Heartwood told {(detected.Sign == HeartwoodSign.Reagent ? "by its reagent" : "by its colour on untreated wood")}, border ± {Digits(detected.BorderUncertaintyMm, "0.0")} mm; under treated wood it is the same circle about the pith.",
            UnknownHeartwood unknown => $"Sapwood not determined: {Fault(unknown.Fault)}",
            _ => throw new ArgumentOutOfRangeException(nameof(heartwood), heartwood, "Nothing known of heartwood."),
        };

    /// <summary>"given", "colour", "reagent" or "not determined".</summary>
    public static string HeartwoodSource(HeartwoodReading heartwood) =>
        heartwood switch
        {
            ShownHeartwood => "given",
            DetectedHeartwood { Sign: HeartwoodSign.Colour } => "colour",
            DetectedHeartwood { Sign: HeartwoodSign.Reagent } => "reagent",
            UnknownHeartwood => "not determined",
            _ => throw new ArgumentOutOfRangeException(nameof(heartwood), heartwood, "Nothing known of heartwood."),
        };

    /// <summary>A cause of uncertainty by its name.</summary>
    public static string Cause(UncertaintyCause cause) =>
        cause.Key switch
        {
            "outline" => "place of the outline",
            "lens bow" => "place of the outline, the lens's bow taken off",
            "dye creep" => "creep of the dye past the front",
            "blur" => "where in the blur the front lies",
            "pose" => "pose of a disc",
            "section size" => "size of the section",
            "flattening" => "lens, flattening, uneven sawing",
            "texture" => "texture and noise about the front",
            "colours" => "colours that a reader could take either way",
            _ => throw new ArgumentOutOfRangeException(nameof(cause), cause.Key, "Not a cause."),
        };

    /// <summary>How large a cause is, and of what.</summary>
    public static string Size(UncertaintyCause cause)
    {
        ArgumentNullException.ThrowIfNull(cause);
        var what = cause.OfWhat switch
        {
            "edge scatter" => "scatter of the edge about its line, or 1.5 px (rim: 1 px) where points stand as given",
            "bow scatter" => "what the bow's own uncertainty leaves of a side's bow",
            "indicator" => "as the indicator's row states it",
            "blur" => "of the blur fitted to the photograph",
            "pose" => "of what the choice between two poses leaves on one side",
            "size" => "0.3 mm over its thickness, or √2 · 1.5 px over the length of the scale bar",
            "depth" => "of the depth",
            "misfit" => "misfit of the fitted shape; each position's own, alike over 2 mm of face",
            "lean" => "how far the front moves when the evidence is weighed 20 : 1 either way, beyond 0.4 mm",
            _ => throw new ArgumentOutOfRangeException(nameof(cause), cause.OfWhat, "Not a size."),
        };
        return cause.Share is { } share ? $"{Digits(share, "0.###")} {what}" : what;
    }

    private static IEnumerable<string> Scale(SectionScale? scale) =>
        scale?.ByKnownLength is { } section
            ? [$"By the known length the section is {section.Label}; depths are to that scale."]
            : [];

    private static IEnumerable<string> Missed(HeartwoodReading heartwood) =>
        heartwood is UnknownHeartwood { IsMissed: true } ? [Heartwood(heartwood)] : [];

    private static string Fault(HeartwoodFault fault) =>
        fault switch
        {
            HeartwoodFault.NoBorderShown =>
                "the points shown cannot be a border of the heartwood. Show three or more that do not lie on a line.",
            HeartwoodFault.TooLittleUntreated => $"too little untreated wood is in sight. {HeartwoodAdvice}",
            HeartwoodFault.NoRings => $"no growth rings are seen that tell where the pith lies. {HeartwoodAdvice}",
            HeartwoodFault.OneColour => $"untreated wood has no second colour about the pith. {HeartwoodAdvice}",
            HeartwoodFault.TooShort => $"too little of a border is in sight on untreated wood. {HeartwoodAdvice}",
            HeartwoodFault.NoArc =>
                $"the change of colour is no clear arc about the pith, and may be stain or shadow. {HeartwoodAdvice}",
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
        };

    private static string Fault(ReadingFault fault) =>
        "Not determined: "
        + fault switch
        {
            OutlineNotFound => "the section could not be told from its surroundings. Point out its corners (or rim).",
            KnownLengthDisagrees =>
                "the known length and the nominal size differ by more than a quarter. Check the two points, the length and the size.",
            TooLittleShown => "the photograph shows too little of the section.",
            OtherIndicator(var named, var seen) =>
                $"the colours are not those of {named.Name} ({named.TreatedInWords} on {named.UntreatedInWords}); they look like {seen.Name} ({seen.TreatedInWords} on {seen.UntreatedInWords}). Name the indicator that was sprayed: it may be {seen.Key}.",
            NoFront { IsTreated: true } =>
                "no front shows, and the colour is that of treated wood throughout. Touch a place that is untreated, or confirm on a fresh cut that the piece is fully penetrated.",
            NoFront =>
                "no front shows, and the colour is that of untreated wood throughout. Check that the indicator has developed; if it has, the piece is untreated.",
            DoubtfulBorder =>
                "an uneven border was seen without a reagent, within an outline that was not pointed out. "
                    + "It may be heartwood, stain or another object: point out the corners (or rim), and name the indicator, or none.",
            NothingLeft => "nothing on the section is left to read.",
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
        };

    private static string Finding(QualityFinding finding) =>
        finding switch
        {
            FewPixels few =>
                $"Only {Digits(few.PxPerMm)} pixels per mm: go closer, so that the section fills most of the picture, or use a camera with more pixels.",
            Blurred blurred =>
                $"Out of focus, or the camera moved: edges are blurred over {Digits(blurred.OverMm)} mm. Focus on the cut, hold the camera still, and take it again.",
            OverExposed over =>
                $"Over-exposed: {Digits(100 * over.Share)} % of the section is burnt out. Keep flash and sun off the wet surface, or expose for the section, and take it again.",
            UnderExposed => "Under-exposed: the section is nearly black. Bring it into even light, and take it again.",
            WeakEvidence weak =>
                $"Read without a reagent ({weak.Indicator.Name}): stain, wet wood or heartwood may pass for treated wood. Spray an indicator where the verdict matters.",
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding, "Not a finding."),
        };

    private static string Digits(double value, string format = "0.#") =>
        value.ToString(format, CultureInfo.InvariantCulture);
}
