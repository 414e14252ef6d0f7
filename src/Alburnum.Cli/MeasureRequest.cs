using System.Globalization;
using Alburnum.Imaging;
using Alburnum.Timber;

namespace Alburnum.Cli;

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
    /// <exception cref="InputRefusedException">With every option that cannot be read.</exception>
    public static ReadingRequest From(MeasureCommand.Settings settings)
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
        var indicator = Indicators.Usual.FirstOrDefault(i =>
            string.Equals(i.Key, settings.Indicator, StringComparison.OrdinalIgnoreCase)
        );
        if (settings.Indicator is { } key && indicator is null)
            problems.Add(Problem("--indicator", key, string.Join(", ", Indicators.Usual.Select(i => i.Key))));
        var corners = settings.Corners is { } text ? Points("--corners", text, problems) : null;
        var bar = settings.Scale is { } scale ? ReadScale(scale, problems) : null;
        if (!(settings.Step >= 0.25 && settings.Step <= 1))
            problems.Add(Problem("--step", settings.Step.ToString(CultureInfo.InvariantCulture), "0.25 to 1 mm"));
        if (problems.Count > 0 || section is null)
            throw new InputRefusedException(problems);
        return new ReadingRequest
        {
            Section = section,
            Shape = shape,
            OutlinePx = corners,
            Indicator = indicator,
            ScaleBar = bar,
            StepMm = settings.Step,
        };
    }

    private static Section? ReadSection(string? text, SectionShape? shape, List<InputProblem> problems)
    {
        var parts = (text ?? "").ToLowerInvariant().Replace("mm", "", StringComparison.Ordinal).Split('x', '×');
        var sizes = new List<double>();
        foreach (var part in parts)
        {
            if (!Number(part.Trim(' ', '⌀', 'ø'), out var size) || !(size >= 1 && size <= 2000))
            {
                problems.Add(
                    Problem("--section", text ?? "nothing", "sizes of 1 to 2000 mm, for instance 100x75 or 120")
                );
                return null;
            }
            sizes.Add(size);
        }
        var round = shape is SectionShape.Round or SectionShape.HalfRound or SectionShape.Quartered;
        switch (sizes.Count)
        {
            case 1 when round || shape is null:
                return new RoundSection(sizes[0]);
            case 1 when shape == SectionShape.Square:
                return new RectangularSection(sizes[0], sizes[0]);
            case 2 when !round:
                return new RectangularSection(sizes[0], sizes[1]);
            case 2 when sizes[0] == sizes[1]:
                return new RoundSection(sizes[0]);
            default:
                problems.Add(
                    Problem(
                        "--section",
                        text ?? "nothing",
                        round ? "one diameter, for instance 120" : "two sizes, for instance 100x75"
                    )
                );
                return null;
        }
    }

    private static List<PointPx>? Points(string option, string text, List<InputProblem> problems)
    {
        var points = new List<PointPx>();
        foreach (var pair in text.Split([' ', ';'], StringSplitOptions.RemoveEmptyEntries))
        {
            var xy = pair.Split(',');
            if (xy.Length != 2 || !Number(xy[0], out var x) || !Number(xy[1], out var y))
            {
                problems.Add(Problem(option, $"\"{pair}\"", "points as x,y separated by spaces"));
                return null;
            }
            points.Add(new(x, y));
        }
        return points;
    }

    private static ScaleBar? ReadScale(string text, List<InputProblem> problems)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 3 && Number(words[2], out var length) && length > 0)
        {
            var ends = Points("--scale", $"{words[0]} {words[1]}", problems);
            return ends is [var from, var to] && from != to ? new(from, to, length) : null;
        }
        problems.Add(
            Problem("--scale", $"\"{text}\"", "two points and a length in mm, for instance \"120,80 620,84 50\"")
        );
        return null;
    }

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static InputProblem Problem(string option, string found, string expected) =>
        new("command line", 0, "", option, found, expected);
}
