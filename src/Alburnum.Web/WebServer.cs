using System.Globalization;
using System.Net;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Web.Asking;
using Alburnum.Web.Files;
using Alburnum.Web.Guarding;
using Alburnum.Web.Pages;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;

namespace Alburnum.Web;

/// <summary>The local web application: served to this machine only, every byte from here. What guards it is in docs/security.md.</summary>
public static class WebServer
{
    private const int ConnectionsMost = 1000;

    /// <summary>A name that begins so is no field of an enquiry.</summary>
    private const string FormKey = "_form-key";

    // A port that is taken is said by whoever starts the server; that pages with forms are kept by no browser is as it should be.
    private static readonly string?[] SaidElsewhere =
    [
        "Microsoft.Extensions.Hosting.Internal.Host",
        "Microsoft.AspNetCore.Antiforgery.DefaultAntiforgery",
    ];

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
                Limit(kestrel);
            });
        builder
            .Logging.AddFilter((category, level) => level >= LogLevel.Warning && !SaidElsewhere.Contains(category))
            .AddConsole(console => console.FormatterName = LogLines.FormatName)
            .AddConsoleFormatter<LogLines, ConsoleFormatterOptions>();
        AddServices(builder.Services, store, facts);
        var app = builder.Build();
        Guard(app);
        app.UseAntiforgery();
        app.MapRazorComponents<Sheet>();
        app.MapGet("/assets/{name}", Asset.Get);
        app.MapGet("/photographs/{sha256}", ServedPhotograph.AsKeptAsync);
        app.MapGet("/photographs/{sha256}/upright", ServedPhotograph.UprightAsync).WithMetadata(new CostlyAttribute());
        app.MapGet("/cases/{number:int}/report.json", ServedReport.JsonAsync);
        app.MapGet("/cases/{number:int}/report.pdf", ServedReport.PdfAsync).WithMetadata(new CostlyAttribute());
        app.MapPost("/cases/{number:int}/pieces/{piece:int}/marks", KeepMarks.PostAsync);
        Api.MapTo(app);
        return app;
    }

    private static void Limit(KestrelServerOptions kestrel)
    {
        kestrel.AddServerHeader = false;
        kestrel.Limits.MaxRequestBodySize = Faults.SentBytesMax;
        kestrel.Limits.MaxConcurrentConnections = ConnectionsMost;
        // The defaults for lines, headers and slow senders (8 KB, 32 KB, 30 s) are what is wanted here.
    }

    private static void AddServices(IServiceCollection services, ICaseStore store, FactLibrary facts)
    {
        // Asked to end, it does not wait for what is still being read.
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromMilliseconds(300));
        services.AddSingleton(store);
        services.AddSingleton(facts);
        services.AddSingleton<ReadyCopies>();
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<RefusedRequests>();
        services.AddRoutingCore();
        services.AddRazorComponents();
        services.Configure<AntiforgeryOptions>(form =>
        {
            form.Cookie.Name = "alburnum-form";
            form.FormFieldName = FormKey;
            form.HeaderName = null;
        });
        // A rulebook file that is sent stays in memory.
        services.Configure<FormOptions>(form => form.MemoryBufferThreshold = SentRulebook.BytesMax);
        // Nothing outlives the process that a key would have to open; so none is made and written at the start either.
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.Remove(services.Single(service => service.ImplementationType?.Name == "DataProtectionHostedService"));
        // A page of another site must not reach this one under a name of its own, or under none.
        services.Configure<HostFilteringOptions>(hosts =>
        {
            hosts.AllowedHosts = ["127.0.0.1", "localhost"];
            hosts.AllowEmptyHosts = false;
            hosts.IncludeFailureMessage = false;
        });
        services.AddRateLimiter(Readings.Limit);
    }

    // What costs nothing is looked at first; a form is read only for those who may send one.
    private static void Guard(WebApplication app)
    {
        // Pages are written in the language in which the server was started.
        var language = CultureInfo.CurrentUICulture;
        app.Use(
            (http, next) =>
            {
                CultureInfo.CurrentUICulture = language;
                return AnswerHeaders.SetAsync(http, next);
            }
        );
        app.Use(RefusedRequests.CountAsync);
        app.Use(Faults.SayAsync);
        app.Use(Faults.AnswerAsync);
        app.UseHostFiltering();
        app.UseRouting();
        app.Use(OtherSites.RefuseAsync);
        app.Use(Faults.ReadFormAsync);
        app.UseRateLimiter();
    }
}
