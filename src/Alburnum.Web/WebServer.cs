using System.Globalization;
using System.Net;
using System.Reflection;
using Alburnum.Imaging.Pictures;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Json;
using Alburnum.Reports.Sheets;
using Alburnum.Web.Asking;
using Alburnum.Web.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Web;

/// <summary>The local web application: served to this machine only, every byte from here.</summary>
public static partial class WebServer
{
    private const string Policy =
        "default-src 'none'; img-src 'self'; style-src 'self'; font-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>Makes the application; it is not started yet.</summary>
    /// <param name="store">Where the cases are.</param>
    /// <param name="facts">The facts that a case read again rests on.</param>
    /// <param name="port">Port on 127.0.0.1; 0 takes a free one.</param>
    public static WebApplication Create(ICaseStore store, FactLibrary facts, int port)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder
            .WebHost.UseKestrelCore()
            .ConfigureKestrel(kestrel =>
            {
                kestrel.Listen(IPAddress.Loopback, port);
                kestrel.AddServerHeader = false;
            });
        // A port that is taken is said by whoever starts the server.
        builder
            .Logging.AddFilter(
                (category, level) =>
                    level >= LogLevel.Warning && category != "Microsoft.Extensions.Hosting.Internal.Host"
            )
            .AddSimpleConsole();
        // Asked to end, it does not wait for what is still being read.
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromMilliseconds(300));
        builder.Services.AddSingleton(store);
        builder.Services.AddSingleton(facts);
        builder.Services.AddRoutingCore();
        builder.Services.AddRazorComponents();
        // A rulebook file that is sent stays in memory.
        builder.Services.Configure<FormOptions>(form => form.MemoryBufferThreshold = SentRulebook.BytesMax);
        // Nothing outlives the process that a key would have to open.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        // A page of another site must not reach this one under a name of its own.
        builder.Services.Configure<HostFilteringOptions>(hosts => hosts.AllowedHosts = ["127.0.0.1", "localhost"]);

        var app = builder.Build();
        // Pages are written in the language in which the server was started.
        var language = CultureInfo.CurrentUICulture;
        app.UseHostFiltering();
        app.Use(
            (http, next) =>
            {
                CultureInfo.CurrentUICulture = language;
                return GuardedAsync(http, next);
            }
        );
        app.Use(AnsweredAsync);
        app.UseRouting();
        app.UseAntiforgery();
        app.MapRazorComponents<Sheet>();
        app.MapGet("/assets/{name}", Asset);
        app.MapGet("/photographs/{sha256}", PhotographAsync);
        app.MapGet("/photographs/{sha256}/upright", UprightAsync);
        app.MapGet("/cases/{number:int}/report.json", ReportJsonAsync);
        app.MapGet("/cases/{number:int}/report.pdf", ReportPdfAsync);
        app.MapPost("/cases/{number:int}/pieces/{piece:int}/marks", KeepMarks.PostAsync);
        Api.MapTo(app);
        return app;
    }

    // What cannot be shown as a page is said in its own words, whatever was asked for.
    private static async Task GuardedAsync(HttpContext http, RequestDelegate next)
    {
        http.Response.Headers.ContentSecurityPolicy = Policy;
        http.Response.Headers.XContentTypeOptions = "nosniff";
        if (http.Request.ContentLength > SentBytesMax)
        {
            // A browser reads the answer only after it has sent everything.
            http.Features.Get<IHttpMaxRequestBodySizeFeature>()!.MaxRequestBodySize = null;
            await SayAsync(http, StatusCodes.Status413PayloadTooLarge, Said("api.too-large"));
            return;
        }
        if (!await IsWholeAsync(http.Request))
        {
            await SayAsync(http, StatusCodes.Status400BadRequest, Said("pages.broken-form"));
            return;
        }
        try
        {
            await next(http);
        }
        // A damaged photograph, a store that may not be written.
        catch (InputRefusedException refused) when (!http.Response.HasStarted)
        {
            http.Response.Headers.CacheControl = "no-store";
            await SayAsync(http, StatusCodes.Status500InternalServerError, refused.Message);
        }
        catch (Exception fault)
            when (!http.Response.HasStarted && fault is not (OperationCanceledException or OutOfMemoryException))
        {
            LogFault(http.RequestServices.GetRequiredService<ILogger<WebApplication>>(), fault);
            http.Response.Clear();
            http.Response.Headers.CacheControl = "no-store";
            await SayAsync(http, StatusCodes.Status500InternalServerError, Said("pages.fault"));
        }
    }

    // A form is read once, here; whoever asks for it later gets what was read.
    private static async Task<bool> IsWholeAsync(HttpRequest request)
    {
        try
        {
            if (request.HasFormContentType)
                await request.ReadFormAsync(request.HttpContext.RequestAborted);
            return true;
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException)
        {
            return false;
        }
    }

    [LoggerMessage(LogLevel.Error, "A request could not be answered.")]
    private static partial void LogFault(ILogger logger, Exception fault);

    // Asked for the head alone, the answer is that of the whole; one without a page says in a sentence what is wrong.
    private static async Task AnsweredAsync(HttpContext http, RequestDelegate next)
    {
        var isHead = HttpMethods.IsHead(http.Request.Method);
        if (isHead)
        {
            http.Request.Method = HttpMethods.Get;
            http.Response.Body = Stream.Null;
        }
        await next(http);
        if (isHead)
            http.Request.Method = HttpMethods.Head;
        if (http.Response is { HasStarted: false, StatusCode: >= 400 and var status, ContentLength: null })
            await SayAsync(
                http,
                status,
                status switch
                {
                    StatusCodes.Status404NotFound => Said("pages.no-such-page"),
                    StatusCodes.Status405MethodNotAllowed => Said("pages.not-asked-so"),
                    _ => Said("pages.bad-request"),
                }
            );
    }

    private static Task SayAsync(HttpContext http, int status, string text)
    {
        http.Response.StatusCode = status;
        http.Response.ContentType = "text/plain; charset=utf-8";
        return http.Response.WriteAsync(text, http.RequestAborted);
    }

    private static IResult Asset(string name, HttpContext http)
    {
        if (name is "sheet.css" or "marking.css")
        {
            var style = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Alburnum.Web.Assets.{name}");
            return Results.Stream(style!, "text/css; charset=utf-8");
        }
        if (!FontNames.Contains(name, StringComparer.Ordinal))
            return Results.NotFound();
        http.Response.Headers.CacheControl = "max-age=86400";
        return Results.Bytes(Reports.FontFiles.Read(name), "font/ttf");
    }

    private static string[] FontNames { get; } =
    ["Lato-Regular.ttf", "Lato-Bold.ttf", "Lato-Italic.ttf", "Vollkorn-SemiBold.ttf"];

    private static Task<IResult> PhotographAsync(
        string sha256,
        ICaseStore store,
        HttpContext http,
        CancellationToken stop
    ) =>
        OfPhotographAsync(
            sha256,
            store,
            http,
            photograph =>
                MediaType(photograph.Bytes.Span) is { } kind
                    ? Results.Bytes(photograph.Bytes.ToArray(), kind)
                    // TIFF and HEIC: browsers show neither, so they get a copy.
                    : Copy(photograph),
            stop
        );

    // As a person sees it, however the camera was held: what is clicked on and what is typed count in the same pixels.
    private static Task<IResult> UprightAsync(
        string sha256,
        ICaseStore store,
        HttpContext http,
        CancellationToken stop
    ) => OfPhotographAsync(sha256, store, http, Copy, stop);

    private static async Task<IResult> OfPhotographAsync(
        string sha256,
        ICaseStore store,
        HttpContext http,
        Func<Photograph, IResult> shown,
        CancellationToken stop
    )
    {
        if (await store.PhotographAsync(sha256, stop) is not { } photograph)
            return Results.NotFound();
        // Named by its own content, so it never changes.
        http.Response.Headers.CacheControl = "max-age=31536000, immutable";
        return shown(photograph);
    }

    private static IResult Copy(Photograph photograph) =>
        Results.Bytes(Thumbnail.Jpeg(photograph.FileName, photograph.Bytes, ShownLongSidePx), "image/jpeg");

    private static async Task<IResult> ReportJsonAsync(
        int number,
        int? run,
        ICaseStore store,
        CancellationToken stop
    ) =>
        await store.RunAsync(number, run, stop) is { } kept
            ? Results.Text(kept.Document, "application/json; charset=utf-8")
            : Results.NotFound();

    private static async Task<IResult> ReportPdfAsync(int number, int? run, ICaseStore store, CancellationToken stop)
    {
        if (await store.RunAsync(number, run, stop) is not { } kept)
            return Results.NotFound();
        var document = KeptDocument.Of(kept);
        var photographs = new List<Photograph>();
        foreach (
            var sha256 in document
                .Pieces.Select(piece => piece.Reading.Sha256)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
        )
        {
            if (await store.PhotographAsync(sha256, stop) is { } photograph)
                photographs.Add(photograph);
        }
        var pictures = CaseReport.Pictures(photographs);
        return Results.Bytes(CaseReport.Write(document, pictures), "application/pdf");
    }

    // Beyond this the server itself breaks off, without a word.
    private const long SentBytesMax = 30_000_000;

    private const int ShownLongSidePx = 2400;

    /// <summary>The kind of picture, read from its first bytes; what a file is called proves nothing. Null for one that browsers do not show.</summary>
    private static string? MediaType(ReadOnlySpan<byte> bytes) =>
        bytes switch
        {
            [0xFF, 0xD8, ..] => "image/jpeg",
            [0x89, (byte)'P', (byte)'N', (byte)'G', ..] => "image/png",
            [(byte)'R', (byte)'I', (byte)'F', (byte)'F', ..] => "image/webp",
            _ => null,
        };
}
