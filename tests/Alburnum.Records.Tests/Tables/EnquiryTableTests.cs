using Alburnum.Records.Tables;
using Alburnum.Records.Tests.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Tables;

public sealed class EnquiryTableTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private IReadOnlyList<Enquiry> Read(string csv) =>
        EnquiryTable.Read(Table.Open(_folder.Write("archive.csv", csv), null), ShippedData.Library);

    [Fact]
    public void A_workbook_and_a_table_with_quoted_cells_hold_the_same_enquiries()
    {
        Sheets.Write(
            _folder.At("archive.xlsx"),
            (
                "Archive",
                false,
                [
                    ["component", "species", "section", "service_life_years"],
                    ["fence post", "Scots pine", "100 x 75", 15.0],
                    ["deck joists", null, "round 120", null],
                ]
            )
        );

        var inWorkbook = EnquiryTable.Read(Table.Open(_folder.At("archive.xlsx"), null), ShippedData.Library);
        var quoted = Read(
            """
            component,species,section,service_life_years
            "fence post","Scots pine","100 x 75",15

            "deck joists",,"round 120",
            """
        );

        Assert.Equal(2, quoted.Count);
        Assert.Equal(quoted.Select(Said), inWorkbook.Select(Said));
        Assert.Equal(15, quoted[0].Life?.Years);
    }

    [Fact]
    public void A_cell_that_cannot_be_read_is_named_by_line_and_column()
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            Read("component,service_life_years\n\"fence post\",15\n\n\"fence post, oak\",soon\n")
        );

        Assert.Equal(
            [(4, "component"), (4, "service_life_years")],
            refused.Problems.Select(each => (each.Line, each.Field))
        );
        Assert.Contains("fence post, oak", refused.Problems[0].Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("component,colour\nfence post,red\n", "an unknown column")]
    [InlineData("component,species\nfence post\n", "1 cells")]
    [InlineData("component,species\n", "no enquiries")]
    public void A_table_that_holds_no_enquiries_is_refused(string csv, string found) =>
        Assert.Contains(Assert.Throws<InputRefusedException>(() => Read(csv)).Problems, each => each.Found == found);

    private static string Said(Enquiry enquiry) => (enquiry with { UseClasses = [] }).ToString();
}
