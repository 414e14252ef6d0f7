using System.Globalization;
using Alburnum.Penetration;
using Alburnum.Records.Store;

namespace Alburnum.Web.Tests;

/// <summary>The list of cases, fifty on a page.</summary>
public sealed class CaseListTests
{
    private const int Cases = 52;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_list_shows_fifty_cases_on_a_page_the_latest_first()
    {
        await using var site = await Site.OpenAsync();
        for (var number = 1; number <= Cases; number++)
            await site.Store.AddAsync(
                new(
                    number.ToString("T-000", CultureInfo.InvariantCulture),
                    "Posts",
                    "Thornhollow estate",
                    DateTime.UnixEpoch,
                    Verdict.Conforms,
                    "{}",
                    [],
                    []
                ),
                FilesTogether.None,
                Stop
            );

        Assert.Equal(Numbers(Cases, 3), await ListedAsync("/"));
        Assert.Equal(Numbers(2, 1), await ListedAsync("/?page=2"));
        // A page that is not there is the nearest that is.
        Assert.Equal(Numbers(2, 1), await ListedAsync("/?page=99999999999"));
        Assert.Equal(Numbers(2, 1), await ListedAsync("/?page=70"));
        Assert.Equal(Numbers(Cases, 3), await ListedAsync("/?page=x"));
        var first = await site.Browser.GetStringAsync(new Uri("/", UriKind.Relative), Stop);
        Assert.Contains("href=\"/?page=2\"", first, StringComparison.Ordinal);
        Assert.Contains("Page 1 of 2", first, StringComparison.Ordinal);

        async Task<List<string>> ListedAsync(string address)
        {
            var page = await site.Browser.GetStringAsync(new Uri(address, UriKind.Relative), Stop);
            return
            [
                .. page.Split("href=\"/cases/")
                    .Skip(1)
                    .Select(rest => rest[..rest.IndexOf('"', StringComparison.Ordinal)]),
            ];
        }
    }

    private static List<string> Numbers(int from, int to) =>
        [.. Enumerable.Range(to, from - to + 1).Reverse().Select(each => each.ToString(CultureInfo.InvariantCulture))];
}
