using System.Net;
using System.Text;
using System.Text.Json;
using Alburnum.Records.Facts;
using Alburnum.Reports.Json;
using Alburnum.Reports.Requirements;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Web.Tests;

/// <summary>Asking a rulebook on the page and over HTTP.</summary>
public sealed class RequirementTests : IAsyncLifetime
{
    private const string Question = "component=deck%20joist&species=Scots%20pine&section=47x150&useClass=4";

    private static readonly Dictionary<string, string> Filled = new(StringComparer.Ordinal)
    {
        ["component"] = "deck joist",
        ["species"] = "Scots pine",
        ["section"] = "47x150",
        ["useClass"] = "4",
        ["rulebook"] = "british-2014",
    };

    private static readonly (string Name, string Text) Own = (
        "my.yaml",
        """
        basedOn: british-2014
        confirmed:
          - { key: in-ground-15-sawn-permeable, edition: "2011+A1:2014", table: table 4, page: "17", initials: AB, date: 2026-05-12 }
        """
    );

    private static readonly (string Name, string Text) Wrong = (
        "my.yaml",
        Own.Text.Replace("in-ground-15", "nowhere", StringComparison.Ordinal)
    );

    private Site? _site;

    private Site Site => _site ?? throw new InvalidOperationException("The site is not open yet.");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _site = await Site.OpenAsync();

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    [Fact]
    public async Task The_page_says_what_the_command_prints()
    {
        var answer = Document(Site.Facts.Rulebooks.Named("british-2014"));
        var (outcome, says) = AnswerParts.Headline(answer);

        var page = await Page($"/requirement?{Question}");

        string[] sentences =
        [
            outcome[1..],
            says,
            answer.RulebookTitle,
            answer.Clause!,
            .. answer.Warnings,
            .. answer.Requirement!.Conditions,
            .. answer
                .Trace.SelectMany(step => AnswerParts.Rows(step, withAllRows: false))
                .Select(row => $"{row.Sign} {row.Says}"),
            .. answer.FactsUsed.Select(AnswerParts.Fact),
            .. answer.Routes.Select(route => AnswerParts.Route(route).Says),
            .. answer.Remarks,
            .. AnswerParts.Sources(answer),
        ];
        Assert.All(sentences, sentence => Assert.Contains(sentence, page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_contracts_class_for_another_use_stands_at_the_head_and_in_place_of_the_clause()
    {
        const string Other =
            "component=fence%20post&species=Scots%20pine&section=100x100&rulebook=nordic-classes&statedClass=AB";

        var answer = DocumentJson.Read<AnswerDocument>(
            await Site.Browser.GetStringAsync(new Uri($"/api/requirement?{Other}", UriKind.Relative), Stop)
        );
        var page = await Page($"/requirement?{Other}");

        Assert.Null(answer.Clause);
        Assert.Contains("one of the two does not fit", answer.Warnings[0], StringComparison.Ordinal);
        Assert.All(
            (string[])[answer.ClauseHeldUp!, answer.Warnings[0]],
            said => Assert.Contains(said, page, StringComparison.Ordinal)
        );
        Assert.DoesNotContain("Keep cut ends out", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_has_a_labelled_place_for_each_field_and_offers_every_rulebook()
    {
        var page = await Page("/requirement");

        Assert.All(
            EnquiryFields.All.Append(EnquiryFields.Rulebook),
            field =>
            {
                Assert.Contains($"<label for=\"{field.Key}\">", page, StringComparison.Ordinal);
                Assert.Contains($"name=\"{field.Key}\"", page, StringComparison.Ordinal);
            }
        );
        Assert.All(
            Site.Facts.Rulebooks.All,
            book => Assert.Contains($"{book.Title} ({book.Citation})", page, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_form_without_a_file_leads_to_an_address_that_holds_the_question()
    {
        var answer = await Site.SendAsync("/requirement", Filled, file: null);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.EndsWith(
            $"/requirement?{Question}&rulebook=british-2014#answer",
            answer.Headers.Location!.OriginalString,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_mistake_is_said_beside_its_field_and_names_it()
    {
        var answer = await Site.Browser.GetAsync(
            new Uri("/requirement?species=unobtainium&moisture=500", UriKind.Relative),
            Stop
        );
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("see Species, Moisture before treatment, %.", page, StringComparison.Ordinal);
        Assert.Contains("id=\"moisture-wrong\">found \"500\", expected 0 to 250 %", page, StringComparison.Ordinal);
        Assert.Contains("value=\"unobtainium\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"answer\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_of_ones_own_answers_on_the_page_with_what_it_confirms()
    {
        var answer = await Site.SendAsync("/requirement", Filled, Own);
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("table 4, page 17, confirmed against a copy, AB, 2026-05-12", page, StringComparison.Ordinal);
        Assert.Contains("my.yaml, SHA-256", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_file_is_refused_on_the_page_with_its_line()
    {
        var answer = await Site.SendAsync("/requirement", Filled, Wrong);
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(
            "my.yaml, line 3, row \"nowhere-sawn-permeable\", field key: found nowhere-sawn-permeable, expected the key of a row, or of an analytical zone.",
            page,
            StringComparison.Ordinal
        );
        // What was filled in is still there.
        Assert.Contains("value=\"deck joist\"", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/requirement")]
    [InlineData("/api/requirement")]
    public async Task A_file_that_is_too_large_is_refused_with_its_size(string address)
    {
        (string, string) large = ("my.yaml", new string('#', 1_200_000));

        var answer =
            address == "/requirement"
                ? await Site.SendAsync(address, Filled, large)
                : await Site.PostAsync(address, Filled, large);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(
            "my.yaml: found a file of 1.2 MB, expected a rulebook file of at most 1 MB.",
            await answer.Content.ReadAsStringAsync(Stop),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_is_larger_than_all_that_is_read_is_refused_in_words()
    {
        var answer = await Site.PostAsync("/api/requirement", Filled, ("my.yaml", new string('#', 30_100_000)));

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("30 MB", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_of_another_site_is_not_answered_on_the_page() =>
        Assert.Equal(
            HttpStatusCode.BadRequest,
            (await Site.PostAsync("/requirement", Filled.Append(new("_handler", "enquiry")), Own)).StatusCode
        );

    [Fact]
    public async Task The_api_gives_the_document_that_the_command_prints_however_it_is_asked()
    {
        var expected = DocumentJson.Write(Document(Site.Facts.Rulebooks.Named("british-2014")));
        using var json = new StringContent(
            "{\"component\":\"deck joist\",\"species\":\"Scots pine\",\"section\":\"47x150\",\"useClass\":4}",
            Encoding.UTF8,
            "application/json"
        );

        var asked = await Site.Browser.GetAsync(new Uri($"/api/requirement?{Question}", UriKind.Relative), Stop);
        var form = await Site.PostAsync("/api/requirement", Filled, file: null);
        var posted = await Site.Browser.PostAsync(new Uri("/api/requirement", UriKind.Relative), json, Stop);

        foreach (var answer in new[] { asked, form, posted })
        {
            Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
            Assert.Equal(expected, await answer.Content.ReadAsStringAsync(Stop));
        }
    }

    [Fact]
    public async Task The_api_takes_a_rulebook_file_of_ones_own()
    {
        var own = RulebookFile.Read(Encoding.UTF8.GetBytes(Own.Text), "my.yaml", "my", Site.Facts);

        var answer = await Site.PostAsync("/api/requirement", Filled, Own);

        Assert.Equal(DocumentJson.Write(Document(own)), await answer.Content.ReadAsStringAsync(Stop));
    }

    [Fact]
    public async Task The_api_names_every_place_that_is_wrong_as_problem_details()
    {
        var sent = new Dictionary<string, string>(Filled, StringComparer.Ordinal) { ["moisture"] = "500" };

        var answer = await Site.PostAsync("/api/requirement", sent, Wrong);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        using var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop));
        Assert.Equal(400, problem.RootElement.GetProperty("status").GetInt32());
        Assert.Equal(
            [("my.yaml", 3, "key"), ("request", 0, "moisture")],
            problem
                .RootElement.GetProperty("problems")
                .EnumerateArray()
                .Select(each =>
                    (
                        each.GetProperty("file").GetString()!,
                        each.GetProperty("line") is { ValueKind: JsonValueKind.Number } line ? line.GetInt32() : 0,
                        each.GetProperty("field").GetString()!
                    )
                )
        );
    }

    [Theory]
    [InlineData("?useclass=4", "request, field useclass: found a field, expected component, species")]
    [InlineData(
        "?component=deck%20joist&component=fence%20post",
        "field component: found \\\"deck joist\\\" and \\\"fence post\\\", expected one value"
    )]
    [InlineData("?rulebook=british-2041", "found \\\"british-2041\\\", expected one of")]
    [InlineData("?rulebook=/etc/passwd", "field rulebook: found \\\"/etc/passwd\\\", expected")]
    public async Task The_api_refuses_what_is_no_enquiry(string query, string says)
    {
        var answer = await Site.Browser.GetAsync(new Uri($"/api/requirement{query}", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(says, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "{\"component\":",
        "application/json",
        HttpStatusCode.BadRequest,
        "line 1: found what is no JSON object"
    )]
    [InlineData("[]", "application/json", HttpStatusCode.BadRequest, "found what is no JSON object")]
    [InlineData(
        "{\"insects\":[\"none\"]}",
        "application/json",
        HttpStatusCode.BadRequest,
        "field insects: found a list or an object"
    )]
    [InlineData("component=x", "text/plain", HttpStatusCode.UnsupportedMediaType, "application/json")]
    public async Task The_api_refuses_a_body_that_it_cannot_read(
        string body,
        string kind,
        HttpStatusCode status,
        string says
    )
    {
        using var content = new StringContent(body, Encoding.UTF8, kind);

        var answer = await Site.Browser.PostAsync(new Uri("/api/requirement", UriKind.Relative), content, Stop);

        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(says, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    private static AnswerDocument Document(Rulebook rulebook) =>
        AnswerMapping.From(
            FindRequirement.Run(
                new Enquiry
                {
                    Component = Component.Component,
                    CalledAs = Component,
                    Species = Site.Facts.Species.Named("Scots pine"),
                    Section = SectionText.TryParse("47x150", out var section) ? section : null,
                    UseClasses = UseClassWords.Parse("4"),
                    UseClassAsWritten = "4",
                },
                rulebook,
                Site.Facts,
                progress: null,
                Stop
            )
        );

    private static ComponentName Component => ((Found<ComponentName>)Site.Facts.Components.Find("deck joist")).Value;

    private async Task<string> Page(string address) =>
        WebUtility.HtmlDecode(await Site.Browser.GetStringAsync(new Uri(address, UriKind.Relative), Stop));
}
