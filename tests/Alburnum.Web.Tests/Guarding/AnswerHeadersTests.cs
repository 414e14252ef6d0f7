using System.Net;
using System.Net.Sockets;
using System.Text;
using Alburnum.Records.CaseFolders;
using Alburnum.Tests.Shared;

namespace Alburnum.Web.Tests.Guarding;

/// <summary>What every answer tells a browser, whatever was asked for.</summary>
public sealed class AnswerHeadersTests : IAsyncLifetime
{
    private Site? _site;
    private string _photograph = "";

    private Site Site => _site!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _site = await Site.OpenAsync();
        await Site.KeepAsync(new FolderFiles(Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case")));
        _photograph = $"/photographs/{await Site.PhotographOfAsync(1)}";
    }

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    [Fact]
    public async Task Every_answer_is_guarded_and_names_no_server()
    {
        List<HttpResponseMessage> answers = [];
        foreach (
            var address in new[]
            {
                "/",
                "/cases/1",
                "/cases/1/report.json",
                _photograph,
                "/assets/sheet.css",
                "/nowhere",
            }
        )
            answers.Add(await GetAsync(address));
        answers.Add(await Site.Browser.PutAsync(new Uri("/", UriKind.Relative), content: null, Stop));
        answers.Add(await Site.PostAsync("/cases/1", [], file: null));
        using (var elsewhere = new HttpRequestMessage(HttpMethod.Get, "/"))
        {
            elsewhere.Headers.Host = "elsewhere.example";
            answers.Add(await Site.Browser.SendAsync(elsewhere, Stop));
        }

        Assert.All(
            answers,
            answer =>
            {
                Assert.Equal("nosniff", Header(answer, "X-Content-Type-Options"));
                Assert.Equal("same-origin", Header(answer, "Referrer-Policy"));
                Assert.Equal("same-origin", Header(answer, "Cross-Origin-Opener-Policy"));
                Assert.Equal("same-origin", Header(answer, "Cross-Origin-Resource-Policy"));
                Assert.Contains(
                    "frame-ancestors 'none'",
                    Header(answer, "Content-Security-Policy"),
                    StringComparison.Ordinal
                );
                Assert.False(answer.Headers.Contains("Server"));
                Assert.False(answer.Headers.Contains("X-Powered-By"));
                Assert.DoesNotContain("asp", answer.Headers.ToString(), StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("blazor", answer.Headers.ToString(), StringComparison.OrdinalIgnoreCase);
                Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
            }
        );
    }

    [Fact]
    public async Task The_policy_allows_nothing_unsafe_and_no_script()
    {
        var policy = Header(await GetAsync("/"), "Content-Security-Policy");

        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("script-src", policy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/cases/1")]
    [InlineData("/cases/1/pieces/1")]
    [InlineData("/cases/1/report.json")]
    [InlineData("/cases/1/report.pdf")]
    [InlineData("/requirement")]
    [InlineData("/nowhere")]
    public async Task What_holds_a_clients_data_is_not_kept_by_the_browser(string address) =>
        Assert.True((await GetAsync(address)).Headers.CacheControl!.NoStore);

    [Theory]
    [InlineData("")]
    [InlineData("/upright")]
    public async Task A_photograph_is_kept_by_its_reader_alone_and_for_good(string which) =>
        Assert.Equal(
            "max-age=31536000, private, immutable",
            Header(await GetAsync(_photograph + which), "Cache-Control")
        );

    [Theory]
    [InlineData("/cases/1/report.json", "attachment; filename=case-1-run-1.json")]
    [InlineData("/cases/1/report.pdf", "inline; filename=case-1-run-1.pdf")]
    [InlineData("/api/requirement?component=fence%20post", "attachment; filename=answer.json")]
    [InlineData("/api/requirement?species=x%22%0d%0ay.exe", "attachment; filename=answer.json")]
    public async Task A_file_is_named_by_numbers_and_fixed_words(string address, string named) =>
        Assert.Equal(named, (await GetAsync(address)).Content.Headers.ContentDisposition!.ToString());

    [Theory]
    [InlineData("/")]
    [InlineData("/nowhere")]
    [InlineData("/photographs/none")]
    [InlineData("/cases/1/report.json")]
    [InlineData("/api/requirement?component=fence%20post")]
    [InlineData("/assets/sheet.css")]
    public async Task Text_says_in_which_characters_it_is_written(string address) =>
        Assert.Equal("utf-8", (await GetAsync(address)).Content.Headers.ContentType!.CharSet);

    [Theory]
    [InlineData("/")]
    [InlineData("/cases/1")]
    [InlineData("/cases/1/report.json")]
    [InlineData("/photographs/none")]
    [InlineData("/assets/sheet.css")]
    [InlineData("/api/requirement")]
    public async Task A_method_that_is_not_used_is_refused(string address)
    {
        foreach (var method in new[] { "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND" })
        {
            using var request = new HttpRequestMessage(new(method), address);
            using var answer = await Site.Browser.SendAsync(request, Stop);
            Assert.Equal((method, HttpStatusCode.MethodNotAllowed), (method, answer.StatusCode));
        }
    }

    [Theory]
    [InlineData("GET / HTTP/1.1\r\nHost:\r\nConnection: close\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nConnection: close\r\n\r\n")]
    [InlineData("GET / HTTP/1.0\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost: 127.0.0.1.elsewhere.example\r\nConnection: close\r\n\r\n")]
    public async Task A_request_under_no_name_or_another_is_refused(string request) =>
        Assert.StartsWith("HTTP/1.1 400", await AnswerToAsync(request), StringComparison.Ordinal);

    [Fact]
    public async Task An_address_and_headers_beyond_measure_are_refused()
    {
        var host = $"Host: {Site.Browser.BaseAddress!.Authority}\r\nConnection: close\r\n";

        Assert.StartsWith(
            "HTTP/1.1 414",
            await AnswerToAsync($"GET /?{new string('a', 9000)} HTTP/1.1\r\n{host}\r\n"),
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "HTTP/1.1 431",
            await AnswerToAsync($"GET / HTTP/1.1\r\n{host}X-Long: {new string('a', 40_000)}\r\n\r\n"),
            StringComparison.Ordinal
        );
    }

    private async Task<string> AnswerToAsync(string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", Site.Browser.BaseAddress!.Port, Stop);
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(request), Stop);
        var start = new byte[12];
        var read = await client.GetStream().ReadAtLeastAsync(start, start.Length, throwOnEndOfStream: false, Stop);
        return Encoding.ASCII.GetString(start, 0, read);
    }

    private async Task<HttpResponseMessage> GetAsync(string address) =>
        await Site.Browser.GetAsync(new Uri(address, UriKind.Relative), Stop);

    private static string Header(HttpResponseMessage answer, string name) =>
        Assert.Single(answer.Headers.GetValues(name));
}
