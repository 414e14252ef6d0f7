using Alburnum.Records.Tables;
using Alburnum.Records.Tests.Tables;
using Alburnum.Records.Worksheets;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Worksheets;

public sealed class WorksheetTableTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_workbook_and_a_CSV_filled_in_alike_are_read_alike()
    {
        string[] columns = [.. WorksheetTable.Asked, .. WorksheetTable.ToFillIn];
        Sheets.Write(
            _folder.At("sheet.xlsx"),
            (
                "Worksheet",
                false,
                [
                    columns,
                    [
                        "12",
                        "in-ground-15",
                        "retention",
                        "always",
                        "1",
                        "from memory",
                        1.25,
                        "2011",
                        "table 4",
                        17.0,
                        "AB",
                        new DateOnly(2026, 5, 12),
                    ],
                    ["3", "coated-15", "retention", "always", "1", "from memory", null, null, null, null, null, null],
                ]
            )
        );
        var csv = _folder.Write(
            "sheet.csv",
            $"{string.Join(',', columns)}\n12,in-ground-15,retention,always,1,from memory,1.25,2011,table 4,17,AB,2026-05-12\n3,coated-15,retention,always,1,from memory,,,,,,\n"
        );

        var fromWorkbook = WorksheetTable.Read(Table.Open(_folder.At("sheet.xlsx"), null), new(2026, 5, 12));

        Assert.Equal(
            new WorksheetLine(2, "in-ground-15", "1.25", "2011", "table 4", "17", "AB", "2026-05-12"),
            Assert.Single(fromWorkbook)
        );
        Assert.Equal(WorksheetTable.Read(Table.Open(csv, null), new(2026, 5, 12)), fromWorkbook);
    }
}
