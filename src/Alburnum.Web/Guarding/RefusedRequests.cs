using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Alburnum.Web.Guarding;

/// <summary>
/// Tells whoever runs the server of requests that were refused: the first of a kind at once, those after it together, at most once a minute, so that many refused
/// requests cannot fill the log. Of the request itself nothing is written.
/// </summary>
internal sealed partial class RefusedRequests(ILogger<RefusedRequests> logger, TimeProvider clock)
{
    private static readonly TimeSpan Apart = TimeSpan.FromMinutes(1);

    private readonly Lock _one = new();
    private readonly Dictionary<int, (DateTimeOffset ToldAt, int Since)> _refused = [];

    public static async Task CountAsync(HttpContext http, RequestDelegate next)
    {
        await next(http);
        // A fault of this program has a line of its own, and every browser asks for a picture that is not there.
        if (
            http.Response.StatusCode
            is >= 400
                and not (StatusCodes.Status404NotFound or StatusCodes.Status500InternalServerError)
                and var status
        )
            http.RequestServices.GetRequiredService<RefusedRequests>().Count(status);
    }

    /// <summary>Counts one.</summary>
    /// <param name="status">HTTP status that it was answered with.</param>
    public void Count(int status)
    {
        lock (_one)
        {
            var now = clock.GetUtcNow();
            var (toldAt, since) = _refused.GetValueOrDefault(status, (DateTimeOffset.MinValue, 0));
            since++;
            if (now - toldAt < Apart)
            {
                _refused[status] = (toldAt, since);
                return;
            }
            _refused[status] = (now, 0);
            LogRefused(logger, since, status);
        }
    }

    [LoggerMessage(LogLevel.Warning, "Requests refused since the last such line: {count}, with status {status}.")]
    private static partial void LogRefused(ILogger logger, int count, int status);
}
