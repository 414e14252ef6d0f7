using Microsoft.AspNetCore.Http;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Web.Guarding;

/// <summary>
/// Keeps pages of other sites from having work done here or using what is served. A link to a page that costs nothing may be followed
/// from anywhere.
/// </summary>
/// <remarks>What a browser says of where a request comes from: W3C, Fetch Metadata Request Headers; RFC 6454 for Origin, which older browsers send.</remarks>
internal static class OtherSites
{
    public static Task RefuseAsync(HttpContext http, RequestDelegate next) =>
        !IsAddress(http.Request) ? Refusal.SayAsync(http, StatusCodes.Status400BadRequest, Said("pages.bad-request"))
        : IsOfOtherSite(http.Request) && !IsLinkFollowed(http)
            ? Refusal.SayAsync(http, StatusCodes.Status403Forbidden, Said("api.other-site"))
        : next(http);

    // A name that is allowed with a port that cannot be.
    private static bool IsAddress(HttpRequest request) =>
        Uri.TryCreate($"{request.Scheme}://{request.Host}", UriKind.Absolute, out _);

    // A program that is no browser says neither.
    private static bool IsOfOtherSite(HttpRequest request) =>
        request.Headers["Sec-Fetch-Site"].ToString() is not ("" or "same-origin" or "none")
        || (
            request.Headers.Origin.ToString() is { Length: > 0 } origin
            && origin != $"{request.Scheme}://{request.Host}"
        );

    private static bool IsLinkFollowed(HttpContext http) =>
        HttpMethods.IsGet(http.Request.Method)
        && http.Request.Headers["Sec-Fetch-Mode"] == "navigate"
        && http.Request.Headers["Sec-Fetch-Dest"] == "document"
        && !Readings.IsCostly(http);
}
