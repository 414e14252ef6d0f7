using System.Text;
using Alburnum.Imaging.Reading;
using Alburnum.Reports.Words;
using Alburnum.Tests.Shared;

namespace Alburnum.Reports.Tests.Words;

public sealed class UncertaintyCausesTests
{
    private const string Begin = "<!-- causes: written by ./test --write-uncertainty-causes; do not edit by hand -->\n";
    private const string End = "<!-- end of causes -->";

    [Fact]
    public void The_table_of_causes_in_the_docs_is_the_one_in_the_code()
    {
        var page = File.ReadAllText(Repository.At("docs", "science", "reading-sections.md"));
        var (from, to) = (
            page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length,
            page.IndexOf(End, StringComparison.Ordinal)
        );
        if (Environment.GetEnvironmentVariable("ALBURNUM_WRITE_UNCERTAINTY_CAUSES") is { Length: > 0 } path)
        {
            File.WriteAllText(path, page[..from] + Table() + page[to..]);
            return;
        }

        Assert.Equal(Table(), page[from..to]);
    }

    private static string Table()
    {
        var table = new StringBuilder("\n| cause | how large | type | standing | source |\n|---|---|---|---|---|\n");
        foreach (var cause in DepthCauses.All)
        {
            table.Append(
                $"| {ReadingWords.Cause(cause)} | {ReadingWords.Size(cause)} | {cause.Type} | {Wording.Current.Say(cause.Provenance.Standing)} | {cause.Provenance.Citation} |\n"
            );
        }
        return table.Append('\n').ToString();
    }
}
