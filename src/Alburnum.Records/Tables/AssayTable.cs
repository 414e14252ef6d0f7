using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Facts;
using Alburnum.Records.Assays;

namespace Alburnum.Records.Tables;

/// <summary>
/// Reads composite assays: <c>sample</c>, and either <c>retention_kg_per_m3</c> ("&lt; 0.5" where nothing was found down to 0.5) with
/// <c>u_kg_per_m3</c>, its standard uncertainty, or <c>result</c> as the laboratory reports it ("1850 ± 120 (k=2) mg/kg Cu"), one row for each substance of a sample;
/// if wanted <c>laboratory</c>, <c>report</c>, <c>method</c>, <c>sub_samples</c> and <c>zone</c>, the zone that was cut: its depth in mm, or <c>sapwood</c> for all of it.
/// </summary>
public static partial class AssayTable
{
    private const string RetentionColumn = "retention_kg_per_m3";
    private const string UncertaintyColumn = "u_kg_per_m3";
    private const string ResultColumn = "result";
    private const string SubSamplesColumn = "sub_samples";
    private const string ZoneColumn = "zone";
    private static readonly string[] NumberColumns = [RetentionColumn, UncertaintyColumn, ResultColumn, ZoneColumn];

    /// <summary>Every assay of the table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="basis">What results count as.</param>
    /// <param name="substances">What substances hold.</param>
    /// <param name="problems">Gains what is wrong.</param>
    /// <returns>Not to be used where problems were noted.</returns>
    public static IReadOnlyList<Assay> Read(
        Table table,
        AssayBasis basis,
        Substances substances,
        List<InputProblem> problems
    )
    {
        ArgumentNullException.ThrowIfNull(table);
        var isReported = table.Columns.Contains(ResultColumn, StringComparer.Ordinal);
        string[] mustBeThere = isReported ? ["sample", ResultColumn] : ["sample", RetentionColumn];
        string[] mayBe = ["laboratory", "report", "method", SubSamplesColumn, ZoneColumn];
        if (!isReported)
            return
            [
                .. TableLine
                    .ReadAll(table, mustBeThere, [UncertaintyColumn, .. mayBe], problems, line => Assay(line, basis))
                    .OfType<Assay>(),
            ];
        var before = problems.Count;
        var rows = TableLine.ReadAll(table, mustBeThere, mayBe, problems, line => Reported(line, basis, substances));
        return problems.Count > before
            ? []
            :
            [
                .. rows.OfType<ReportedRow>()
                    .GroupBy(row => row.Paper)
                    .Select(sample => Counted([.. sample], basis, substances))
                    .OfType<Assay>(),
            ];
    }

    private static Assay? Assay(TableLine line, AssayBasis basis)
    {
        var sample = line.RequiredText("sample");
        var (retention, u) = (line.Text(RetentionColumn), line.Text(UncertaintyColumn));
        var assay = WrittenValue.ReadAssay(u.Length > 0 ? $"{retention} ± {u} (k=1)" : retention, sample);
        if (assay is null)
            line.Refuse(
                RetentionColumn,
                retention.Length == 0 ? "nothing"
                    : u.Length == 0 ? $"\"{retention}\" without {UncertaintyColumn}"
                    : WrittenValue.Read(retention) is null ? $"\"{retention}\""
                    : $"\"{retention}\" with {UncertaintyColumn} \"{u}\"",
                $"a number, {Ranges.MeasuredRetentionKgPerM3.InWords}, with its standard uncertainty in {UncertaintyColumn}; or \"< 0.5\" below detection"
            );
        return assay is null ? null : PaperOf(line, basis).On(assay, SubSamples(line) ?? 1);
    }

    private static ReportedRow? Reported(TableLine line, AssayBasis basis, Substances substances)
    {
        line.RequiredText("sample");
        var text = line.Text(ResultColumn);
        var said = SubSamples(line);
        var read = ContentText.Read(text, substances);
        if (read is { Content.IsUncertaintyKnown: true })
            return new(line, PaperOf(line, basis), text, read.Content, said ?? read.SubSamples);
        line.Refuse(
            ResultColumn,
            text.Length == 0 ? "nothing" : $"\"{text}\"",
            read is null ? ContentText.Expected(text, substances) : StatedUncertainty.Missing
        );
        return null;
    }

    private static Assay? Counted(IReadOnlyList<ReportedRow> rows, AssayBasis basis, Substances substances)
    {
        var ofZone = basis with { ZoneDepthMm = rows[0].Paper.Zone?.DepthMm ?? basis.ZoneDepthMm };
        var counting = CountedRetention.Of([.. rows.Select(row => row.Content)], ofZone, substances);
        if (counting is not CountedRetention { KgPerM3: { } kgPerM3, IsVolumeUncertaintyKnown: true } counted)
        {
            rows[0]
                .Line.Refuse(ResultColumn, string.Join(", ", rows.Select(row => row.Text)), counting.Expected(basis));
            return null;
        }
        if (kgPerM3.Value > Ranges.MeasuredRetentionKgPerM3.High)
        {
            rows[0].Line.Refuse(ResultColumn, rows[0].Text, Ranges.MeasuredRetentionKgPerM3.InWords);
            return null;
        }
        var (paper, sample) = (rows[0].Paper, rows[0].Paper.Sample);
        Assay assay = counted.IsBelowDetection
            ? new BelowDetection(kgPerM3.Value, sample)
            : new MeasuredAssay(kgPerM3, sample);
        return paper.On(assay, rows.Max(row => row.SubSamples)) with
        {
            AsReported = string.Join(", ", rows.Select(row => row.Text)),
            SharedKgPerM3 = counted.DensityKgPerM3,
            DegreesOfFreedom = counted.DegreesOfFreedom,
            PartsOffFormula = counted.PartsOffFormula,
        };
    }

    private static int? SubSamples(TableLine line)
    {
        var text = line.Text(SubSamplesColumn);
        if (text.Length == 0)
            return null;
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count)
            && count is >= 1 and <= 1000
        )
            return count;
        line.Refuse(SubSamplesColumn, $"\"{text}\"", "a whole number, 1 to 1000");
        return null;
    }

    private static AssayedZone? Zone(TableLine line, AssayBasis basis)
    {
        var text = line.Text(ZoneColumn);
        if (text.Length == 0)
            return basis.ZoneDepthMm is { } depthMm ? new(depthMm) : null;
        if (text == "sapwood")
            return new(DepthMm: null);
        var depth = ZoneDepth().Match(text).Groups["mm"];
        // One table has one decimal sign.
        var isForeign = depth.Value.Contains(',', StringComparison.Ordinal) && line.HasDecimalPoint(NumberColumns);
        if (depth.Success && !isForeign && StatedUncertainty.Number(depth) is var mm && Ranges.DepthMm.Holds(mm))
            return new(mm);
        line.Refuse(
            ZoneColumn,
            isForeign ? $"\"{text}\", with a decimal comma" : $"\"{text}\"",
            $"the depth of the zone that was cut, from the surface, {Ranges.DepthMm.InWords}{(isForeign ? ", with a decimal point as elsewhere in the table" : "")}; or sapwood, for all of it"
        );
        return null;
    }

    [GeneratedRegex(
        @"^(0\s*(mm)?\s*(-|–|to)\s*)?(?<mm>" + StatedUncertainty.Digits + @")\s*(mm)?$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex ZoneDepth();

    private static Paper PaperOf(TableLine line, AssayBasis basis) =>
        new(line.Text("sample"), line.Text("laboratory"), line.Text("report"), line.Text("method"), Zone(line, basis));

    private sealed record Paper(string Sample, string Laboratory, string Report, string Method, AssayedZone? Zone)
    {
        public Assay On(Assay assay, int subSamples) =>
            assay with
            {
                Laboratory = Laboratory,
                Report = Report,
                Method = Method,
                SubSamples = subSamples,
                Zone = Zone,
            };
    }

    private sealed record ReportedRow(
        TableLine Line,
        Paper Paper,
        string Text,
        ReportedContent Content,
        int SubSamples
    );
}
