using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;

namespace Alburnum.Web.Guarding;

/// <summary>How many readings are done at once: as many as there are cores. Some wait; whoever comes when too many wait is told so.</summary>
internal static class Readings
{
    /// <summary>Most that wait.</summary>
    public const int WaitingMost = 32;

    private const int TryAgainSeconds = 5;

    /// <summary>Limits them.</summary>
    public static void Limit(RateLimiterOptions limits)
    {
        limits.RejectionStatusCode = StatusCodes.Status503ServiceUnavailable;
        limits.OnRejected = (rejected, _) =>
        {
            rejected.HttpContext.Response.Headers.RetryAfter = TryAgainSeconds.ToString(CultureInfo.InvariantCulture);
            return ValueTask.CompletedTask;
        };
        limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, bool>(http =>
            IsCostly(http)
                ? RateLimitPartition.GetConcurrencyLimiter(
                    true,
                    _ =>
                        new()
                        {
                            PermitLimit = Environment.ProcessorCount,
                            QueueLimit = WaitingMost,
                            QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
                        }
                )
                : RateLimitPartition.GetNoLimiter(false)
        );
    }

    /// <summary>True where a request has a photograph read, a report drawn or a case judged. Whatever is sent may do so.</summary>
    public static bool IsCostly(HttpContext http) =>
        http.GetEndpoint() is { } endpoint
        && (
            endpoint.Metadata.GetMetadata<CostlyAttribute>() is not null
            || !(HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsHead(http.Request.Method))
        );
}
