using System.Text;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;

namespace Alburnum.Web.Tests;

/// <summary>Names that would be something else than text where they are not encoded.</summary>
public sealed class HostileNamesTests
{
    private const string Hostile = "\"><script>alert(1)</script><img src=x onerror='alert(2)'>]]>) & Ωåé \u202e";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Hostile_names_are_text_in_pages_drawings_and_reports()
    {
        await using var site = await Site.OpenAsync();
        var files = new FolderFiles(Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case"));
        var run = await RunCase.JudgeAsync(files, Site.Facts, progress: null, Stop);
        var document = CaseMapping.From(run, Site.Facts.Cautions, "Alburnum", DateTime.UnixEpoch);
        document = document with
        {
            Reference = Hostile,
            Title = Hostile,
            Client = Hostile,
            Remarks = [Hostile],
            Pieces = [.. document.Pieces.Select(piece => piece with { Name = Hostile })],
        };
        await RunCase.KeepAsync(
            run,
            new(document.RunAt, DocumentJson.Write(document), FilesTogether.None),
            site.Store,
            Stop
        );

        var page = await site.Browser.GetStringAsync(new Uri("/cases/1", UriKind.Relative), Stop);
        Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img src=x", page, StringComparison.Ordinal);
        var pdf = Encoding.Latin1.GetString(
            await site.Browser.GetByteArrayAsync(new Uri("/cases/1/report.pdf", UriKind.Relative), Stop)
        );
        Assert.StartsWith("%PDF-", pdf, StringComparison.Ordinal);
        Assert.All(
            new[] { "/JavaScript", "/JS", "/OpenAction", "/Launch", "/EmbeddedFile", "<script" },
            act => Assert.DoesNotContain(act, pdf, StringComparison.Ordinal)
        );
        Assert.Equal(
            Hostile,
            DocumentJson
                .Read<CaseDocument>(
                    await site.Browser.GetStringAsync(new Uri("/cases/1/report.json", UriKind.Relative), Stop)
                )
                .Title
        );
    }
}
