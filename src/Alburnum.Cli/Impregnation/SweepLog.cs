using System.Globalization;
using Alburnum.Records;

namespace Alburnum.Cli.Impregnation;

/// <summary>What one point of a sweep gave: its measures, or why it is impossible.</summary>
/// <param name="Values">Measures in their order; empty where refused.</param>
/// <param name="Refused">Why, in words; empty where it was not.</param>
internal sealed record SweepAnswer(IReadOnlyList<double> Values, string Refused);

/// <summary>The table of a sweep, written point by point, so that a sweep that was stopped can go on.</summary>
internal sealed class SweepLog
{
    private const string Columns =
        "column,row,x,y,piece_share,core_share,mean_depth_mm,least_depth_mm,uptake_l_m3,zone_l_m3,refused";

    private readonly string _path;
    private readonly Dictionary<(int Column, int Row), SweepAnswer> _done = [];
    private readonly Lock _lock = new();

    private SweepLog(string path) => _path = path;

    public int Count => _done.Count;

    /// <summary>Opens the folder's table, or starts it.</summary>
    /// <param name="folder">The sweep's folder.</param>
    /// <param name="question">The question in one line: a table of another question is not gone on with.</param>
    /// <param name="measures">Measures of each point.</param>
    /// <exception cref="InputRefusedException">The folder holds another sweep, or cannot be written to.</exception>
    public static SweepLog Open(string folder, string question, int measures)
    {
        var log = new SweepLog(Path.Combine(folder, "sweep.csv"));
        var first = "# " + question.ReplaceLineEndings(" ");
        OutFolder.Make(folder);
        if (!File.Exists(log._path))
        {
            log.Write(() => File.WriteAllText(log._path, first + "\n" + Columns + "\n"));
            return log;
        }
        var lines = FileTrouble.Refusing(log._path, "the table of a sweep", () => File.ReadAllLines(log._path));
        if (lines.Length < 2 || lines[0] != first || lines[1] != Columns)
            throw Options.Refused(
                "--out",
                $"{log._path}, the table of another sweep",
                "an empty folder, or that of the same sweep"
            );
        // A last line cut short by a stop is done again.
        foreach (var line in lines.Skip(2))
            log.Read(line, measures);
        log.Write(() =>
            File.WriteAllLines(log._path, [first, Columns, .. lines.Skip(2).Where(line => IsWhole(line, measures))])
        );
        return log;
    }

    private void Write(Action work) => FileTrouble.Refusing(_path, "a file that can be written", work);

    public bool Has(int column, int row) => _done.ContainsKey((column, row));

    public double? Value(int column, int row, int measure) =>
        _done[(column, row)].Values is { Count: > 0 } values ? values[measure] : null;

    public void Add(int column, int row, double x, double y, SweepAnswer answer)
    {
        var values = answer.Values.Count > 0 ? answer.Values.Select(Digits) : Enumerable.Repeat("", 6);
        var refused = answer.Refused.Replace(',', ';').ReplaceLineEndings(" ");
        var line = $"{column},{row},{Digits(x)},{Digits(y)},{string.Join(',', values)},{refused}\n";
        lock (_lock)
        {
            Write(() => File.AppendAllText(_path, line));
            _done[(column, row)] = answer;
        }
    }

    private static bool IsWhole(string line, int measures) => line.Split(',').Length == measures + 5;

    private void Read(string line, int measures)
    {
        if (!IsWhole(line, measures))
            return;
        var cells = line.Split(',');
        var (column, row) = (
            int.Parse(cells[0], CultureInfo.InvariantCulture),
            int.Parse(cells[1], CultureInfo.InvariantCulture)
        );
        double[] values =
            cells[4].Length == 0
                ? []
                : [.. cells.Skip(4).Take(measures).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
        _done[(column, row)] = new(values, cells[^1]);
    }

    private static string Digits(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
