using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Web.Guarding;

/// <summary>What cannot be answered is said in words: too much sent, broken forms, unusable files, and last the faults of this program.</summary>
internal static partial class Faults
{
    /// <summary>Most that is sent at once, bytes. Beyond this the server itself breaks off, without a word.</summary>
    public const long SentBytesMax = 30_000_000;

    public static async Task SayAsync(HttpContext http, RequestDelegate next)
    {
        try
        {
            await next(http);
        }
        // A damaged photograph, a store that may not be written.
        catch (InputRefusedException refused) when (!http.Response.HasStarted)
        {
            await AnewAsync(http, refused.Message);
        }
        // A body that breaks off while it is read.
        catch (BadHttpRequestException broken) when (!http.Response.HasStarted)
        {
            await Refusal.SayAsync(http, broken.StatusCode, Said("pages.broken-form"));
        }
        catch (Exception fault)
            when (!http.Response.HasStarted && fault is not (OperationCanceledException or OutOfMemoryException))
        {
            LogFault(http.RequestServices.GetRequiredService<ILogger<HttpContext>>(), fault);
            await AnewAsync(http, Said("pages.fault"));
        }
    }

    /// <summary>A form is read once, here; whoever asks for it later gets what was read.</summary>
    public static async Task ReadFormAsync(HttpContext http, RequestDelegate next)
    {
        if (http.Request.ContentLength > SentBytesMax)
        {
            // A browser reads the answer only after it has sent everything.
            http.Features.Get<IHttpMaxRequestBodySizeFeature>()!.MaxRequestBodySize = null;
            await Refusal.SayAsync(http, StatusCodes.Status413PayloadTooLarge, Said("api.too-large"));
        }
        else if (!await IsWholeAsync(http.Request))
            await Refusal.SayAsync(http, StatusCodes.Status400BadRequest, Said("pages.broken-form"));
        else
            await next(http);
    }

    /// <summary>Asked for the head alone, the answer is that of the whole; one without a page says in a sentence what is wrong.</summary>
    public static async Task AnswerAsync(HttpContext http, RequestDelegate next)
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
            await Refusal.SayAsync(http, status, SentenceOf(status));
    }

    private static string SentenceOf(int status) =>
        status switch
        {
            StatusCodes.Status404NotFound => Said("pages.no-such-page"),
            StatusCodes.Status405MethodNotAllowed => Said("pages.not-asked-so"),
            StatusCodes.Status503ServiceUnavailable => Said("pages.too-many"),
            _ => Said("pages.bad-request"),
        };

    private static Task AnewAsync(HttpContext http, string text)
    {
        http.Response.Clear();
        AnswerHeaders.Set(http.Response.Headers);
        return Refusal.SayAsync(http, StatusCodes.Status500InternalServerError, text);
    }

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
}
