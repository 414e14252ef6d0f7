using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace Alburnum.Web.Guarding;

/// <summary>What every answer tells the browser that it may do with it, refusals included.</summary>
internal static class AnswerHeaders
{
    private const string Policy =
        "default-src 'none'; img-src 'self'; style-src 'self'; font-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>For what never changes under its address, and is still nobody else's to keep.</summary>
    public const string KeptByTheReader = "private, max-age=31536000, immutable";

    public static Task SetAsync(HttpContext http, RequestDelegate next)
    {
        Set(http.Response.Headers);
        // What made the page is nobody's business.
        http.Response.OnStarting(() =>
        {
            http.Response.Headers.Remove("blazor-enhanced-nav");
            return Task.CompletedTask;
        });
        return next(http);
    }

    /// <summary>Sets them; an answer that was begun and given up has lost them.</summary>
    public static void Set(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        // Not "no-referrer": with that a browser would also hide where a form comes from.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        // A client's data; what may be kept says so itself.
        headers.CacheControl = "no-store";
    }

    /// <summary>Names the answer as a file. The name is made of numbers and fixed words, never of what a person wrote.</summary>
    /// <param name="response">The answer.</param>
    /// <param name="isShown">True where the browser shows it, false where it is saved.</param>
    /// <param name="fileName">The name.</param>
    public static void Name(HttpResponse response, bool isShown, string fileName) =>
        response.Headers.ContentDisposition = new ContentDispositionHeaderValue(isShown ? "inline" : "attachment")
        {
            FileName = fileName,
        }.ToString();
}
