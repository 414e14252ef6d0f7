using System.Globalization;
using Alburnum.Acceptance.Variables;
using Alburnum.Assaying;
using Alburnum.Records.Tables;
using Alburnum.Records.Tests.Facts;
using Alburnum.Tests.Shared;
using CsCheck;

namespace Alburnum.Records.Tests.Tables;

public sealed class TableTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private Table Csv(string text) => Table.Open(_folder.Write("table.csv", text), null);

    private Table Workbook(params object?[][] rows)
    {
        Sheets.Write(_folder.At("table.xlsx"), ("Plant", false, rows));
        return Table.Open(_folder.At("table.xlsx"), null);
    }

    private static string[] Cells(Table table) =>
        [.. table.Rows.Select(row => $"{row.Line}: {string.Join('|', row.Cells)}")];

    [Fact]
    public void A_table_gives_the_same_cells_as_CSV_and_as_a_workbook()
    {
        var csv = Csv(
            """"
            charge,date,mean_depth_mm,note
            C1,2026-01-02,7.4,"dry, then ""wet"""
            Müller 2,2026-03-31,0.1,Kiefer übergroß

            C3,,,
            4,2026-12-24,1000000,"a line
            and another"
            ,,,
            """"
        );
        var workbook = Workbook(
            ["charge", "date", "mean_depth_mm", "note"],
            ["C1", new DateOnly(2026, 1, 2), 7.4, "dry, then \"wet\""],
            ["inline:Müller 2", new DateOnly(2026, 3, 31), 0.1, "Kiefer übergroß"],
            [],
            ["C3", null, null, null],
            [4.0, new DateOnly(2026, 12, 24), 1_000_000.0, "a line\nand another"],
            [null, "", " ", null]
        );

        Assert.Equal(
            [
                "2: C1|2026-01-02|7.4|dry, then \"wet\"",
                "3: Müller 2|2026-03-31|0.1|Kiefer übergroß",
                "5: C3|||",
                "6: 4|2026-12-24|1000000|a line and another",
            ],
            Cells(csv)
        );
        Assert.Equal(csv.Columns, workbook.Columns);
        Assert.Equal(Cells(csv), Cells(workbook));
    }

    [Fact]
    public void Any_cell_that_is_quoted_comes_back_as_it_was() =>
        Gen.String[Gen.Char[' ', '~'], 0, 20]
            .Array[1, 6]
            .Where(cells => cells.Any(cell => cell.Trim().Length > 0))
            .Sample(
                cells =>
                {
                    var names = string.Join(',', cells.Select((_, i) => $"c{i}"));
                    var row = string.Join(',', cells.Select(cell => $"\"{cell.Replace("\"", "\"\"")}\""));
                    using var folder = new TemporaryFolder();
                    var table = Table.Open(folder.Write("t.csv", names + "\n" + row + "\n"), null);

                    Assert.Equal(cells.Select(cell => cell.Trim()), Assert.Single(table.Rows).Cells);
                },
                iter: 200
            );

    [Fact]
    public void A_comma_in_quotes_belongs_to_a_charges_number()
    {
        var charges = ChargeTable
            .Of(Csv("charge,mean_depth_mm\n\"7, second vessel\",8.5\n"))
            .Charges(default)
            .Select(charge => charge.Number);

        Assert.Equal(["7, second vessel"], charges);
    }

    [Theory]
    [InlineData("C1\n", "line 2: found 1 cells, expected 2, as many as there are columns")]
    [InlineData("C1,8,5\n", "line 2: found 3 cells, expected 2")]
    public void A_row_of_another_length_is_refused(string row, string said) =>
        Assert.Contains(
            said,
            Assert
                .Throws<InputRefusedException>(() =>
                    ChargeTable.Of(Csv("charge,mean_depth_mm\n" + row)).Charges(default).Count()
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_quote_that_is_never_closed_does_not_swallow_the_file()
    {
        var rows = string.Concat(Enumerable.Range(0, 10_000).Select(i => $"C{i},8.5\n"));

        Assert.Contains(
            "line 2: found a cell of more than 32767 characters, expected a closing quote",
            Assert.Throws<InputRefusedException>(() => Csv("a,b\n\"" + rows).Rows.Count()).Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("charge,retention_kg_m3", "field retention_kg_m3", "retention_kg_per_m3")]
    [InlineData("charge,mean_depth_mm,uptake_l_m3", "field uptake_l_m3", "uptake_l_per_m3")]
    public void A_column_by_its_old_name_is_told_the_new_one(string names, string field, string now) =>
        Assert.EndsWith(
            $"line 1, {field}: found a column by its former name, expected {now}.",
            Assert.Throws<InputRefusedException>(() => Csv(names + "\n")).Message,
            StringComparison.Ordinal
        );

    // Whichever byte is spoilt: cells, or a refusal in words.
    [Fact]
    public void Damage_inside_a_workbook_ends_in_words()
    {
        Workbook(["charge", "mean_depth_mm"], ["C1", 7.4], ["C2", new DateOnly(2026, 1, 2)], ["inline:C3", 8.0]);
        var whole = File.ReadAllBytes(_folder.At("table.xlsx"));

        Gen.Int[0, whole.Length - 1]
            .Select(Gen.Byte)
            .Sample(
                (at, value) =>
                {
                    using var folder = new TemporaryFolder();
                    var spoilt = whole.ToArray();
                    spoilt[at] = value;
                    File.WriteAllBytes(folder.At("table.xlsx"), spoilt);
                    try
                    {
                        return Table.Open(folder.At("table.xlsx"), null).Rows.Count() < 10;
                    }
                    catch (InputRefusedException refused)
                    {
                        return refused.Message.Contains("expected", StringComparison.Ordinal);
                    }
                },
                iter: 2000
            );
    }

    [Theory]
    [InlineData("14.2", 14.2, Censoring.Exact, null)]
    [InlineData(" 14.2 ± 0.8 (k=2) kg/m³ ", 14.2, Censoring.Exact, 0.4)]
    [InlineData("14.2 +- 0.4 (k=1)", 14.2, Censoring.Exact, 0.4)]
    [InlineData("<0.5", 0.5, Censoring.AtMost, null)]
    [InlineData(">= 25", 25.0, Censoring.AtLeast, null)]
    public void A_value_is_read_as_a_laboratory_writes_it(string text, double value, Censoring censoring, double? u)
    {
        var read = WrittenValue.Read(text)!;

        Assert.Equal((value, censoring, u), (read.Value, read.Censoring, read.StandardUncertainty));
    }

    [Theory]
    [InlineData("14.2")]
    [InlineData("< 0")]
    [InlineData("14.2 ± 0.4")]
    [InlineData("14.2 ± 0 (k=1)")]
    [InlineData("< 0.5 ± 0.1 (k=1)")]
    [InlineData("> 12")]
    [InlineData("-3 ± 1 (k=1)")]
    [InlineData("1001 ± 1 (k=1)")]
    [InlineData("about 14")]
    [InlineData("")]
    public void An_assay_needs_its_uncertainty_with_its_coverage_factor_or_its_limit(string text) =>
        Assert.Null(WrittenValue.ReadAssay(text));

    private static readonly Substances Substances = ShippedData.Library.Substances;

    [Fact]
    public void An_assay_in_an_option_and_in_a_table_is_the_same()
    {
        List<InputProblem> problems = [];
        Gen.Select(Gen.Int[0, 99_999], Gen.Int[1, 999])
            .Sample(
                (retention, u) =>
                {
                    var (value, uncertainty) = (Hundredths(retention), Hundredths(u));
                    using var folder = new TemporaryFolder();
                    var table = Table.Open(
                        folder.Write("a.csv", $"sample,retention_kg_per_m3,u_kg_per_m3\nS,{value},{uncertainty}\n"),
                        null
                    );

                    Assert.Equal(
                        [WrittenValue.ReadAssay($"{value} ± {uncertainty} (k=1)", "S")!],
                        AssayTable.Read(table, new(), Substances, problems)
                    );
                },
                iter: 200
            );
        Assert.Empty(problems);
    }

    private static string Hundredths(int count) => (count / 100.0).ToString("0.##", CultureInfo.InvariantCulture);
}
