using System.Text;
using Alburnum.Records.CaseFolders;

namespace Alburnum.Records.Tests.CaseFolders;

public sealed class CaseTextTests
{
    [Theory]
    [InlineData(
        "title: x\nrulebook: british-2014   # note\nclient: ä\n",
        "title: x\nrulebook: \"my.yaml\"   # note\nclient: ä\n"
    )]
    [InlineData(
        "title: x\r\nrulebook: 'british-2014'\r\nclient: y\r\n",
        "title: x\r\nrulebook: \"my.yaml\"\r\nclient: y\r\n"
    )]
    [InlineData(
        "batch: { rulebook: a, pieces: [1, 2] }\n\"rulebook\":\n  british-2014\n",
        "batch: { rulebook: a, pieces: [1, 2] }\n\"rulebook\":\n  \"my.yaml\"\n"
    )]
    [InlineData("{ title: ä𝄞, rulebook: \"a b\", client: y }", "{ title: ä𝄞, rulebook: \"my.yaml\", client: y }")]
    public void Another_rulebook_changes_nothing_else_in_the_text(string text, string expected) =>
        Assert.Equal(expected, Under(text, "my.yaml"));

    [Fact]
    public void A_name_with_quotes_in_it_stays_one_name() =>
        Assert.Equal("rulebook: \"a \\\"b\\\" \\\\c.yaml\"", Under("rulebook: x", "a \"b\" \\c.yaml"));

    private static string Under(string text, string rulebook) =>
        Encoding.UTF8.GetString(CaseText.UnderRulebook(Encoding.UTF8.GetBytes(text), rulebook).Span);
}
