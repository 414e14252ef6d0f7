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
    public void A_cell_that_unpacks_to_more_than_all_that_is_read_is_refused()
    {
        Sheets.Write(Path, ("Plant", false, [Names, ["C1", 46024.0, 7.4, 12.0]]));
        using (var package = ZipFile.Open(Path, ZipArchiveMode.Update))
        {
            var entry = package.Entries.Single(each => each.FullName.Contains("sheet1", StringComparison.Ordinal));
            var name = entry.FullName;
            entry.Delete();
            using var writer = new StreamWriter(package.CreateEntry(name).Open());
            writer.Write(
                "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row><c t=\"inlineStr\"><is><t>"
            );
            var letters = new string('a', 1 << 20);
            for (var mb = 0; mb < 65; mb++)
                writer.Write(letters);
            writer.Write("</t></is></c></row></sheetData></worksheet>");
        }
        Assert.InRange(new FileInfo(Path).Length, 0, 200_000);

        Assert.Contains("a file that cannot be read as a workbook", Refusal(), StringComparison.Ordinal);
    }

    // Parts of the package are damaged one after the other, each unpacked and packed again so that its check sum holds.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_damaged_workbook_is_read_or_refused_and_nothing_else(int seed)
    {
        Sheets.Write(Path, ("Plant", false, [Names, ["C1", 46024.0, 7.4, 12.0], ["C2", 46025.0, 7.1, 13.0]]));
        var whole = File.ReadAllBytes(Path);
        var random = new Random(seed);
        var refused = 0;
        for (var i = 0; i < 150; i++)
        {
            File.WriteAllBytes(Path, whole);
            Damage(random);
            try
            {
                _ = ChargeTable.Of(Table.Open(Path, null)).Charges(default).Count();
            }
            catch (InputRefusedException)
            {
                refused++;
            }
        }
        Assert.InRange(refused, 1, 150);
    }

    private void Damage(Random random)
    {
        using var package = ZipFile.Open(Path, ZipArchiveMode.Update);
        var entry = package.Entries[random.Next(package.Entries.Count)];
        var name = entry.FullName;
        byte[] bytes;
        using (var part = new MemoryStream())
        {
            using (var stream = entry.Open())
                stream.CopyTo(part);
            bytes = part.ToArray();
        }
        entry.Delete();
        // Taken out, cut short, a sign changed, a document type put before it, or a number in it made huge.
        var kind = random.Next(5);
        if (kind == 0)
            return;
        var text = System.Text.Encoding.UTF8.GetString(bytes);
        var at = random.Next(text.Length);
        var damaged = kind switch
        {
            1 => text[..at],
            2 => $"{text[..at]}{(char)random.Next(' ', '~')}{text[(at + 1)..]}",
            3 => text.Replace("?>", "?><!DOCTYPE x [<!ENTITY y \"z\">]>", StringComparison.Ordinal),
            _ => text.Replace("1", "99999999999", StringComparison.Ordinal),
        };
        using var written = new StreamWriter(package.CreateEntry(name).Open());
        written.Write(damaged);
    }

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
