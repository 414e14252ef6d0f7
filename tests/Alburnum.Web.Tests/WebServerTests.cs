using System.Net;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;
using Microsoft.AspNetCore.Builder;

namespace Alburnum.Web.Tests;

/// <summary>The application on a real port, asked as a browser asks.</summary>
public sealed class WebServerTests : IAsyncLifetime
{
    private static readonly byte[] Jpeg = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3];
    private readonly TemporaryFolder _folder = new();
    private readonly HttpClient _browser = new();
    private WebApplication? _app;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var store = await CaseStore.KeepAsync(_folder.At("cases.db"), _ => { }, Stop);
        await store.AddAsync(
            new CaseRecord(
                "T-1",
                "Posts <b>bold</b>",
                "Thornhollow estate",
                new DateTime(2026, 5, 12, 12, 0, 0, DateTimeKind.Utc),
                "conforms",
                "{\"format\": \"x\"}",
                [Photograph.Of("P01.jpg", Jpeg)],
                []
            ),
            _ => Task.CompletedTask,
            Stop
        );
        _app = WebServer.Create(store, new FactLibrary(Repository.At("data")), port: 0);
        await _app.StartAsync(Stop);
        _browser.BaseAddress = new Uri(_app.Urls.First());
    }

    public async ValueTask DisposeAsync()
    {
        await _app!.DisposeAsync();
        _browser.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void The_application_listens_on_this_machine_only() =>
        Assert.All(_app!.Urls, url => Assert.StartsWith("http://127.0.0.1:", url, StringComparison.Ordinal));

    [Fact]
    public async Task The_first_page_lists_the_cases_with_their_names_escaped()
    {
        var page = await _browser.GetStringAsync(new Uri("/", UriKind.Relative), Stop);

        Assert.Contains("T-1", page, StringComparison.Ordinal);
        Assert.Contains("Posts &lt;b&gt;bold&lt;/b&gt;", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_of_a_case_shows_what_was_expected_beside_what_was_measured()
    {
        var facts = new FactLibrary(Repository.At("data"));
        var files = new FolderFiles(Repository.At("tests", "Alburnum.Cli.Tests", "Approved", "input", "paddock-posts"));
        var run = await RunCase.JudgeAsync(files, facts, progress: null, Stop);
        var document = CaseMapping.From(run, facts.Cautions, "Alburnum", DateTime.UnixEpoch);
        await RunCase.KeepAsync(
            run,
            new(document.RunAt, DocumentJson.Write(document), _ => Task.CompletedTask),
            await CaseStore.KeepAsync(_folder.At("cases.db"), _ => { }, Stop),
            Stop
        );

        var page = WebUtility.HtmlDecode(
            await _browser.GetStringAsync(new Uri("/cases/TH-2026-031", UriKind.Relative), Stop)
        );

        Assert.All(
            ExpectationMapping.Rows(document),
            row => Assert.Contains($"<dt>{row.Name}</dt><dd>{row.Value}</dd>", page, StringComparison.Ordinal)
        );
        Assert.Contains(Assert.Single(document.Remarks!), page, StringComparison.Ordinal);
        Assert.All(document.Cautions, caution => Assert.Contains(caution, page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_photograph_comes_back_byte_for_byte_under_its_fingerprint()
    {
        var answer = await Get($"/photographs/{Photograph.Of("P01.jpg", Jpeg).Sha256}");

        Assert.Equal("image/jpeg", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(Jpeg, await answer.Content.ReadAsByteArrayAsync(Stop));
    }

    [Fact]
    public async Task A_damaged_photograph_is_refused_in_words_and_not_remembered()
    {
        var sha256 = Photograph.Of("P01.jpg", Jpeg).Sha256;
        var file = _folder.At(Path.Combine("cases.photographs", sha256[..2], sha256));
        await File.WriteAllBytesAsync(file, [.. Jpeg, 0], Stop);

        var answer = await Get($"/photographs/{sha256}");

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.StartsWith(
            $"{file}, field photograph: found a damaged file",
            await answer.Content.ReadAsStringAsync(Stop)
        );
        Assert.True(answer.Headers.CacheControl!.NoStore);
    }

    [Fact]
    public async Task The_result_document_is_served_as_it_was_kept() =>
        Assert.Equal(
            "{\"format\": \"x\"}",
            await _browser.GetStringAsync(new Uri("/cases/T-1/report.json", UriKind.Relative), Stop)
        );

    [Theory]
    [InlineData("/cases/none")]
    [InlineData("/cases/none/report.json")]
    [InlineData("/photographs/none")]
    [InlineData("/assets/..%2f..%2fsecret")]
    [InlineData("/nowhere")]
    public async Task What_is_not_there_is_not_found(string address) =>
        Assert.Equal(HttpStatusCode.NotFound, (await Get(address)).StatusCode);

    [Fact]
    public async Task A_page_asked_for_under_another_sites_name_is_refused()
    {
        using var ask = new HttpRequestMessage(HttpMethod.Get, "/");
        ask.Headers.Host = "elsewhere.example";

        Assert.Equal(HttpStatusCode.BadRequest, (await _browser.SendAsync(ask, Stop)).StatusCode);
    }

    [Fact]
    public async Task Pages_may_load_nothing_from_elsewhere()
    {
        var policy = Assert.Single((await Get("/")).Headers.GetValues("Content-Security-Policy"));

        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
    }

    private Task<HttpResponseMessage> Get(string address) =>
        _browser.GetAsync(new Uri(address, UriKind.Relative), Stop);
}
