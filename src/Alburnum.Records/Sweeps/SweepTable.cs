using System.Globalization;
using System.Text;
using Alburnum.Facts;
using Alburnum.Records.Tables;
using CsvHelper;
using CsvHelper.Configuration;

namespace Alburnum.Records.Sweeps;

/// <summary>The table of a sweep (CSV), written point by point, so that a sweep that was stopped can continue.</summary>
/// <remarks>The first line says what was asked, behind "# "; the second names the columns.</remarks>
public sealed class SweepTable
{
    private static readonly string[] Columns =
    [
        "column",
        "row",
        "x",
        "y",
        "piece_share",
        "core_share",
        "mean_depth_mm",
        "least_depth_mm",
        "uptake_l_per_m3",
        "zone_l_per_m3",
        "refused",
    ];

    private static readonly CsvConfiguration Configuration = new(CultureInfo.InvariantCulture) { NewLine = "\n" };

    private static readonly NumberRange Place = NumberRange.Whole(0, int.MaxValue, "");
    private static readonly NumberRange Share = NumberRange.Within(0, 1, "");
    private static readonly NumberRange Figure = NumberRange.Within(-1e9, 1e9, "");

    private readonly string _path;
    private readonly List<SweptPoint> _points;
    private readonly Lock _lock = new();

    private SweepTable(string path, List<SweptPoint> points) => (_path, _points) = (path, points);

    /// <summary>Points that are in the table, in the order in which they were finished.</summary>
    public IReadOnlyList<SweptPoint> Points
    {
        get
        {
            lock (_lock)
                return [.. _points];
        }
    }

    /// <summary>Opens the table, or starts it. A last line cut short by a stop is left out, to be done again.</summary>
    /// <param name="path">Path of the table; its folder is made where it is missing.</param>
    /// <param name="question">What is asked, in one line: the table of another question is refused.</param>
    /// <exception cref="InputRefusedException">The table is of another sweep, or cannot be read or written.</exception>
    public static SweepTable Open(string path, string question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var start = $"# {question.ReplaceLineEndings(" ")}\n{Line(Columns)}";
        if (!File.Exists(path))
        {
            Writing(path, () => Start(path, start));
            return new(path, []);
        }
        var text = PlainFile.Text(path, path, "the table of a sweep");
        if (!text.StartsWith(start, StringComparison.Ordinal))
            throw new InputRefusedException(
                new InputProblem(
                    path,
                    0,
                    "",
                    "",
                    "the table of another sweep",
                    "an empty folder, or that of the same sweep"
                )
            );
        var whole = text[..(text.LastIndexOf('\n') + 1)];
        if (whole.Length < text.Length)
            Writing(path, () => Shorten(path, Encoding.UTF8.GetByteCount(whole)));
        return new(path, Read(path, whole));
    }

    /// <summary>Adds a point that is finished, from any thread.</summary>
    /// <param name="point">The point.</param>
    /// <exception cref="InputRefusedException">The table cannot be written to.</exception>
    public void Add(SweptPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        var line = Line(Cells(point));
        lock (_lock)
        {
            Writing(_path, () => File.AppendAllText(_path, line));
            _points.Add(point);
        }
    }

    // The question's line is blanked and not left out, so that lines keep their numbers.
    private static List<SweptPoint> Read(string path, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text[text.IndexOf('\n', StringComparison.Ordinal)..]);
        List<InputProblem> problems = [];
        List<SweptPoint> points =
        [
            .. TableLine
                .Of(Table.Read(path, () => new MemoryStream(bytes), sheet: null), Columns, [], problems)
                .Select(Point),
        ];
        return problems.Count == 0 ? points : throw new InputRefusedException(problems);
    }

    private static SweptPoint Point(TableLine line)
    {
        var (column, row) = (line.Whole("column", Place), line.Whole("row", Place));
        var (x, y) = (Number("x"), Number("y"));
        if (line.Text("refused") is { Length: > 0 } why)
            return new ImpossiblePoint(column, row, x, y, why);
        return new PredictedPoint(
            column,
            row,
            x,
            y,
            new()
            {
                PieceShare = line.OptionalNumber("piece_share", Share),
                CoreShare = line.OptionalNumber("core_share", Share),
                MeanDepthMm = Number("mean_depth_mm"),
                LeastDepthMm = Number("least_depth_mm"),
                UptakeLPerM3 = Number("uptake_l_per_m3"),
                ZoneLPerM3 = Number("zone_l_per_m3"),
            }
        );

        double Number(string name) => line.Number(name, Figure);
    }

    private static IEnumerable<string> Cells(SweptPoint point) =>
        [
            .. new double[] { point.Column, point.Row, point.Across, point.Up }.Select(Digits),
            .. point switch
            {
                PredictedPoint { Measures: var measures } => new double?[]
                {
                    measures.PieceShare,
                    measures.CoreShare,
                    measures.MeanDepthMm,
                    measures.LeastDepthMm,
                    measures.UptakeLPerM3,
                    measures.ZoneLPerM3,
                }
                    .Select(figure => figure is { } known ? Digits(known) : "")
                    .Append(""),
                ImpossiblePoint { Why: var why } => [.. Enumerable.Repeat("", 6), why.ReplaceLineEndings(" ")],
                _ => throw new ArgumentOutOfRangeException(nameof(point), point, "Not a point."),
            },
        ];

    private static string Line(IEnumerable<string> cells)
    {
        using var text = new StringWriter();
        using (var csv = new CsvWriter(text, Configuration))
        {
            foreach (var cell in cells)
                csv.WriteField(SpreadsheetText.Inert(cell));
            csv.NextRecord();
        }
        return text.ToString();
    }

    private static void Start(string path, string start)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        File.WriteAllText(path, start);
    }

    private static void Shorten(string path, long bytes)
    {
        using var file = File.OpenWrite(path);
        file.SetLength(bytes);
    }

    private static void Writing(string path, Action work) =>
        FileTrouble.Refusing(path, "a file that can be written", work);

    private static string Digits(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
