using System.Net;
using System.Reflection;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Alburnum.Web.Guarding;

namespace Alburnum.Web.Tests.Guarding;

/// <summary>How many photographs are worked on at once.</summary>
public sealed class ReadingsTests
{
    private const int TooMany = 5;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Some_readings_wait_and_those_beyond_are_refused_in_words()
    {
        await using var site = await Site.OpenAsync();
        await site.KeepAsync(new FolderFiles(Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case")));
        var photograph = $"/photographs/{await site.PhotographOfAsync(1)}/upright";
        var store = DispatchProxy.Create<ICaseStore, SlowStore>();
        var slow = (SlowStore)store;
        slow.Behind = site.Store;
        await using var app = WebServer.Create(store, Site.Facts, port: 0);
        await app.StartAsync(Stop);
        using var browser = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };

        List<Task<HttpResponseMessage>> asked =
        [
            .. Enumerable
                .Range(0, Environment.ProcessorCount + Readings.WaitingMost + TooMany)
                .Select(_ => browser.GetAsync(new Uri(photograph, UriKind.Relative), Stop)),
        ];
        for (var refused = 0; refused < TooMany; refused++)
        {
            var first = await Task.WhenAny(asked);
            asked.Remove(first);
            using var answer = await first;
            Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
            Assert.NotNull(answer.Headers.RetryAfter);
            Assert.StartsWith(
                "As many photographs",
                await answer.Content.ReadAsStringAsync(Stop),
                StringComparison.Ordinal
            );
        }
        // What costs nothing is answered all the while.
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync(new Uri("/", UriKind.Relative), Stop)).StatusCode);
        slow.Gate.SetResult();

        Assert.All(await Task.WhenAll(asked), answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
    }

    /// <summary>A store whose photographs come only when the gate is open.</summary>
    public class SlowStore : DispatchProxy
    {
        /// <summary>The store behind it.</summary>
        internal ICaseStore? Behind { get; set; }

        internal TaskCompletionSource Gate { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) =>
            targetMethod!.Name == nameof(ICaseStore.OpenPhotographAsync)
                ? OpenedAsync((string)args![0]!)
                : targetMethod.Invoke(Behind, args);

        private async Task<OpenPhotograph?> OpenedAsync(string sha256)
        {
            await Gate.Task;
            return await Behind!.OpenPhotographAsync(sha256, CancellationToken.None);
        }
    }
}
