using Alburnum.Records.Tables;

namespace Alburnum.Records.Tests.Tables;

public sealed class SpreadsheetTextTests
{
    [Theory]
    [InlineData("=1+1")]
    [InlineData("=HYPERLINK(\"http://elsewhere.example\")")]
    [InlineData("+1+1")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\r=1")]
    public void A_text_that_begins_as_a_formula_does_is_written_as_text(string cell) =>
        Assert.Equal($"'{cell}", SpreadsheetText.Inert(cell));

    [Theory]
    [InlineData("-2.5")]
    [InlineData("+3")]
    [InlineData("-1E-05")]
    [InlineData("6 mm")]
    [InlineData("a=b")]
    [InlineData("")]
    public void A_number_stays_a_number_and_other_text_as_it_is(string cell) =>
        Assert.Equal(cell, SpreadsheetText.Inert(cell));
}
