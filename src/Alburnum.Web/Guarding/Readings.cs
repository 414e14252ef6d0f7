using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;

namespace Alburnum.Web.Guarding;

/// <summary>How many readings are done at once: as many as there are cores. Some wait; whoever comes when too many wait is told so.</summary>
internal static class Readings
{
    /// <summary>Most that wait.</summary>
    public const int WaitingMost = 256;

    private const int TryAgainSeconds = 5;

    // More pages at once are not made sooner, and each takes room.
    private const int PagesPerCore = 2;
    private const int PagesWaitingMost = 1000;

    private enum Work
    {
        Small,
        Page,
        Reading,
    }

    /// <summary>Limits them.</summary>
    public static void Limit(RateLimiterOptions limits)
    {
        limits.RejectionStatusCode = StatusCodes.Status503ServiceUnavailable;
        limits.OnRejected = (rejected, _) =>
        {
            rejected.HttpContext.Response.Headers.RetryAfter = TryAgainSeconds.ToString(CultureInfo.InvariantCulture);
            return ValueTask.CompletedTask;
        };
        limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, Work>(http =>
            IsCostly(http) ? Few(Work.Reading, Environment.ProcessorCount, WaitingMost)
            : IsPage(http) ? Few(Work.Page, PagesPerCore * Environment.ProcessorCount, PagesWaitingMost)
            : RateLimitPartition.GetNoLimiter(Work.Small)
        );
    }

    private static RateLimitPartition<Work> Few(Work work, int most, int waiting) =>
        RateLimitPartition.GetConcurrencyLimiter(
            work,
            _ =>
                new()
                {
                    PermitLimit = most,
                    QueueLimit = waiting,
                    QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
                }
        );

    private static bool IsPage(HttpContext http) =>
        http.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>() is not null;

    /// <summary>True where a request has a photograph read, a report drawn or a case judged. Whatever is sent may do so.</summary>
    public static bool IsCostly(HttpContext http) =>
        http.GetEndpoint() is { } endpoint
        && (
            endpoint.Metadata.GetMetadata<CostlyAttribute>() is not null
            || !(HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsHead(http.Request.Method))
        );
}
