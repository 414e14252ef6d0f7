using Alburnum.Reports.Handling;
using Alburnum.Reports.Json;

namespace Alburnum.Cli.Tests.Handling;

public sealed class ReagentCommandTests
{
    [Fact]
    public async Task A_limit_found_for_copper_says_nothing_of_zinc()
    {
        var zinc = (await Ask("--preservative", "zinc naphthenate")).Reagents.Single(each => each.Key == "pan");
        var copper = (await Ask("--preservative", "copper naphthenate")).Reagents.Single(each => each.Key == "pan");

        Assert.Equal((null, null, "not known"), (zinc.NotSeenMgPerKg, zinc.SeenMgPerKg, zinc.Detection));
        Assert.Equal((5.7, 14.2), (copper.NotSeenMgPerKg, copper.SeenMgPerKg));
        Assert.Contains("mg of Cu", copper.Detection, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_figure_stands_beside_a_limit_that_is_not_known()
    {
        var curcumin = Assert.Single((await Ask("--preservative", "boron")).Reagents);

        Assert.Equal("not known", curcumin.Detection);
        Assert.All(curcumin.CannotShow, says => Assert.DoesNotContain('%', says));
    }

    [Fact]
    public async Task Without_a_preservative_every_reagent_is_listed_by_what_it_shows()
    {
        var all = await Ask();
        var listed = await AlburnumRun.Of("reagent");

        Assert.Null(all.Preservative);
        Assert.True(all.Reagents.Count >= 9);
        Assert.Equal(["Cu", "Zn"], all.Reagents.Single(each => each.Key == "pan").Shows);
        Assert.Equal((0, ""), (listed.Status, listed.Errors));
        Assert.Contains("· B: boron, curcumin: treated wood red", listed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_no_reagent_here_shows_is_not_said_to_be_shown_by_none() =>
        Assert.EndsWith("Nothing known here shows its Cr, As.", (await Ask("--preservative", "CCA")).Answer);

    private static async Task<ReagentChoiceDocument> Ask(params string[] options) =>
        DocumentJson.Read<ReagentChoiceDocument>((await AlburnumRun.Of(["reagent", .. options, "--json"])).Output);
}
