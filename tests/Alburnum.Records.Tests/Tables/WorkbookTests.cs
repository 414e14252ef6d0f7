using System.IO.Compression;
using Alburnum.Penetration;
using Alburnum.Records.Tables;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Tables;

public sealed class WorkbookTests : IDisposable
{
    private static readonly object?[] Names = ["charge", "date", "mean_depth_mm", "retention_kg_per_m3"];
    private readonly TemporaryFolder _folder = new();
    private string Path => _folder.At("charges.xlsx");

    public void Dispose() => _folder.Dispose();

    private string Refusal(string? sheet = null) =>
        Assert
            .Throws<InputRefusedException>(() => ChargeTable.Of(Table.Open(Path, sheet)).Charges(default).Count())
            .Message;

    [Fact]
    public void A_sheet_is_read_as_the_same_table_in_CSV_would_be()
    {
        Sheets.Write(
            Path,
            (
                "Plant",
                false,
                [
                    Names,
                    ["C1", 46024.0, 7.4, 12.0],
                    ["inline:C2", null, null, 13.5],
                    [null, null, null, null],
                    [101.0, null, 0.1 + 0.2, null],
                ]
            )
        );

        var table = Table.Open(Path, null);
        Assert.Equal(Names, table.Columns);
        Assert.Equal(
            ["2: C1|46024|7.4|12", "3: C2|||13.5", "5: 101||0.30000000000000004|"],
            table.Rows.Select(row => $"{row.Line}: {string.Join('|', row.Cells)}")
        );
        var charges = ChargeTable
            .Of(Table.Open(Path, null))
            .Charges(default)
            .Select(charge => (charge.Number, Values: charge.Values.ToList()))
            .ToList();
        Assert.Equal(["C1", "C2", "101"], charges.Select(charge => charge.Number));
        Assert.Equal([null, 13.5], charges[1].Values);
    }

    [Fact]
    public void What_is_wrong_is_named_with_sheet_and_row()
    {
        Sheets.Write(Path, ("Plant", false, [Names, ["C1", null, 7.4, 12.0], ["C1", null, "0.3 in", 12.0]]));
        var said = Refusal();

        Assert.Contains(
            "charges.xlsx, sheet \"Plant\", line 3, field charge: found \"C1\", already on line 2",
            said,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "field mean_depth_mm: found \"0.3 in\", expected a plain number",
            said,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_choice_of_sheets_is_never_guessed()
    {
        Sheets.Write(
            Path,
            ("North", false, [Names, ["C1", null, 7.0, 12.0]]),
            ("South", false, [Names, ["C2", null, 8.0, 12.0], ["C3", null, 8.0, 12.0]]),
            (
                "Notes",
                true,
                [
                    ["nothing"],
                ]
            )
        );

        Assert.Contains("2 sheets (\"North\", \"South\"), expected one sheet", Refusal(), StringComparison.Ordinal);
        Assert.Contains("\"West\", expected one of", Refusal("West"), StringComparison.Ordinal);
        Assert.Equal(2, ChargeTable.Of(Table.Open(Path, "South")).Charges(default).Count());
    }

    [Fact]
    public void Results_come_from_a_workbook_too()
    {
        Sheets.Write(
            Path,
            (
                "Cut",
                false,
                [
                    ["piece", "result"],
                    ["T1", "pass"],
                    ["T2", "fail"],
                    ["a, b", "pass"],
                ]
            )
        );

        var judged = Assert.IsType<JudgedPieces>(ResultTable.Read(Table.Open(Path, null), null));
        Assert.Equal(
            [("T1", Verdict.Conforms), ("T2", Verdict.DoesNotConform), ("a, b", Verdict.Conforms)],
            judged.Pieces
        );
    }

    [Theory]
    [InlineData("not a workbook at all")]
    [InlineData("")]
    public void A_file_that_is_no_workbook_is_refused(string text)
    {
        _folder.Write("charges.xlsx", text);

        Assert.Contains("cannot be read as a workbook", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_workbook_cut_short_is_refused()
    {
        Sheets.Write(Path, ("Plant", false, [Names, ["C1", null, 7.4, 12.0]]));
        var bytes = File.ReadAllBytes(Path);
        File.WriteAllBytes(Path, bytes[..(bytes.Length / 2)]);

        Assert.Contains("cannot be read as a workbook", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_zip_that_holds_no_workbook_is_refused()
    {
        using (var zip = ZipFile.Open(Path, ZipArchiveMode.Create))
            zip.CreateEntry("readme.txt");

        Assert.Contains("cannot be read as a workbook", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void Other_kinds_of_workbook_are_refused_by_name()
    {
        var path = _folder.Write("charges.xls", "");

        Assert.Contains(
            "a .xls file, expected a table in CSV, or a workbook (.xlsx)",
            Assert.Throws<InputRefusedException>(() => Table.Open(path, null)).Message,
            StringComparison.Ordinal
        );
    }
}
