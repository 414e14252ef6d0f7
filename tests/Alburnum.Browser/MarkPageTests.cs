using System.Globalization;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Alburnum.Browser;

/// <summary>A photograph marked by hand in a real browser: click, see the result, take back, keep.</summary>
public sealed class MarkPageTests(OrchardPosts orchard) : IClassFixture<OrchardPosts>
{
    private const string Sheet = "/cases/1";
    private const string Piece = $"{Sheet}/pieces/2";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(1500, 960)]
    [InlineData(1300, 640)]
    [InlineData(390, 356)]
    public async Task A_click_lands_where_the_finger_is_on_any_screen(int screenPx, int pictureWidthPx)
    {
        var page = await orchard.Cases.OpenAsync(Piece, screenPx);
        var picture = page.Locator(".aim input:visible");
        Assert.Equal(pictureWidthPx, (await picture.BoundingBoxAsync())!.Width, tolerance: 0.01);

        await page.GetByLabel("Leave out").First.CheckAsync();
        await ClickAsync(picture, 0.25, 0.5);

        // The photograph has 2000 × 1500 pixels.
        var points = page.GetByRole(AriaRole.Textbox, new() { Name = "Leave out" });
        await Assertions.Expect(points).Not.ToHaveValueAsync("");
        var point = await points.InputValueAsync();
        var at = point.Split(',').Select(each => double.Parse(each, CultureInfo.InvariantCulture)).ToList();
        var pixelsPerScreenPixel = 2000.0 / pictureWidthPx;
        Assert.Equal(500, at[0], tolerance: 1.5 * pixelsPerScreenPixel);
        Assert.Equal(750, at[1], tolerance: 1.5 * pixelsPerScreenPixel);
    }

    [Fact]
    public async Task A_stretch_pointed_out_is_left_out_at_once_taken_back_and_put_again_then_kept_as_a_new_run()
    {
        var page = await orchard.Cases.OpenAsync(Sheet);
        await page.GetByRole(AriaRole.Link, new() { Name = "Point out on the photograph of piece P01" }).ClickAsync();
        await Assertions.Expect(Heading(page, "As it was read")).ToBeVisibleAsync();
        var kept = await LastAsync();
        // Within the treated border, from the reading's own outline: a little inwards from the middle of the first face.
        var (x, y) = Within(kept.Pieces[0].Reading);

        await page.GetByLabel("Leave out").First.CheckAsync();
        await ClickAsync(page.Locator(".aim input:visible"), x, y);
        await Assertions.Expect(Heading(page, "Read with these points")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Columnheader, new() { Name = "Kept" })).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo the last point" }).ClickAsync();
        await Assertions.Expect(Heading(page, "As it was read")).ToBeVisibleAsync();
        await page.GoBackAsync();
        await Assertions.Expect(Heading(page, "Read with these points")).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Keep, and judge the case again" }).ClickAsync();
        await page.WaitForURLAsync("**" + Sheet + "#piece-1");
        await Assertions
            .Expect(page.GetByRole(AriaRole.Article, new() { Name = "Piece P01" }))
            .ToContainTextAsync("Pointed out by hand: one place to be left out.");

        var again = await LastAsync();
        Assert.Equal(2, (await orchard.Cases.Store.RunsAsync(1, Stop)).Count);
        Assert.True(LeftOut(again) > LeftOut(kept), "Nothing more is left out.");
        Assert.Equal(
            kept.Pieces.Skip(1).Select(piece => piece.Reading.Depth),
            again.Pieces.Skip(1).Select(piece => piece.Reading.Depth)
        );
        // The first run is still there as it was.
        await page.GetByRole(AriaRole.Region, new() { Name = "Runs" }).GetByRole(AriaRole.Link).First.ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Note)).ToContainTextAsync("run 1 of 2");
        await Assertions
            .Expect(page.GetByRole(AriaRole.Article, new() { Name = "Piece P01" }))
            .Not.ToContainTextAsync("Pointed out by hand");
    }

    [Fact]
    public async Task Corners_clicked_roughly_in_any_order_find_the_section()
    {
        var reading = (await LastAsync()).Pieces[1].Reading;
        var page = await orchard.Cases.OpenAsync(Piece);
        var corners = reading.CornersPx!;
        int[] order = [0, 2, 1];
        foreach (var k in order)
        {
            await ClickAsync(
                page.Locator(".aim input:visible"),
                (corners[k][0] + 8) / 2000,
                (corners[k][1] - 7) / 1500
            );
        }
        await Assertions.Expect(page.GetByText("Three of four corners: used once all are given.")).ToBeVisibleAsync();
        await ClickAsync(page.Locator(".aim input:visible"), (corners[3][0] + 8) / 2000, (corners[3][1] - 7) / 1500);

        var row = page.GetByRole(AriaRole.Row, new() { NameRegex = new("^mean ") });
        await Assertions.Expect(row.GetByRole(AriaRole.Cell)).Not.ToHaveCountAsync(0);
        var means = await row.GetByRole(AriaRole.Cell).AllInnerTextsAsync();
        Assert.Equal(Number(means[1]), Number(means[0]), tolerance: 0.3);
    }

    [Fact]
    public async Task Points_can_be_typed_and_the_enter_key_reads_them_without_adding_one()
    {
        var page = await orchard.Cases.OpenAsync(Piece);
        var treated = page.GetByRole(AriaRole.Textbox, new() { Name = "Treated", Exact = true });
        await treated.FillAsync("1000,750");
        await treated.PressAsync("Enter");

        await Assertions.Expect(Heading(page, "Read with these points")).ToBeVisibleAsync();
        await Assertions.Expect(treated).ToHaveValueAsync("1000,750");
        await Assertions
            .Expect(page.GetByRole(AriaRole.Textbox, new() { Name = "Corner or rim" }))
            .ToHaveValueAsync("");

        await treated.FillAsync("1000;soon");
        await treated.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("expected points as x,y");
        await Assertions
            .Expect(page.GetByRole(AriaRole.Button, new() { Name = "Keep, and judge the case again" }))
            .ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData("")]
    [InlineData("?next=pith&corners=10,10&treated=900,700&pith=500,500")]
    [InlineData("?next=pith&treated=nowhere")]
    public async Task The_page_has_no_fault_of_accessibility(string query)
    {
        foreach (var screenPx in new[] { 1300, 390 })
        {
            var page = await orchard.Cases.OpenAsync(Piece + query, screenPx);

            var budget = page.GetByText("What makes the depths uncertain");
            if (await budget.CountAsync() > 0)
                await budget.ClickAsync();

            var found = await page.RunAxe();

            Assert.Empty(found.Violations.Select(fault => $"{screenPx}: {fault.Id}: {fault.Help}"));
            Assert.Equal(screenPx, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        }
    }

    private async Task<CaseDocument> LastAsync() =>
        DocumentJson.Read<CaseDocument>((await orchard.Cases.Store.RunAsync(1, null, Stop))!.Document);

    private static ILocator Heading(IPage page, string name) => page.GetByRole(AriaRole.Heading, new() { Name = name });

    // A click asks for the page anew, with one point more in its address; what is done next is done there.
    private static async Task ClickAsync(ILocator picture, double x, double y)
    {
        var before = picture.Page.Url;
        var box = (await picture.BoundingBoxAsync())!;
        await picture.ClickAsync(
            new()
            {
                Position = new() { X = (float)(x * box.Width), Y = (float)(y * box.Height) },
            }
        );
        await Assertions.Expect(picture.Page).Not.ToHaveURLAsync(before);
        await picture.Page.WaitForLoadStateAsync();
    }

    // A share of the photograph's width and height.
    private static (double X, double Y) Within(ReadingDocument reading)
    {
        var (a, b, c) = (reading.CornersPx![0], reading.CornersPx[1], reading.CornersPx[2]);
        double At(int axis) => ((a[axis] + b[axis]) / 2) + (0.03 * (c[axis] - b[axis]));
        return (At(0) / reading.WidthPx!.Value, At(1) / reading.HeightPx!.Value);
    }

    private static int LeftOut(CaseDocument document) =>
        document.Pieces[0].Reading.Faces.Sum(face => face.Excluded.Count(excluded => excluded));

    private static double Number(string measured) => double.Parse(measured.Split(' ')[0], CultureInfo.InvariantCulture);
}
