using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Tests.Requirements;

public sealed class ShownWorksheetTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Theory]
    [InlineData("british-2014")]
    [InlineData("nordic-classes")]
    [InlineData("spanish-se-m")]
    public void What_a_worksheet_shows_of_a_cell_confirms_it_when_written_beside_it(string rulebook)
    {
        var (book, _, all) = ListUnread.Run(rulebook, Facts);
        var known = all.Where(cell => cell.Zone is not null || cell.Row.Demand is not UnknownCell).ToList();
        var lines = known.Select(cell =>
            Line(cell.Key, RequirementWords.Current.Rows.Now(cell)!, cell.Zone?.Provenance.Edition ?? book.Edition)
        );

        var filled = Fill(rulebook, lines);

        Assert.NotEmpty(known);
        Assert.Equal((known.Count, 0), (filled.Confirmed, filled.Written));
    }

    [Theory]
    [InlineData("in-ground-30", "1.2 × the critical value", "factor: \"1.2\"")]
    [InlineData("in-ground-15-sawn-resistant", "NP5: full penetration in the sapwood", "require: \"NP5\"")]
    public void Another_value_in_the_words_of_the_worksheet_is_read_as_it(string key, string value, string written) =>
        Assert.Contains(
            written,
            Fill("british-2014", [Line(key, value, "2011+A1:2014")]).Text,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("in-ground-15-sawn-resistant", "NP5: at least 6 mm in the sapwood")]
    [InlineData("in-ground-30", "at most 1.2 × the critical value")]
    public void Words_that_say_something_else_are_refused(string key, string value) =>
        Assert.Throws<InputRefusedException>(() => Fill("british-2014", [Line(key, value, "2011+A1:2014")]));

    private static string Line(string key, string value, string edition) =>
        $"{key},\"{value}\",{edition},table 4,,AB,2026-05-12\n";

    private static FilledIn Fill(string rulebook, IEnumerable<string> lines)
    {
        using var folder = new TemporaryFolder();
        var sheet = folder.Write("sheet.csv", "key,value,edition,table,page,initials,date\n" + string.Concat(lines));
        return FillRulebook.Run(
            rulebook,
            Table.Open(sheet, null),
            Facts,
            new(2026, 11, 29),
            RequirementWords.Current.Rows.Now
        );
    }
}
