using System.Text;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Alburnum.Browser;

/// <summary>Asking what is required, at a desk and on a telephone.</summary>
public sealed class RequirementPageTests(OrchardPosts orchard) : IClassFixture<OrchardPosts>
{
    private const string Own = """
        basedOn: british-2014
        confirmed:
          - { key: in-ground-15-sawn-permeable, edition: "2011+A1:2014", table: table 4, page: "17", initials: AB, date: 2026-05-12 }
        """;

    [Theory]
    [InlineData(390)]
    [InlineData(1440)]
    public async Task A_question_filled_in_is_answered_and_stands_in_the_address(int screenPx)
    {
        var page = await orchard.Cases.OpenAsync("/", screenPx);
        await page.GetByRole(AriaRole.Link, new() { Name = "Requirement" }).ClickAsync();
        await FillAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask" }).ClickAsync();

        await Assertions.Expect(page.Locator(".finding-word")).ToHaveTextAsync("Required");
        await Assertions.Expect(page.Locator(".finding")).ToBeInViewportAsync();
        Assert.Contains("component=deck%20joist", page.Url, StringComparison.Ordinal);
        await Assertions.Expect(page.GetByLabel("Component")).ToHaveValueAsync("deck joist");
        var rows = page.Locator("details", new() { HasText = "in-ground-15-sawn-permeable" }).First;
        await Assertions.Expect(rows.GetByRole(AriaRole.List)).ToBeHiddenAsync();
        await rows.Locator("summary").ClickAsync();
        await Assertions.Expect(rows.GetByRole(AriaRole.List)).ToBeVisibleAsync();
        await IsSoundAsync(page, screenPx);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1440)]
    public async Task A_rulebook_file_of_ones_own_is_asked_and_a_wrong_one_is_refused_beside_its_field(int screenPx)
    {
        var page = await orchard.Cases.OpenAsync("/requirement", screenPx);
        await FillAsync(page);
        await ChooseAsync(page, Own.Replace("in-ground-15", "nowhere", StringComparison.Ordinal));
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("my.yaml");
        await Assertions.Expect(page.Locator("#own-rulebook-wrong")).ToContainTextAsync("my.yaml, line 3");
        await IsSoundAsync(page, screenPx);

        await ChooseAsync(page, Own);
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Note)).ToContainTextAsync("my.yaml");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("confirmed against a copy, AB, 2026-05-12");
        await IsSoundAsync(page, screenPx);
    }

    private static async Task FillAsync(IPage page)
    {
        await page.GetByLabel("Component").FillAsync("deck joist");
        await page.GetByLabel("Species").FillAsync("Scots pine");
        await page.GetByLabel("Section").FillAsync("47x150");
        await page.GetByLabel("Use class").FillAsync("4");
    }

    private static Task ChooseAsync(IPage page, string text) =>
        page.GetByLabel("Or a rulebook file of your own")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "my.yaml",
                    MimeType = "application/yaml",
                    Buffer = Encoding.UTF8.GetBytes(text),
                }
            );

    private static async Task IsSoundAsync(IPage page, int screenPx)
    {
        Assert.Empty((await page.RunAxe()).Violations.Select(fault => $"{fault.Id}: {fault.Help}"));
        Assert.Equal(screenPx, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
    }
}
