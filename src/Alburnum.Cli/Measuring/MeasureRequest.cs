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
        var pieces = Pieces(settings, section, problems);
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
        var files = PhotographPaths.Of(settings.Photographs);
        if (pieces?.Labels is not null && files.Count > 1)
            throw new InputRefusedException(
                Problem(Labels, $"{files.Count} photographs", "one photograph, whose pieces are so called")
            );
        return new(files, reading, marks, OptionOf) { Pieces = pieces };
    }

    private const string Labels = "--labels";

    private const int MostLetters = 40;

    // What several pieces are, and what cannot be said of all of them at once.
    private static SeveralPieces? Pieces(
        MeasureCommand.Settings settings,
        Section? section,
        List<InputProblem> problems
    )
    {
        if (settings is { Pieces: null, Labels: null })
            return null;
        string[]? labels = settings.Labels?.Split(',', StringSplitOptions.TrimEntries);
        var count = settings.Pieces ?? labels!.Length;
        if (!Ranges.PiecesOnPhotograph.Holds(count))
            problems.Add(Problem("--pieces", InputProblem.Number(count), Ranges.PiecesOnPhotograph.InWords));
        else if (labels is not null && labels.Length != count)
            problems.Add(
                Problem(Labels, $"{labels.Length} labels", $"{count}, one for each piece, with commas between them")
            );
        else if (labels is not null && Amiss(labels) is { } amiss)
            problems.Add(Problem(Labels, amiss, $"labels that differ, each of 1 to {MostLetters} letters"));
        if (settings.IsCore || section is not (null or RectangularSection or RoundSection))
            problems.Add(
                Problem(
                    "--pieces",
                    "cores, half-round or quartered pieces",
                    "sawn or round sections: the others are not found without their points"
                )
            );
        foreach (var (option, given) in OfOneSection(settings))
            if (given is not null)
                problems.Add(
                    Problem(option, $"\"{given}\"", "nothing beside --pieces: it is said of one section alone")
                );
        return new(count, labels);
    }

    private static string? Amiss(string[] labels) =>
        labels.FirstOrDefault(label => label.Length is 0 or > MostLetters) is { } wrong ? $"\"{wrong}\""
        : labels.GroupBy(label => label, StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1) is { } twice
            ? $"\"{twice.Key}\" more than once"
        : null;

    private static IEnumerable<(string Option, string? Given)> OfOneSection(MeasureCommand.Settings settings) =>
        new[]
        {
            MarkField.Corners,
            MarkField.Scale,
            MarkField.Treated,
            MarkField.Untreated,
            MarkField.LeaveOut,
            MarkField.Heartwood,
            MarkField.HeartwoodRing,
            MarkField.Pith,
            MarkField.HeartwoodRadius,
        }.Select(field => (OptionOf(field), Text(settings, field)));

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
