using Alburnum.Cli;
using Alburnum.Records.Facts;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Alburnum.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Playwright;
using Spectre.Console;

namespace Alburnum.Browser;

/// <summary>An example case, run and served, and a browser to look at it with.</summary>
internal sealed class ServedCases : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly IPlaywright _playwright;

    private ServedCases(WebApplication app, IPlaywright playwright, IBrowserContext browser, ICaseStore store)
    {
        (_app, _playwright, Browser, Store) = (app, playwright, browser, store);
    }

    public IBrowserContext Browser { get; }

    public ICaseStore Store { get; }

    public string Address => _app.Urls.First();

    public static async Task<ServedCases> StartAsync(string example, TemporaryFolder folder, CancellationToken stop)
    {
        var path = folder.At("cases.db");
        using var quiet = new StringWriter();
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(quiet) });
        string[] run = ["case", Repository.At("examples", example), "--store", path, "--out", folder.Path];
        var facts = new FactLibrary(Repository.At("data"));
        Assert.Equal(CommandLine.Done, await CommandLine.RunAsync(run, facts, console, quiet, stop));
        var store = await CaseStore.KeepAsync(path, Person.OfSystem, _ => { }, stop);
        var app = WebServer.Create(store, facts, port: 0);
        await app.StartAsync(stop);
        var playwright = await Playwright.CreateAsync();
        // A busy machine may take seconds over a photograph; what never comes still fails.
        Assertions.SetDefaultExpectTimeout(30_000);
        return new(app, playwright, await Chromium.StartAsync(playwright, folder.At("profile")), store);
    }

    /// <summary>Opens a page on a screen of some width.</summary>
    public async Task<IPage> OpenAsync(string address, int widthPx = 1300)
    {
        var page = await Browser.NewPageAsync();
        await page.SetViewportSizeAsync(widthPx, 900);
        await page.GotoAsync(Address + address);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.CloseAsync();
        _playwright.Dispose();
        await _app.DisposeAsync();
    }
}
