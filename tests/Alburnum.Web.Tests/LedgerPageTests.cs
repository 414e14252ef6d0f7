using System.Net;
using Alburnum.Records.Ledger;
using Microsoft.Data.Sqlite;

namespace Alburnum.Web.Tests;

/// <summary>The ledger of a case on its page: verified only when someone asks there, and only as of then.</summary>
public sealed class LedgerPageTests : IAsyncLifetime
{
    private static readonly Dictionary<string, string> None = new(StringComparer.Ordinal);
    private Site? _site;
    private int _number;

    private Site Site => _site ?? throw new InvalidOperationException("The site is not open yet.");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Page => $"/cases/{_number}/ledger";

    public async ValueTask InitializeAsync()
    {
        _site = await Site.OpenAsync();
        _number = await Site.KeepPostsAsync();
    }

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    [Fact]
    public async Task It_is_called_verified_only_after_it_was_verified()
    {
        var before = await Site.Browser.GetStringAsync(new Uri(Page, UriKind.Relative), Stop);
        var asked = await Site.SendAsync(Page, None, file: null);
        var verified = await asked.Content.ReadAsStringAsync(Stop);
        var later = await Site.Browser.GetStringAsync(new Uri(Page, UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.OK, asked.StatusCode);
        Assert.Contains("Verified: ", verified, StringComparison.Ordinal);
        Assert.All(
            [before, later],
            page =>
            {
                Assert.Contains("Not verified on this page yet.", page, StringComparison.Ordinal);
                Assert.DoesNotContain("Verified: ", page, StringComparison.Ordinal);
            }
        );
    }

    [Fact]
    public async Task A_page_of_another_site_cannot_have_it_verified()
    {
        var posted = await Site.PostAsync(Page, [KeyValuePair.Create("_handler", "verify")], file: null);

        Assert.Equal(HttpStatusCode.BadRequest, posted.StatusCode);
        Assert.DoesNotContain("Verified: ", await posted.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_changed_in_the_store_is_named_there()
    {
        using (var store = new SqliteConnection($"Data Source={Site.Store.Place};Pooling=False"))
        {
            await store.OpenAsync(Stop);
            await using var change = store.CreateCommand();
            change.CommandText = "UPDATE run SET Verdict = 'undecided', Client = 'another'";
            await change.ExecuteNonQueryAsync(Stop);
        }

        var page = await (await Site.SendAsync(Page, None, file: null)).Content.ReadAsStringAsync(Stop);

        Assert.Contains($"cases/{_number}/runs/1/run.json", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Verified: ", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rulebook_chosen_on_a_page_is_entered_with_the_one_before()
    {
        await Site.SendAsync(
            $"/cases/{_number}",
            new Dictionary<string, string>(StringComparer.Ordinal) { ["rulebook"] = "british-2024" },
            file: null
        );

        var chosen = (await Site.Store.LedgerAsync(_number, Stop)).Last(entry => entry.Act == LedgerAct.RulebookChosen);

        Assert.Contains("BS 8417:2011", chosen.Before!.Text, StringComparison.Ordinal);
        Assert.Contains("BS 8417:2024", chosen.After!.Text, StringComparison.Ordinal);
        Assert.Empty((await Site.Store.VerifyAsync(null, Stop)).Faults);
    }

    [Theory]
    [InlineData("/cases/0/ledger")]
    [InlineData("/cases/99/ledger")]
    public async Task A_case_that_is_not_there_has_no_ledger(string page)
    {
        var answer = await Site.Browser.GetAsync(new Uri(page, UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
