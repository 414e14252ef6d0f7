using System.Globalization;
using System.Text;
using Alburnum.DrawnSections;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>The result of a run, for people: a table in Markdown, and a line for each photograph.</summary>
internal static class AccuracyTable
{
    public static string Markdown(IReadOnlyList<StratumRun> runs)
    {
        var text = new StringBuilder();
        Line(text, $"# Accuracy on photographs of known truth");
        Line(text, $"");
        var counts = string.Join(", ", runs.Select(run => $"{run.Given.Scores.Count} {Name(run.Stratum)}"));
        Line(text, $"{runs.Sum(run => run.Given.Scores.Count)} photographs: {counts}. Limits in brackets.");
        Line(text, $"");
        Line(text, $"| | {string.Join(" | ", runs.Select(run => Name(run.Stratum)))} |");
        Line(text, $"|---|{string.Concat(Enumerable.Repeat("---|", runs.Count))}");
        Row(
            text,
            runs,
            "local depth, corners given, mm",
            run => Against(run.Given.LocalMm, AccuracyLimits.Of(run.Stratum).LocalMm)
        );
        Row(text, runs, "mean depth, mm", run => Against(run.Given.MeanMm, AccuracyLimits.Of(run.Stratum).MeanMm));
        Row(
            text,
            runs,
            "minimum depth (median), mm",
            run => Against(run.Given.MinimumMm, AccuracyLimits.Of(run.Stratum).MinimumMm)
        );
        Row(
            text,
            runs,
            "treated share, percentage points",
            run => Against(run.Given.TreatedSharePoints, AccuracyLimits.Of(run.Stratum).TreatedSharePoints)
        );
        Row(
            text,
            runs,
            "outline by itself within 1 mm",
            run => $"{Percent(run.ByItself.OutlineShare)} ({Percent(AccuracyLimits.Of(run.Stratum).OutlineShare)})"
        );
        Row(text, runs, "outline by itself, wrong without asking", run => Percent(run.ByItself.GuessedShare));
        Row(text, runs, "95 % interval holds the mean depth", run => Percent(run.Given.MeanCoverage));
        Row(text, runs, "95 % interval holds the minimum depth", run => Percent(run.Given.MinimumCoverage));
        Row(text, runs, "lean of the mean depth, mm", run => Millimetres(run.Given.LeanMm));
        Row(text, runs, "depths determined, corners given", run => Percent(run.Given.DeterminedShare));
        Row(text, runs, "readable positions read", run => Percent(run.Given.ReadShare));
        Row(text, runs, "local depth, corners clicked by hand, mm", run => Millimetres(run.Clicked.LocalMm));
        Row(text, runs, "mean depth, corners clicked by hand, mm", run => Millimetres(run.Clicked.MeanMm));
        Row(text, runs, "local depth, outline by itself, mm", run => Millimetres(run.ByItself.LocalMm));
        return text.ToString();
    }

    public static string EachPhotograph(IReadOnlyList<StratumRun> runs)
    {
        var text = new StringBuilder();
        Line(
            text,
            $"photograph,way,outline_mm,local_mm,mean_mm,minimum_mm,share_points,read_share,mean_held,minimum_held,notes"
        );
        foreach (var run in runs)
        {
            foreach (
                var (way, result) in new[] { ("given", run.Given), ("clicked", run.Clicked), ("itself", run.ByItself) }
            )
            {
                foreach (var score in result.Scores)
                {
                    var d = score.Depths;
                    Line(
                        text,
                        $"{score.Name},{way},{score.OutlineErrorMm:0.00},{d?.LocalMm:0.000},{d?.MeanMm:0.000},{d?.MinimumMm:0.000},{d?.TreatedSharePoints:0.00},{d?.ReadShare:0.00},{d?.MeanIsCovered},{d?.MinimumIsCovered},\"{score.Notes.Replace('"', '\'')}\""
                    );
                }
            }
        }
        return text.ToString();
    }

    private static void Row(
        StringBuilder text,
        IEnumerable<StratumRun> runs,
        string what,
        Func<StratumRun, string> cell
    ) => Line(text, $"| {what} | {string.Join(" | ", runs.Select(cell))} |");

    private static string Against(double value, double limit) =>
        string.Create(CultureInfo.InvariantCulture, $"{Millimetres(value)} ({limit:0.0#})");

    private static string Millimetres(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %");

    private static string Name(Stratum stratum) => stratum.ToString().ToLowerInvariant();

    private static void Line(StringBuilder text, FormattableString line) =>
        text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
