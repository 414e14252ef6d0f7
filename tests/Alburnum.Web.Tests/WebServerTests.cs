using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Handling;
using Alburnum.Reports.Json;
using Alburnum.Reports.Words;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;
using Alburnum.Workflows.Handling;
using Microsoft.AspNetCore.Builder;

namespace Alburnum.Web.Tests;

/// <summary>The application on a real port, asked as a browser asks.</summary>
public sealed partial class WebServerTests : IAsyncLifetime
{
    private static readonly byte[] Jpeg = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3];
    private readonly TemporaryFolder _folder = new();
    private readonly HttpClient _browser = new();
    private WebApplication? _app;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var store = await CaseStore.KeepAsync(_folder.At("cases.db"), Person.OfSystem, _ => { }, Stop);
        await store.AddAsync(
            new CaseRecord(
                "TH/2026/011 .?#",
                "Posts <b>bold</b>",
                "Thornhollow estate",
                new DateTime(2026, 5, 12, 12, 0, 0, DateTimeKind.Utc),
                Verdict.Conforms,
                "{\"format\": \"x\"}",
                [Photograph.Of("P01.jpg", Jpeg)],
                []
            ),
            FilesTogether.None,
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

    [Theory]
    [InlineData("GET", "/photographs/none", HttpStatusCode.NotFound)]
    [InlineData("GET", "/cases/1/pieces/1/marks", HttpStatusCode.MethodNotAllowed)]
    [InlineData("POST", "/", HttpStatusCode.BadRequest)]
    public async Task An_answer_without_a_page_says_in_a_sentence_what_is_wrong(
        string method,
        string address,
        HttpStatusCode status
    )
    {
        using var request = new HttpRequestMessage(new(method), address);
        using var answer = await _browser.SendAsync(request, Stop);

        Assert.Equal(status, answer.StatusCode);
        Assert.EndsWith(".", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/cases/1/report.json")]
    public async Task The_head_of_a_page_can_be_had_alone(string address)
    {
        using var request = new HttpRequestMessage(HttpMethod.Head, address);
        using var answer = await _browser.SendAsync(request, Stop);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("", await answer.Content.ReadAsStringAsync(Stop));
    }

    [Fact]
    public async Task The_first_page_lists_the_cases_with_their_names_escaped()
    {
        var page = await _browser.GetStringAsync(new Uri("/", UriKind.Relative), Stop);

        Assert.Contains("TH/2026/011 .?#", page, StringComparison.Ordinal);
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
            new(document.RunAt, DocumentJson.Write(document), FilesTogether.None),
            await CaseStore.KeepAsync(_folder.At("cases.db"), Person.OfSystem, _ => { }, Stop),
            Stop
        );

        var page = WebUtility.HtmlDecode(await _browser.GetStringAsync(new Uri("/cases/2", UriKind.Relative), Stop));

        Assert.All(
            ExpectationMapping.Rows(document),
            row => Assert.Contains($"<dt>{row.Name}</dt><dd>{row.Value}</dd>", page, StringComparison.Ordinal)
        );
        Assert.Contains(Assert.Single(document.Remarks!), page, StringComparison.Ordinal);
        Assert.All(document.Cautions, caution => Assert.Contains(caution, page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_page_says_what_shows_a_preservative_and_what_does_not()
    {
        var copper = await Page("/reagents?preservative=copper%20azole");
        var organic = await Page("/reagents?preservative=permethrin");

        Assert.Contains("copper, chrome azurol S", copper, StringComparison.Ordinal);
        Assert.Contains("between 14.2 and 28.5 mg", copper, StringComparison.Ordinal);
        Assert.Contains("permethrin: no spray known here shows it", organic, StringComparison.Ordinal);
        Assert.Contains("extracted with solvent", organic, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_no_preservative_is_named_the_page_lists_the_reagents_as_the_command_does()
    {
        var page = await Page("/reagents");

        var listed = HandlingText.Lines(HandlingMapping.From(ChooseReagent.All(Site.Facts))).ToList();
        Assert.Contains(listed[0], page, StringComparison.Ordinal);
        Assert.All(listed.Skip(1), line => Assert.Contains($"<li>{line[2..]}</li>", page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_page_that_refuses_a_preservative_lists_nothing() =>
        Assert.DoesNotContain("<li>Cu:", await Page("/reagents?preservative=moonlight"), StringComparison.Ordinal);

    [Fact]
    public async Task A_page_answers_what_comes_with_treated_timber_by_preservative_and_place()
    {
        var page = await Page("/handling?about=waste&preservative=CCA&place=Germany");

        Assert.Contains("A IV", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Britain: since", page, StringComparison.Ordinal);
        Assert.Contains("found \"Mars\"", await Page("/handling?about=waste&place=Mars"), StringComparison.Ordinal);
    }

    private async Task<string> Page(string address) =>
        WebUtility.HtmlDecode(await _browser.GetStringAsync(new Uri(address, UriKind.Relative), Stop));

    [Fact]
    public async Task The_page_of_letters_answers_each_of_them()
    {
        var page = WebUtility.HtmlDecode(await _browser.GetStringAsync(new Uri("/letters", UriKind.Relative), Stop));

        Assert.All(
            new FactLibrary(Repository.At("data")).Letters,
            letter =>
            {
                Assert.Contains($"id=\"{letter.Key}\"", page, StringComparison.Ordinal);
                Assert.All(letter.Answer, paragraph => Assert.Contains(paragraph, page, StringComparison.Ordinal));
                Assert.All(letter.Points, point => Assert.Contains(point.Value, page, StringComparison.Ordinal));
            }
        );
    }

    [Fact]
    public async Task The_page_of_a_case_lists_what_it_leaves_out_and_leads_from_a_pattern_to_its_letter()
    {
        var facts = new FactLibrary(Repository.At("data"));
        var files = new FolderFiles(Repository.At("tests", "Alburnum.Cli.Tests", "Approved", "input", "yard-joists"));
        var run = await RunCase.JudgeAsync(files, facts, progress: null, Stop);
        var document = CaseMapping.From(run, facts.Cautions, "Alburnum", DateTime.UnixEpoch);
        PatternDocument skin = new()
        {
            Kind = "thin_skin",
            LooksLike = "It looks like a skin.",
            WouldConfirm = "An assay.",
            Letter = "green-skin",
        };
        var (first, rest) = (document.Pieces[0], document.Pieces.Skip(1));
        document = document with
        {
            Pieces = [first with { Reading = first.Reading with { Patterns = [skin] } }, .. rest],
        };
        await RunCase.KeepAsync(
            run,
            new(document.RunAt, DocumentJson.Write(document), FilesTogether.None),
            await CaseStore.KeepAsync(_folder.At("cases.db"), Person.OfSystem, _ => { }, Stop),
            Stop
        );

        var page = WebUtility.HtmlDecode(await _browser.GetStringAsync(new Uri("/cases/2", UriKind.Relative), Stop));

        var leftOut = Assert.Single(document.LeftOut);
        Assert.Contains(leftOut.InWords, page, StringComparison.Ordinal);
        Assert.Contains($"/photographs/{leftOut.Sha256}/upright", page, StringComparison.Ordinal);
        Assert.Contains("It looks like a skin. An assay.", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/letters#green-skin\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pages_say_everything_in_the_language_in_which_the_server_was_started()
    {
        Wording.Add(Wording.Read(BracketedLanguage.Name, BracketedLanguage.File()));
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(BracketedLanguage.Name);
        var facts = new FactLibrary(Repository.At("data"));
        var store = await CaseStore.KeepAsync(_folder.At("second.db"), Person.OfSystem, _ => { }, Stop);
        var run = await RunCase.JudgeAsync(
            new FolderFiles(Repository.At("examples", "barn-purlins")),
            facts,
            progress: null,
            Stop
        );
        var document = CaseMapping.From(run, facts.Cautions, "", DateTime.UnixEpoch);
        for (var kept = 0; kept < 2; kept++)
            await RunCase.KeepAsync(
                run,
                new(document.RunAt, DocumentJson.Write(document), FilesTogether.None),
                store,
                Stop
            );
        await using var app = WebServer.Create(store, facts, port: 0);
        await app.StartAsync(Stop);
        using var browser = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
        var data = await File.ReadAllTextAsync(Repository.At("examples", "barn-purlins", "case.yaml"), Stop);
        const string question =
            "?component=fence%20post&section=75x75&useClass=4&serviceLife=30&species=Norway%20spruce";
        var asked = await browser.GetStringAsync(new Uri($"/api/requirement{question}", UriKind.Relative), Stop);
        // What comes from the facts and the case is in the language of its maker.
        var (enquiry, requirement) = (document.Enquiry, document.Requirement);
        var ofData = new[]
        {
            "Alburnum report.pdf report.json case.yaml",
            data,
            enquiry.Component,
            enquiry.Species,
            enquiry.BotanicalName,
            requirement.Rulebook,
            requirement.AnalyticalZone ?? "",
        }
            .Concat(requirement.Conditions)
            .Concat(requirement.Trace.SelectMany(row => new[] { row.Row, row.Citation }))
            .Concat(document.Sources)
            .Concat(document.Cautions)
            .Concat(facts.Rulebooks.All.SelectMany(book => new[] { book.Title, book.Citation }))
            .Concat(EnquiryFields.All.Select(field => field.Examples))
            .Append("alburnum rulebook fill")
            .Append(asked)
            .SelectMany(BracketedLanguage.Words)
            .ToList();

        foreach (
            var address in new[]
            {
                "/",
                "/nowhere",
                "/requirement",
                $"/requirement{question}",
                "/cases/1",
                "/cases/1/runs/1",
                "/cases/1/pieces/1",
                "/cases/1/pieces/1?next=treated&treated=10,10&corners=1,1",
            }
        )
        {
            using var answer = await browser.GetAsync(new Uri(address, UriKind.Relative), Stop);
            var page = WebUtility.HtmlDecode(Shown(await answer.Content.ReadAsStringAsync(Stop)));
            Assert.Equal(
                (address, ""),
                (address, string.Join(" ", BracketedLanguage.WordsOutside(page).Except(ofData, StringComparer.Ordinal)))
            );
        }
    }

    [Fact]
    public async Task A_photograph_comes_back_byte_for_byte_under_its_fingerprint()
    {
        var answer = await Get($"/photographs/{Photograph.Of("P01.jpg", Jpeg).Sha256}");

        Assert.Equal("image/jpeg", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(Jpeg, await answer.Content.ReadAsByteArrayAsync(Stop));
    }

    [Fact]
    public async Task A_case_is_addressed_by_its_number_whatever_its_reference_holds()
    {
        var list = await _browser.GetStringAsync(new Uri("/", UriKind.Relative), Stop);

        Assert.Contains("href=\"/cases/1\"", list, StringComparison.Ordinal);
        Assert.Equal(
            "{\"format\": \"x\"}",
            await _browser.GetStringAsync(new Uri("/cases/1/report.json", UriKind.Relative), Stop)
        );
    }

    [Theory]
    [InlineData("/cases/1")]
    [InlineData("/cases/1/pieces/1")]
    [InlineData("/cases/1/report.pdf")]
    public async Task A_result_that_this_version_cannot_read_is_said(string address)
    {
        var answer = await Get(address);

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Contains(
            "found a result that this version cannot read",
            await answer.Content.ReadAsStringAsync(Stop),
            StringComparison.Ordinal
        );
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
            await _browser.GetStringAsync(new Uri("/cases/1/report.json", UriKind.Relative), Stop)
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

    /// <summary>What a page shows or reads out: its text, and the attributes that hold text.</summary>
    private static string Shown(string html) =>
        Tag()
            .Replace(
                html,
                tag => " " + string.Join(" ", Told().Matches(tag.Value).Select(told => told.Groups[1].Value)) + " "
            );

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(" (?:alt|aria-label|data-name|title|placeholder)=\"([^\"]*)\"")]
    private static partial Regex Told();
}
