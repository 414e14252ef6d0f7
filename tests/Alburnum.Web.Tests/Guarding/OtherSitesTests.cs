using System.Net;
using Alburnum.Records.CaseFolders;
using Alburnum.Tests.Shared;

namespace Alburnum.Web.Tests.Guarding;

/// <summary>What pages of other sites may have done here: nothing that costs, and nothing that changes.</summary>
public sealed class OtherSitesTests : IAsyncLifetime
{
    private Site? _site;
    private string _sha256 = "";

    private Site Site => _site!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _site = await Site.OpenAsync();
        await Site.KeepAsync(new FolderFiles(Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case")));
        _sha256 = await Site.PhotographOfAsync(1);
    }

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    [Theory]
    [InlineData("/cases/1/pieces/1", "cross-site")]
    [InlineData("/cases/1/pieces/1", "same-site")]
    [InlineData("/cases/1/report.pdf", "cross-site")]
    [InlineData("/cases/1/report.pdf", "same-site")]
    [InlineData("/photographs/{sha256}/upright", "cross-site")]
    [InlineData("/photographs/{sha256}/upright", "same-site")]
    [InlineData("/api/requirement?component=fence%20post", "cross-site")]
    [InlineData("/api/requirement?component=fence%20post", "same-site")]
    public async Task A_page_of_another_site_starts_no_reading(string address, string site)
    {
        foreach (var destination in new[] { "document", "image", "iframe", "empty" })
            Assert.Equal(HttpStatusCode.Forbidden, (await AskedFromAsync(address, site, destination)).StatusCode);
    }

    [Theory]
    [InlineData("/photographs/{sha256}", "cross-site")]
    [InlineData("/photographs/{sha256}", "same-site")]
    [InlineData("/assets/sheet.css", "cross-site")]
    [InlineData("/assets/sheet.css", "same-site")]
    [InlineData("/cases/1/report.json", "cross-site")]
    [InlineData("/cases/1/report.json", "same-site")]
    [InlineData("/cases/1", "cross-site")]
    [InlineData("/cases/1", "same-site")]
    public async Task A_page_of_another_site_uses_nothing_that_is_served(string address, string site)
    {
        foreach (var destination in new[] { "image", "style", "script", "iframe", "empty" })
            Assert.Equal(HttpStatusCode.Forbidden, (await AskedFromAsync(address, site, destination)).StatusCode);
    }

    [Theory]
    [InlineData("/", "cross-site")]
    [InlineData("/", "same-site")]
    [InlineData("/cases/1", "cross-site")]
    [InlineData("/cases/1", "same-site")]
    [InlineData("/requirement", "cross-site")]
    [InlineData("/requirement", "same-site")]
    public async Task A_link_from_elsewhere_leads_to_a_page_that_costs_nothing(string address, string site) =>
        Assert.Equal(HttpStatusCode.OK, (await AskedFromAsync(address, site, "document")).StatusCode);

    [Theory]
    [InlineData("same-origin")]
    [InlineData("none")]
    public async Task A_page_from_here_and_an_address_that_was_typed_are_answered(string site)
    {
        foreach (var address in new[] { "/cases/1/pieces/1", "/photographs/{sha256}/upright", "/cases/1/report.pdf" })
            Assert.Equal(HttpStatusCode.OK, (await AskedFromAsync(address, site, "document")).StatusCode);
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    [InlineData("Origin", "http://elsewhere.example")]
    [InlineData("Origin", "null")]
    public async Task A_form_of_another_site_changes_nothing(string header, string value)
    {
        Site.Browser.DefaultRequestHeaders.Add(header, value);
        foreach (var address in new[] { "/cases/1", "/cases/1/pieces/1/marks", "/api/cases/1/rulebook" })
            Assert.Equal(
                HttpStatusCode.Forbidden,
                (await Site.PostAsync(address, [new("rulebook", "british-2014")], file: null)).StatusCode
            );

        Assert.Single(await Site.Store.RunsAsync(1, Stop));
    }

    private async Task<HttpResponseMessage> AskedFromAsync(string address, string site, string destination)
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Get,
            address.Replace("{sha256}", _sha256, StringComparison.Ordinal)
        );
        request.Headers.Add("Sec-Fetch-Site", site);
        request.Headers.Add("Sec-Fetch-Mode", destination is "document" or "iframe" ? "navigate" : "no-cors");
        request.Headers.Add("Sec-Fetch-Dest", destination);
        return await Site.Browser.SendAsync(request, Stop);
    }
}
