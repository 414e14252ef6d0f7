using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;
using Microsoft.AspNetCore.Builder;

namespace Alburnum.Web.Tests;

/// <summary>The application on a real port with a store of its own, and a browser that keeps its cookies.</summary>
internal sealed partial class Site : IAsyncDisposable
{
    private readonly TemporaryFolder _folder;
    private readonly WebApplication _app;

    private Site(TemporaryFolder folder, WebApplication app, ICaseStore store) =>
        (_folder, _app, Store, Browser) = (
            folder,
            app,
            store,
            new HttpClient(new HttpClientHandler { AllowAutoRedirect = false })
            {
                BaseAddress = new Uri(app.Urls.First()),
            }
        );

    public static FactLibrary Facts { get; } = new(Repository.At("data"));

    public ICaseStore Store { get; }

    public HttpClient Browser { get; }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<Site> OpenAsync()
    {
        var folder = new TemporaryFolder();
        var store = await CaseStore.KeepAsync(folder.At("cases.db"), Person.OfSystem, _ => { }, Stop);
        var app = WebServer.Create(store, Facts, port: 0);
        await app.StartAsync(Stop);
        return new(folder, app, store);
    }

    /// <summary>Runs a case of posts that were read with a ruler, under british-2014, and keeps it.</summary>
    /// <returns>Its number in the store.</returns>
    public async Task<int> KeepPostsAsync()
    {
        _folder.Write(
            "case.yaml",
            """
            reference: T-2
            title: Posts
            client: Thornhollow estate
            sectionsCut: 2026-05-12
            rulebook: british-2014 # as the contract says
            component: fence post
            section: 75 x 75 mm
            species: Scots pine
            useClass: 4
            serviceLife: 15 years
            indicator: copper-blue
            batch: { pieces: 40, mustPass: 90 % }
            rulerReadings: readings.csv
            """
        );
        _folder.Write(
            "readings.csv",
            "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\nP01,1,37,20,0.5,20\nP01,2,37,20,0.5,20\nP01,3,37,20,0.5,20\nP01,4,37,20,0.5,20\n"
        );
        return await KeepAsync(new FolderFiles(_folder.Path));
    }

    /// <summary>Runs a case and keeps it.</summary>
    /// <returns>Its number in the store.</returns>
    public async Task<int> KeepAsync(ICaseFiles files)
    {
        var run = await RunCase.JudgeAsync(files, Facts, progress: null, Stop);
        var document = CaseMapping.From(run, Facts.Cautions, "Alburnum", DateTime.UnixEpoch);
        var kept = await RunCase.KeepAsync(
            run,
            new(document.RunAt, DocumentJson.Write(document), FilesTogether.None),
            Store,
            Stop
        );
        return kept.CaseNumber;
    }

    /// <summary>SHA-256 of the first photograph of a case.</summary>
    public async Task<string> PhotographOfAsync(int number) =>
        KeptDocument.Of((await Store.RunAsync(number, null, Stop))!).Pieces[0].Reading.Sha256!;

    /// <summary>Sends the form of a page as a browser does: with the page's own hidden fields.</summary>
    /// <param name="page">Address of the page.</param>
    /// <param name="form">What is filled in.</param>
    /// <param name="file">Name and content of the rulebook file chosen; null for none.</param>
    public async Task<HttpResponseMessage> SendAsync(
        string page,
        IReadOnlyDictionary<string, string> form,
        (string Name, string Text)? file
    )
    {
        var html = await Browser.GetStringAsync(new Uri(page, UriKind.Relative), Stop);
        var hidden = Hidden()
            .Matches(html)
            .ToDictionary(field => field.Groups["name"].Value, field => field.Groups["value"].Value);
        return await PostAsync(page, hidden.Concat(form), file);
    }

    /// <summary>Sends a form with nothing but what is given.</summary>
    public async Task<HttpResponseMessage> PostAsync(
        string address,
        IEnumerable<KeyValuePair<string, string>> form,
        (string Name, string Text)? file
    )
    {
        using var content = new MultipartFormDataContent();
        foreach (var (name, value) in form)
            content.Add(new StringContent(value), $"\"{name}\"");
        if (file is var (fileName, text))
        {
            var bytes = new ByteArrayContent(System.Text.Encoding.UTF8.GetBytes(text));
            bytes.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
            content.Add(bytes, "\"rulebook\"", $"\"{fileName}\"");
        }
        return await Browser.PostAsync(new Uri(address, UriKind.Relative), content, Stop);
    }

    public async ValueTask DisposeAsync()
    {
        Browser.Dispose();
        await _app.DisposeAsync();
        _folder.Dispose();
    }

    [GeneratedRegex(
        "<input type=\"hidden\" name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]*)\"",
        RegexOptions.ExplicitCapture
    )]
    private static partial Regex Hidden();
}
