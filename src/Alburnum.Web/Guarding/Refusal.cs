using Microsoft.AspNetCore.Http;

namespace Alburnum.Web.Guarding;

/// <summary>Says in one sentence why a request is not answered: to a person as text, to a program as problem details (RFC 9457).</summary>
internal static class Refusal
{
    public static Task SayAsync(HttpContext http, int status, string text)
    {
        if (http.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
            return Results.Problem(statusCode: status, title: text).ExecuteAsync(http);
        http.Response.StatusCode = status;
        http.Response.ContentType = "text/plain; charset=utf-8";
        return http.Response.WriteAsync(text, http.RequestAborted);
    }
}
