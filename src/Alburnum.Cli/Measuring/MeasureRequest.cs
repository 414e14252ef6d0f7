using System.Globalization;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Timber;

namespace Alburnum.Cli.Measuring;

/// <summary>Reads the options of the measure command.</summary>
internal static class MeasureRequest
{
    private static readonly Dictionary<string, SectionShape> Shapes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["rectangle"] = SectionShape.Rectangle,
        ["square"] = SectionShape.Square,
        ["round"] = SectionShape.Round,
        ["half-round"] = SectionShape.HalfRound,
        ["quartered"] = SectionShape.Quartered,
        ["core"] = SectionShape.CoreStrip,
    };

    /// <summary>The request that the options make.</summary>
    /// <param name="settings">The options.</param>
    /// <param name="indicators">Every indicator known.</param>
    /// <param name="reagents">Every reagent for heartwood known.</param>
    /// <exception cref="InputRefusedException">With every option that cannot be read.</exception>
    public static ReadingRequest From(
        MeasureCommand.Settings settings,
        IReadOnlyList<Indicator> indicators,
        IReadOnlyList<HeartwoodReagent> reagents
    )
    {
        var problems = new List<InputProblem>();
        SectionShape? shape = null;
        if (settings.Shape is { } name)
        {
            if (Shapes.TryGetValue(name, out var known))
                shape = known;
            else
                problems.Add(Problem("--shape", name, string.Join(", ", Shapes.Keys)));
        }
        var section = ReadSection(settings.Section, shape, problems);
        var indicator = indicators.FirstOrDefault(i =>
            string.Equals(i.Key, settings.Indicator, StringComparison.OrdinalIgnoreCase)
        );
        if (settings.Indicator is { } key && indicator is null)
            problems.Add(Problem("--indicator", key, string.Join(", ", indicators.Select(i => i.Key))));
        var reagent = reagents.FirstOrDefault(r =>
            string.Equals(r.Key, settings.HeartwoodReagent, StringComparison.OrdinalIgnoreCase)
        );
        if (settings.HeartwoodReagent is { } sprayed && reagent is null)
            problems.Add(Problem("--heartwood-reagent", sprayed, string.Join(", ", reagents.Select(r => r.Key))));
        var corners = settings.Corners is { } text ? Points("--corners", text, problems) : null;
        var bar = settings.Scale is { } scale ? ReadScale(scale, problems) : null;
        var heartwood = ReadHeartwood(settings, problems);
        List<Touch> touches =
        [
            .. Touched("--treated", settings.Treated, TouchKind.Treated, problems),
            .. Touched("--untreated", settings.Untreated, TouchKind.Untreated, problems),
            .. Touched("--leave-out", settings.LeaveOut, TouchKind.LeaveOut, problems),
        ];
        if (settings.Required is { } required && !(required > 0 && required <= 1000))
            problems.Add(Problem("--least-depth", Digits(required), "over 0, up to 1000 mm"));
        if (!(settings.Step >= 0.25 && settings.Step <= 1))
            problems.Add(Problem("--step", Digits(settings.Step), "0.25 to 1 mm"));
        if (problems.Count > 0 || section is null)
            throw new InputRefusedException(problems);
        return new ReadingRequest
        {
            Section = section,
            Shape = shape,
            OutlinePx = corners,
            Indicator = indicator,
            Candidates = indicators,
            Touches = touches,
            Heartwood = heartwood,
            HeartwoodReagent = reagent,
            IsIncised = settings.Incised,
            RequiredMm = settings.Required,
            ScaleBar = bar,
            StepMm = settings.Step,
        };
    }

    private static Section? ReadSection(string? text, SectionShape? shape, List<InputProblem> problems)
    {
        var written = text ?? "";
        var section =
            SectionText.TryParse(written, out var known) ? known
            : shape == SectionShape.Square ? Square(written)
            : SectionText.TryParse($"round {written}", out var round) ? round
            : null;
        double? diameterMm =
            section is RectangularSection { WidthMm: var w, HeightMm: var h } && w != h ? null : section?.SizesMm[0];
        Section? fitting = (shape, section) switch
        {
            (null, _) => section,
            (SectionShape.Square, RectangularSection) when diameterMm is not null => section,
            (SectionShape.Rectangle or SectionShape.CoreStrip, RectangularSection) => section,
            (SectionShape.Round, RoundSection or RectangularSection) when diameterMm is { } mm => new RoundSection(mm),
            (SectionShape.HalfRound, not QuarteredSection) when diameterMm is { } mm => new HalfRoundSection(mm),
            (SectionShape.Quartered, not HalfRoundSection) when diameterMm is { } mm => new QuarteredSection(mm),
            _ => null,
        };
        if (fitting is not null)
            return fitting;
        problems.Add(
            Problem(
                "--section",
                written.Length > 0 ? written : "nothing",
                shape switch
                {
                    null => "sizes of 1 to 2000 mm, for instance 100x75 or 120",
                    SectionShape.Square => "one side, for instance 100",
                    SectionShape.CoreStrip => "diameter and length of the core, for instance 5x80",
                    SectionShape.Rectangle => "two sizes, for instance 100x75",
                    _ => "one diameter, for instance 120",
                }
            )
        );
        return null;
    }

    // One number alone is the side of a square, where one is asked for, else a diameter.
    private static Section? Square(string side) =>
        SectionText.TryParse($"{side} x {side}", out var square) ? square : null;

    private static IReadOnlyList<PointPx>? Points(string option, string text, List<InputProblem> problems)
    {
        if (MarkText.TryPoints(text, out var points, out var broken))
            return points;
        problems.Add(Problem(option, $"\"{broken}\"", MarkText.PointsExpected));
        return null;
    }

    private static IEnumerable<Touch> Touched(
        string option,
        string? text,
        TouchKind kind,
        List<InputProblem> problems
    ) => text is null ? [] : (Points(option, text, problems) ?? []).Select(at => new Touch(at, kind));

    private static HeartwoodBorder? ReadHeartwood(MeasureCommand.Settings settings, List<InputProblem> problems)
    {
        if (settings.Pith is not null != settings.HeartwoodRadius is not null)
            problems.Add(Problem("--pith", "one of the two", "--pith and --heartwood-radius together"));
        string?[] ways = [settings.Heartwood, settings.HeartwoodRing, settings.Pith];
        if (ways.Count(way => way is not null) > 1)
            problems.Add(Problem("--heartwood", "several borders", "one way of showing the heartwood"));
        if (settings.Heartwood is { } outline && AtLeastThree("--heartwood", outline, problems) is { } around)
            return new OutlinedHeartwood(around);
        if (settings.HeartwoodRing is { } ring && AtLeastThree("--heartwood-ring", ring, problems) is { } along)
            return new RingOfHeartwood(along);
        if (settings.Pith is not { } pith || settings.HeartwoodRadius is not { } radius)
            return null;
        if (!(radius > 0 && radius <= 2000))
            problems.Add(Problem("--heartwood-radius", Digits(radius), "over 0, up to 2000 mm"));
        switch (Points("--pith", pith, problems))
        {
            case [var at]:
                return new HeartwoodAboutPith(at, radius);
            case { } others:
                problems.Add(Problem("--pith", $"{others.Count} points", "one point, x,y"));
                return null;
            default:
                return null;
        }
    }

    private static IReadOnlyList<PointPx>? AtLeastThree(string option, string text, List<InputProblem> problems)
    {
        if (Points(option, text, problems) is not { } points)
            return null;
        if (points.Count >= 3)
            return points;
        problems.Add(Problem(option, $"{points.Count} points", "three points or more"));
        return null;
    }

    private static string Digits(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static ScaleBar? ReadScale(string text, List<InputProblem> problems)
    {
        if (MarkText.Scale(text) is { } bar)
            return bar;
        problems.Add(Problem("--scale", $"\"{text}\"", MarkText.ScaleExpected));
        return null;
    }

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static InputProblem Problem(string option, string found, string expected) =>
        new("command line", 0, "", option, found, expected);
}
