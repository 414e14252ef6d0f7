using System.Net;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Web.Files;

namespace Alburnum.Web.Tests.Files;

/// <summary>What is at hand is never out of date: each act on a case shows on what is asked for next.</summary>
public sealed class ReadyCopiesTests : IAsyncLifetime
{
    private Site? _site;

    private Site Site => _site ?? throw new InvalidOperationException("The site is not open yet.");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _site = await Site.OpenAsync();
        await _site.KeepPostsAsync();
    }

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    [Fact]
    public async Task What_many_ask_for_at_once_is_made_once()
    {
        using var copies = new ReadyCopies();
        var gate = new TaskCompletionSource();
        var made = 0;
        async Task<byte[]> MakeAsync()
        {
            Interlocked.Increment(ref made);
            await gate.Task;
            return [1];
        }

        var asked = Enumerable.Range(0, 20).Select(_ => copies.OfAsync("one", MakeAsync)).ToList();
        gate.SetResult();

        Assert.All(await Task.WhenAll(asked), bytes => Assert.Equal([1], bytes));
        Assert.Equal(1, made);
    }

    [Fact]
    public async Task What_could_not_be_made_is_tried_again()
    {
        using var copies = new ReadyCopies();
        await Assert.ThrowsAsync<IOException>(() => copies.OfAsync("one", () => throw new IOException("Full.")));
        Assert.Equal([1], await copies.OfAsync("one", () => Task.FromResult<byte[]>([1])));
    }

    [Fact]
    public async Task A_sheet_asked_for_twice_is_the_same() =>
        Assert.Equal(WithoutToken(await PageAsync("/cases/1")), WithoutToken(await PageAsync("/cases/1")));

    [Fact]
    public async Task A_sheet_shows_a_run_that_was_kept_since_and_the_earlier_one_says_so()
    {
        Assert.DoesNotContain("id=\"runs\"", await PageAsync("/cases/1"), StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"earlier\"", await PageAsync("/cases/1/runs/1"), StringComparison.Ordinal);

        await Site.KeepPostsAsync();

        Assert.Contains("id=\"runs\"", await PageAsync("/cases/1"), StringComparison.Ordinal);
        Assert.Contains("class=\"earlier\"", await PageAsync("/cases/1/runs/1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_that_another_program_took_out_stands_on_no_sheet_and_in_no_report()
    {
        const string client = "Thornhollow estate";
        Assert.Contains(client, await PageAsync("/cases/1"), StringComparison.Ordinal);
        var report = await Site.Browser.GetByteArrayAsync(Of("/cases/1/report.pdf"), Stop);

        await (await OtherProgramAsync()).RedactAsync(new(1, "asked for"), client, _ => Task.FromResult(true), Stop);

        Assert.DoesNotContain(client, await PageAsync("/cases/1"), StringComparison.Ordinal);
        Assert.NotEqual(report, await Site.Browser.GetByteArrayAsync(Of("/cases/1/report.pdf"), Stop));
    }

    [Theory]
    [InlineData("/cases/1")]
    [InlineData("/cases/1/runs/1")]
    [InlineData("/cases/1/report.pdf")]
    public async Task A_case_that_another_program_deleted_is_no_longer_there(string address)
    {
        Assert.Equal(HttpStatusCode.OK, (await Site.Browser.GetAsync(Of(address), Stop)).StatusCode);

        await (await OtherProgramAsync()).DeleteCaseAsync(new(1, "asked for"), Stop);

        Assert.Equal(HttpStatusCode.NotFound, (await Site.Browser.GetAsync(Of(address), Stop)).StatusCode);
    }

    [Fact]
    public async Task Every_act_on_a_case_gives_it_another_state_and_leaves_that_of_others()
    {
        var store = Site.Store;
        Assert.Null(await store.StateAsync(2, Stop));
        List<string?> states = [await store.StateAsync(1, Stop)];

        await store.CorrectAsync(1, (await store.LedgerAsync(1, Stop))[0].Place.Number, "as is right", Stop);
        states.Add(await store.StateAsync(1, Stop));
        await Site.KeepPostsAsync();
        states.Add(await store.StateAsync(1, Stop));
        await store.AddAsync(
            new("T-9", "Rails", "Mill", DateTime.UnixEpoch, Penetration.Verdict.Undecided, "{}", [], []),
            FilesTogether.None,
            Stop
        );
        Assert.Equal(states[^1], await store.StateAsync(1, Stop));
        await store.DeleteCaseAsync(new(1, "asked for"), Stop);
        states.Add(await store.StateAsync(1, Stop));

        Assert.All(states, Assert.NotNull);
        Assert.Equal(states.Count, states.Distinct(StringComparer.Ordinal).Count());
    }

    private Task<ICaseStore> OtherProgramAsync() =>
        CaseStore.KeepAsync(Site.Store.Place, Person.OfSystem, _ => { }, Stop);

    private async Task<string> PageAsync(string address) =>
        WebUtility.HtmlDecode(await Site.Browser.GetStringAsync(Of(address), Stop));

    private static Uri Of(string address) => new(address, UriKind.Relative);

    // Each reader's own.
    private static string WithoutToken(string page) =>
        string.Join('\n', page.Split('\n').Where(line => !line.Contains("_form-key", StringComparison.Ordinal)));
}
