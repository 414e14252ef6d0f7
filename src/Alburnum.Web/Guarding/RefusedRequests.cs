using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Alburnum.Web.Guarding;

/// <summary>
/// Tells whoever runs the server of requests that were refused: the first of a kind at once, those of each minute after it together, so that many refused
/// requests cannot fill the log. Of the request itself nothing is written.
/// </summary>
internal sealed partial class RefusedRequests(ILogger<RefusedRequests> logger, TimeProvider clock) : IDisposable
{
    private static readonly TimeSpan Apart = TimeSpan.FromMinutes(1);

    private readonly Lock _one = new();
    private readonly Dictionary<int, Minute> _minutes = [];

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
            if (_minutes.TryGetValue(status, out var minute))
                minute.Refused++;
            else
                Tell(status, 1);
        }
    }

    public void Dispose()
    {
        lock (_one)
            foreach (var minute in _minutes.Values)
                minute.End.Dispose();
    }

    // Another minute begins; it is told of at its end, if anything was refused in it.
    private void Tell(int status, int refused)
    {
        LogRefused(logger, refused, status);
        _minutes[status] = new(clock.CreateTimer(_ => End(status), null, Apart, Timeout.InfiniteTimeSpan));
    }

    private void End(int status)
    {
        lock (_one)
        {
            if (!_minutes.Remove(status, out var minute))
                return;
            minute.End.Dispose();
            if (minute.Refused > 0)
                Tell(status, minute.Refused);
        }
    }

    [LoggerMessage(LogLevel.Warning, "Requests refused since the last such line: {count}, with status {status}.")]
    private static partial void LogRefused(ILogger logger, int count, int status);

    private sealed class Minute(ITimer end)
    {
        public ITimer End => end;

        public int Refused { get; set; }
    }
}
