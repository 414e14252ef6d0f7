using Alburnum.Workflows;
using Spectre.Console;

namespace Alburnum.Cli;

/// <summary>Long work: a bar on a terminal; elsewhere a list says one plain line for each finished item, and a single run says nothing.</summary>
internal static class Progress
{
    /// <summary>Does the work and gives the results in the order of the items. The first failure stops the rest.</summary>
    public static async Task<IReadOnlyList<TResult>> EachAsync<TItem, TResult>(
        IAnsiConsole console,
        string title,
        IReadOnlyList<TItem> items,
        Func<TItem, string> name,
        Func<TItem, TResult> work,
        CancellationToken stop
    )
    {
        var results = new TResult[items.Count];
        Task EachAsync(Action<TItem> finished) =>
            Parallel.ForAsync(
                0,
                items.Count,
                new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount },
                (i, _) =>
                {
                    results[i] = work(items[i]);
                    finished(items[i]);
                    return ValueTask.CompletedTask;
                }
            );

        if (items.Count == 0)
            return results;
        if (HasBar(console))
        {
            await console
                .Progress()
                .AutoClear(true)
                .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn())
                .StartAsync(async progress =>
                {
                    var task = progress.AddTask(title, maxValue: items.Count);
                    await EachAsync(_ => task.Increment(1));
                });
        }
        else
        {
            var done = 0;
            var line = new Lock();
            await EachAsync(item =>
            {
                lock (line)
                    console.WriteLine($"{title}: {++done} of {items.Count}, {name(item)}");
            });
        }
        return results;
    }

    /// <summary>Shows how a workflow comes on: a bar on a terminal; elsewhere one plain line for each finished item.</summary>
    public static async Task<TResult> ShowAsync<TResult>(
        IAnsiConsole console,
        string title,
        Func<IProgress<WorkDone>, Task<TResult>> work
    )
    {
        if (!HasBar(console))
            return await work(new Lines(console, title));
        return await console
            .Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn())
            .StartAsync(progress => work(new Bar(progress.AddTask(title, maxValue: 1))));
    }

    /// <summary>Does one long run that tells the share done, 0 to 1.</summary>
    public static async Task<TResult> OfAsync<TResult>(
        IAnsiConsole console,
        string title,
        Func<IProgress<double>?, TResult> work,
        CancellationToken stop
    )
    {
        if (!HasBar(console))
            return work(null);
        return await console
            .Progress()
            .AutoClear(true)
            .StartAsync(async progress =>
            {
                var task = progress.AddTask(title, maxValue: 1);
                return await Task.Run(() => work(new Share(task)), stop);
            });
    }

    private static bool HasBar(IAnsiConsole console) =>
        console.Profile.Capabilities.Interactive && console.Profile.Out.IsTerminal;

    private sealed class Lines(IAnsiConsole console, string title) : IProgress<WorkDone>
    {
        public void Report(WorkDone value)
        {
            if (value.Item is { } item)
                console.WriteLine($"{title}: {item.Number} of {item.Of}, {item.Name}");
        }
    }

    private sealed class Bar(ProgressTask task) : IProgress<WorkDone>
    {
        public void Report(WorkDone value) => task.Value = value.Share;
    }

    private sealed class Share(ProgressTask task) : IProgress<double>
    {
        public void Report(double value) => task.Value = value;
    }
}
