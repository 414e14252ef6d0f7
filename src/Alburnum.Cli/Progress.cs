using Alburnum.Workflows;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli;

/// <summary>Long work: a bar on a terminal; elsewhere a list says one plain line for each finished item, and a single run says nothing.</summary>
internal static class Progress
{
    /// <summary>Where progress is shown: on the error stream where the result is JSON, so that nothing else stands among it.</summary>
    public static IAnsiConsole Beside(IAnsiConsole console, bool isJson) =>
        isJson
            ? new ShownConsole(
                AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) })
            )
            : console;

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

    /// <summary>The same for a workflow that is one long run.</summary>
    public static Task<TResult> RunAsync<TResult>(
        IAnsiConsole console,
        string title,
        Func<IProgress<WorkDone>, TResult> work,
        CancellationToken stop
    ) => ShowAsync(console, title, progress => Task.Run(() => work(progress), stop));

    private static bool HasBar(IAnsiConsole console) =>
        console.Profile.Capabilities.Interactive && console.Profile.Out.IsTerminal;

    private sealed class Lines(IAnsiConsole console, string title) : IProgress<WorkDone>
    {
        public void Report(WorkDone value)
        {
            if (value.Item is { } item)
                console.WriteLine(
                    Said(
                        "terminal.item",
                        ("title", title),
                        ("number", InputProblem.Number(item.Number)),
                        ("of", InputProblem.Number(item.Of)),
                        ("name", item.Name)
                    )
                );
        }
    }

    private sealed class Bar(ProgressTask task) : IProgress<WorkDone>
    {
        public void Report(WorkDone value) => task.Value = value.Share;
    }
}
