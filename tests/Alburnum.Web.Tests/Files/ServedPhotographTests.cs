using System.Net;
using System.Text;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Alburnum.Web.Files;

namespace Alburnum.Web.Tests.Files;

/// <summary>Photographs and copies that are at hand.</summary>
public sealed class ServedPhotographTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("<html><script>alert(1)</script>")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>")]
    [InlineData("GIF89a........")]
    [InlineData("RIFF....WAVEfmt ")]
    [InlineData("%PDF-1.7 ......")]
    [InlineData("")]
    public void What_is_no_picture_of_a_known_kind_is_of_none(string start) =>
        Assert.Null(ServedPhotograph.KindOf(Encoding.ASCII.GetBytes(start)));

    [Fact]
    public async Task A_file_that_is_no_picture_is_never_sent_as_it_is()
    {
        await using var site = await Site.OpenAsync();
        var page = Photograph.Of("P01.jpg", "<html><script>alert(1)</script>"u8.ToArray());
        await site.Store.AddAsync(
            new("T-1", "Posts", "Thornhollow estate", DateTime.UnixEpoch, Verdict.Conforms, "{}", [page], []),
            FilesTogether.None,
            Stop
        );

        var asKept = await site.Browser.GetAsync(new Uri($"/photographs/{page.Sha256}", UriKind.Relative), Stop);
        var upright = await site.Browser.GetAsync(asKept.Headers.Location, Stop);

        Assert.Equal(HttpStatusCode.Redirect, asKept.StatusCode);
        Assert.Equal(HttpStatusCode.InternalServerError, upright.StatusCode);
        Assert.Equal("text/plain", upright.Content.Headers.ContentType!.MediaType);
        Assert.DoesNotContain("<script>", await upright.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_copy_at_hand_is_not_shown_of_a_photograph_that_is_damaged_since()
    {
        await using var site = await Site.OpenAsync();
        await site.KeepAsync(new FolderFiles(Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case")));
        var sha256 = await site.PhotographOfAsync(1);
        var address = new Uri(ServedPhotograph.UprightAddress(sha256), UriKind.Relative);
        var before = await site.Browser.GetByteArrayAsync(address, Stop);
        Assert.Equal(before, await site.Browser.GetByteArrayAsync(address, Stop));
        var file = Path.Combine(Path.GetDirectoryName(site.Store.Place)!, "cases.photographs", sha256[..2], sha256);
        await File.AppendAllTextAsync(file, "x", Stop);

        var after = await site.Browser.GetAsync(address, Stop);

        Assert.Equal(HttpStatusCode.InternalServerError, after.StatusCode);
        Assert.True(after.Headers.CacheControl!.NoStore);
    }

    [Fact]
    public async Task A_copy_is_made_once_and_what_is_too_large_is_not_kept()
    {
        using var copies = new ReadyCopies();
        var made = 0;
        Task<byte[]> MakeAsync(int bytes)
        {
            made++;
            return Task.FromResult(new byte[bytes]);
        }

        Assert.Same(await copies.OfAsync("a", () => MakeAsync(10)), await copies.OfAsync("a", () => MakeAsync(10)));
        Assert.Equal(1, made);
        await copies.OfAsync("b", () => MakeAsync(65_000_000));
        await copies.OfAsync("b", () => MakeAsync(65_000_000));
        Assert.Equal(3, made);
    }
}
