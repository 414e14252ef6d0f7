using System.Net;
using System.Text;

namespace Alburnum.Web.Tests;

/// <summary>What is sent to the API and is not as it is asked for.</summary>
public sealed class SentFieldsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_field_given_twice_is_refused_and_so_is_one_that_is_not_known()
    {
        await using var site = await Site.OpenAsync();

        foreach (var query in new[] { "component=fence%20post&component=deck%20joist", "componnent=fence%20post" })
            Assert.Equal(
                HttpStatusCode.BadRequest,
                (await site.Browser.GetAsync(new Uri($"/api/requirement?{query}", UriKind.Relative), Stop)).StatusCode
            );
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/xml")]
    [InlineData("image/svg+xml")]
    public async Task Another_kind_of_content_is_refused(string kind)
    {
        await using var site = await Site.OpenAsync();
        using var content = new StringContent("{\"component\":\"fence post\"}", Encoding.UTF8, kind);

        var answer = await site.Browser.PostAsync(new Uri("/api/requirement", UriKind.Relative), content, Stop);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
    }
}
