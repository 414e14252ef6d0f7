using Alburnum.Facts;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Records.Marks;
using Alburnum.Timber;
using Alburnum.Workflows.Measuring;

namespace Alburnum.Cli.Measuring;

/// <summary>Reads the options of the measure command.</summary>
internal static class MeasureRequest
{
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
        var section = Section(settings, problems);
        var fields = new OptionFields(settings, problems);
        var indicator = fields.OneOf(ReagentFields.Indicator, indicators, each => each.Key);
        var reagent = fields.OneOf(ReagentFields.Heartwood, reagents, each => each.Key);
        var (marks, faults) = MarksReader.Read(field => Text(settings, field), OptionOf, section);
        problems.AddRange(faults.Select(fault => fault.At("command line", OptionOf)));
        if (settings.Depth is { } depth && !Ranges.DepthMm.Holds(depth))
            problems.Add(Problem(TreatmentFields.Depth.Option, InputProblem.Number(depth), Ranges.DepthMm.InWords));
        if (!Ranges.StepMm.Holds(settings.Step))
            problems.Add(Problem("--step", InputProblem.Number(settings.Step), Ranges.StepMm.InWords));
        if (problems.Count > 0 || section is null)
            throw new InputRefusedException(problems);
        var reading = new ReadingRequest
        {
            Section = section,
            Shape = settings.IsCore ? SectionShape.CoreStrip : null,
            Indicator = indicator,
            Candidates = indicators,
            HeartwoodReagent = reagent,
            IsIncised = settings.Incised,
            RequiredMm = settings.Depth,
            StepMm = settings.Step,
        };
        return new(PhotographPaths.Of(settings.Photographs), reading, marks, OptionOf);
    }

    // A core is as a sawn strip, its diameter wide and its length high.
    // A radius has its unit in its key, and none in its option.
    private static string OptionOf(string mark) =>
        mark == MarkField.HeartwoodRadius ? TreatmentFields.HeartwoodRadius.Option : AskedField.OptionOf(mark);

    private static Section? Section(MeasureCommand.Settings settings, List<InputProblem> problems)
    {
        if (
            SectionText.TryParse(settings.Section ?? "", out var section)
            && (section is RectangularSection || !settings.IsCore)
        )
            return section;
        problems.Add(
            Problem(
                EnquiryFields.Section.Option,
                settings.Section ?? "nothing",
                settings.IsCore ? "diameter and length of the core, for instance 5x80" : SectionText.Expected
            )
        );
        return null;
    }

    private static string? Text(MeasureCommand.Settings settings, string field) =>
        field switch
        {
            MarkField.Corners => settings.Corners,
            MarkField.Scale => settings.Scale,
            MarkField.MeasuredSize => settings.MeasuredSize,
            MarkField.Treated => settings.Treated,
            MarkField.Untreated => settings.Untreated,
            MarkField.LeaveOut => settings.LeaveOut,
            MarkField.Heartwood => settings.Heartwood,
            MarkField.HeartwoodRing => settings.HeartwoodRing,
            MarkField.Pith => settings.Pith,
            MarkField.HeartwoodRadius => settings.HeartwoodRadius,
            _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not a field of marks."),
        };

    private static InputProblem Problem(string option, string found, string expected) =>
        new("command line", 0, "", option, found, expected);
}
