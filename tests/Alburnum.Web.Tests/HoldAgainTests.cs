using System.Net;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;

namespace Alburnum.Web.Tests;

/// <summary>A kept case held against another rulebook.</summary>
public sealed class HoldAgainTests : IAsyncLifetime
{
    private static readonly Dictionary<string, string> None = new(StringComparer.Ordinal);

    private static readonly (string Name, string Text) Own = (
        "my.yaml",
        """
        basedOn: british-2014
        confirmed:
          - { key: in-ground-15-sawn-permeable, edition: "2011+A1:2014", table: table 4, page: "17", initials: AB, date: 2026-05-12 }
        """
    );

    private Site? _site;
    private int _number;

    private Site Site => _site ?? throw new InvalidOperationException("The site is not open yet.");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _site = await Site.OpenAsync();
        _number = await Site.KeepPostsAsync();
    }

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    [Fact]
    public async Task A_file_sent_on_the_page_gives_a_new_run_that_keeps_it()
    {
        var answer = await Site.SendAsync($"/cases/{_number}", None, Own);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(2, (await Site.Store.RunsAsync(_number, Stop)).Count);
        var (before, after) = (
            (await Site.Store.RunAsync(_number, 1, Stop))!,
            (await Site.Store.RunAsync(_number, 2, Stop))!
        );
        Assert.DoesNotContain("confirmed against", before.Document, StringComparison.Ordinal);
        Assert.Contains("confirmed against a copy, AB", after.Document, StringComparison.Ordinal);
        Assert.Equal(Own.Text, Text(after, "my.yaml"));
        // Everything else is kept to the letter.
        Assert.Equal(
            Text(before, "case.yaml")
                .Replace("rulebook: british-2014 #", "rulebook: \"my.yaml\" #", StringComparison.Ordinal),
            Text(after, "case.yaml")
        );
        Assert.Equal(Text(before, "readings.csv"), Text(after, "readings.csv"));
    }

    [Fact]
    public async Task A_rulebook_that_ships_takes_the_place_of_the_file_again()
    {
        await Site.SendAsync($"/cases/{_number}", None, Own);
        await Site.SendAsync(
            $"/cases/{_number}",
            new Dictionary<string, string>(StringComparer.Ordinal) { ["rulebook"] = "british-2024" },
            file: null
        );

        var run = (await Site.Store.RunAsync(_number, null, Stop))!;
        Assert.Equal(3, run.Number);
        Assert.Contains(
            "BS 8417:2024",
            DocumentJson.Read<CaseDocument>(run.Document).Requirement.Rulebook,
            StringComparison.Ordinal
        );
        Assert.Equal(["case.yaml", "readings.csv"], run.Files.Select(file => file.FileName));
    }

    [Theory]
    [InlineData("my.yaml", "basedOn: lunar-2014", "my.yaml, line 1, field basedOn: found lunar-2014")]
    [InlineData("my.yaml", "", "my.yaml, line 1: found an empty file, expected named fields.")]
    [InlineData(
        "case.yaml",
        "basedOn: british-2014",
        "case.yaml: found a file of that name, expected a name that ends in .yaml, other than case.yaml."
    )]
    [InlineData("my.txt", "basedOn: british-2014", "my.txt: found a file of that name")]
    public async Task A_file_that_will_not_do_is_refused_on_the_page_and_nothing_is_kept(
        string name,
        string text,
        string says
    )
    {
        var answer = await Site.SendAsync($"/cases/{_number}", None, (name, text));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop));
        Assert.Contains($"<p>{says}", page, StringComparison.Ordinal);
        Assert.Contains("<h1>Posts</h1>", page, StringComparison.Ordinal);
        Assert.Single(await Site.Store.RunsAsync(_number, Stop));
    }

    [Fact]
    public async Task The_case_s_own_rulebook_stands_first_then_each_code_with_its_newest_edition()
    {
        await Site.SendAsync(
            $"/cases/{_number}",
            new Dictionary<string, string>(StringComparer.Ordinal) { ["rulebook"] = "european-1995" },
            file: null
        );
        var page = await Site.Browser.GetStringAsync(new Uri($"/cases/{_number}", UriKind.Relative), Stop);
        var offered = page.Split("<option value=\"")
            .Skip(1)
            .Select(option => option[..option.IndexOf('"', StringComparison.Ordinal)])
            .Where(name => name.Contains('-', StringComparison.Ordinal))
            .ToList();

        Assert.Equal("european-1995", offered[0]);
        Assert.True(offered.IndexOf("british-2024") < offered.IndexOf("british-2014"), string.Join(", ", offered));
        Assert.True(offered.IndexOf("american-round") < offered.IndexOf("british-2024"), string.Join(", ", offered));
    }

    [Fact]
    public async Task A_form_without_the_page_s_token_keeps_nothing()
    {
        var form = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["_handler"] = "hold",
            ["rulebook"] = "british-2024",
        };

        Assert.Equal(
            HttpStatusCode.BadRequest,
            (await Site.PostAsync($"/cases/{_number}", form, file: null)).StatusCode
        );
        Assert.Single(await Site.Store.RunsAsync(_number, Stop));
    }

    [Fact]
    public async Task The_api_answers_with_the_report_of_the_new_run()
    {
        var answer = await Site.PostAsync($"/api/cases/{_number}/rulebook", None, Own);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(
            (await Site.Store.RunAsync(_number, 2, Stop))!.Document,
            await answer.Content.ReadAsStringAsync(Stop)
        );
    }

    [Fact]
    public async Task The_api_refuses_another_site_an_unknown_case_and_an_empty_form()
    {
        Site.Browser.DefaultRequestHeaders.Add("Origin", "http://elsewhere.example");
        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await Site.PostAsync($"/api/cases/{_number}/rulebook", None, Own)).StatusCode
        );
        Site.Browser.DefaultRequestHeaders.Remove("Origin");
        Assert.Equal(HttpStatusCode.NotFound, (await Site.PostAsync("/api/cases/99/rulebook", None, Own)).StatusCode);
        var empty = await Site.PostAsync(
            $"/api/cases/{_number}/rulebook",
            new Dictionary<string, string>(StringComparer.Ordinal) { ["rulebook"] = "" },
            file: null
        );
        Assert.Equal(HttpStatusCode.BadRequest, empty.StatusCode);
        Assert.Contains(
            "field rulebook: found nothing",
            await empty.Content.ReadAsStringAsync(Stop),
            StringComparison.Ordinal
        );
        Assert.Single(await Site.Store.RunsAsync(_number, Stop));
    }

    private static string Text(Records.Store.KeptRun run, string file) =>
        System.Text.Encoding.UTF8.GetString(run.Files.Single(each => each.FileName == file).Bytes.Span);
}
