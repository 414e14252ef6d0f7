using System.Globalization;
using Alburnum.Facts;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.Marks;
using Alburnum.Timber;
using Alburnum.Workflows.Measuring;

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
    public static MeasuringRequest From(
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
        var (marks, faults) = MarksReader.Read(field => Text(settings, field), NameOf, section: null);
        problems.AddRange(faults.Select(fault => fault.At("command line", NameOf)));
        if (settings.Required is { } required && !Ranges.DepthMm.Holds(required))
            problems.Add(Problem("--least-depth", Digits(required), Ranges.DepthMm.InWords));
        if (!Ranges.StepMm.Holds(settings.Step))
            problems.Add(Problem("--step", Digits(settings.Step), Ranges.StepMm.InWords));
        if (problems.Count > 0 || section is null)
            throw new InputRefusedException(problems);
        var reading = new ReadingRequest
        {
            Section = section,
            Shape = shape,
            Indicator = indicator,
            Candidates = indicators,
            HeartwoodReagent = reagent,
            IsIncised = settings.Incised,
            RequiredMm = settings.Required,
            StepMm = settings.Step,
        };
        return new(PhotographPaths.Of(settings.Photographs), reading, marks, NameOf);
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

    private static string? Text(MeasureCommand.Settings settings, string field) =>
        field switch
        {
            MarkField.Corners => settings.Corners,
            MarkField.Scale => settings.Scale,
            MarkField.Treated => settings.Treated,
            MarkField.Untreated => settings.Untreated,
            MarkField.LeaveOut => settings.LeaveOut,
            MarkField.Heartwood => settings.Heartwood,
            MarkField.HeartwoodRing => settings.HeartwoodRing,
            MarkField.Pith => settings.Pith,
            MarkField.HeartwoodRadius => settings.HeartwoodRadius,
            _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not a field of marks."),
        };

    // leaveOut is --leave-out.
    private static string NameOf(string field) =>
        "--" + string.Concat(field.Select(c => char.IsUpper(c) ? $"-{char.ToLowerInvariant(c)}" : $"{c}"));

    private static string Digits(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static InputProblem Problem(string option, string found, string expected) =>
        new("command line", 0, "", option, found, expected);
}
