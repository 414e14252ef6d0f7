using System.Globalization;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Alburnum.Browser;

/// <summary>The case sheet in a real browser, from the user's side.</summary>
public sealed class CaseSheetTests(OrchardPosts orchard) : IClassFixture<OrchardPosts>
{
    [Fact]
    public async Task A_reader_goes_from_the_list_to_the_sheet_and_finds_the_verdict()
    {
        var page = await Open("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Orchard posts" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Orchard posts" })).ToBeVisibleAsync();
        var verdict = page.GetByRole(AriaRole.Region, new() { Name = "Verdict" });
        await Assertions.Expect(verdict).ToContainTextAsync("Penetration rule met");
    }

    [Fact]
    public async Task Every_photograph_is_loaded_and_bears_its_outline()
    {
        var page = await Open("/cases/1");

        var pieces = page.GetByRole(AriaRole.Article);
        await Assertions.Expect(pieces).ToHaveCountAsync(8);
        foreach (var photograph in await page.GetByAltText("Photograph of the sprayed cut end").AllAsync())
        {
            await photograph.ScrollIntoViewIfNeededAsync();
            await Assertions.Expect(photograph).Not.ToHaveJSPropertyAsync("naturalWidth", 0);
        }
        await Assertions
            .Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("Outline and boundary") }))
            .ToHaveCountAsync(8);
    }

    [Fact]
    public async Task What_makes_a_piece_uncertain_opens_on_the_sheet_and_adds_up()
    {
        var page = await Open("/cases/1");
        var piece = page.GetByRole(AriaRole.Article, new() { Name = "Piece P01" });
        var causes = piece.GetByRole(AriaRole.Table);
        await Assertions.Expect(causes).ToBeHiddenAsync();

        await piece.GetByText("What makes the depths uncertain").ClickAsync();

        await Assertions.Expect(causes).ToBeVisibleAsync();
        for (var column = 1; column <= 2; column++)
        {
            var cells = await causes.Locator($"tbody tr td:nth-child({column + 1})").AllInnerTextsAsync();
            var numbers = cells.Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToList();
            Assert.True(numbers.Count > 5, "A few causes at least.");
            var together = Math.Sqrt(numbers.SkipLast(1).Sum(each => each * each));
            Assert.Equal(together, numbers[^1], tolerance: 0.005);
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/cases/1")]
    public async Task A_page_has_no_fault_of_accessibility(string address)
    {
        var page = await Open(address);

        var found = await page.RunAxe();

        Assert.Empty(found.Violations.Select(fault => $"{fault.Id}: {fault.Help}"));
    }

    [Fact]
    public async Task A_page_asks_nothing_of_any_other_place()
    {
        var asked = new List<string>();
        var page = await orchard.Cases.Browser.NewPageAsync();
        page.Request += (_, request) => asked.Add(request.Url);
        await page.GotoAsync(orchard.Cases.Address + "/cases/1", new() { WaitUntil = WaitUntilState.NetworkIdle });

        Assert.NotEmpty(asked);
        Assert.All(asked, url => Assert.StartsWith(orchard.Cases.Address, url, StringComparison.Ordinal));
    }

    private Task<IPage> Open(string address) => orchard.Cases.OpenAsync(address);
}
