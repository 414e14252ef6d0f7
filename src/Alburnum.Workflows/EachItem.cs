namespace Alburnum.Workflows;

/// <summary>The same work on many items, side by side on all cores.</summary>
internal static class EachItem
{
    /// <summary>Does the work and gives the results in the order of the items. The first failure stops the rest.</summary>
    /// <param name="items">What to work on.</param>
    /// <param name="name">An item's own name, for progress.</param>
    /// <param name="work">Done once for each item, on any thread.</param>
    /// <param name="progress">Told of each item as it is finished, one at a time.</param>
    /// <param name="stop">Stops the work between items.</param>
    public static async Task<IReadOnlyList<TResult>> DoAsync<TItem, TResult>(
        IReadOnlyList<TItem> items,
        Func<TItem, string> name,
        Func<TItem, TResult> work,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        var results = new TResult[items.Count];
        var finished = 0;
        var line = new Lock();
        await Parallel.ForAsync(
            0,
            items.Count,
            new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount },
            (i, _) =>
            {
                results[i] = work(items[i]);
                lock (line)
                {
                    finished++;
                    progress?.Report(new((double)finished / items.Count, new(finished, items.Count, name(items[i]))));
                }
                return ValueTask.CompletedTask;
            }
        );
        return results;
    }
}
