using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;

namespace Alburnum.Workflows.Cases;

/// <summary>What is to be kept of a run beside its evidence.</summary>
/// <param name="RunAt">When it was made, UTC.</param>
/// <param name="Document">The result as JSON.</param>
/// <param name="WriteAsync">Writes the report's files; the run is kept only where that succeeds.</param>
public sealed record RunReport(DateTime RunAt, string Document, Func<CancellationToken, Task> WriteAsync);

/// <summary>Runs a case: its files to its verdict, then its verdict into the store.</summary>
public static class RunCase
{
    /// <summary>Reads a case's files, measures its photographs and judges it.</summary>
    /// <param name="files">The case's files.</param>
    /// <param name="facts">The facts that it may rest on.</param>
    /// <param name="progress">Told of each photograph as it is finished; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">Anything in the files is missing or wrong.</exception>
    public static Task<CaseReading> JudgeAsync(
        ICaseFiles files,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        return CaseReading.OfAsync(CaseFolderReader.Read(files, facts), facts, progress, stop);
    }

    /// <summary>Keeps a run: its photographs, then the report's files, last the run itself.</summary>
    /// <param name="run">The case measured and judged.</param>
    /// <param name="report">What is to be kept of it.</param>
    /// <param name="store">Where it is kept.</param>
    /// <param name="stop">Gives up; the run is not kept then.</param>
    /// <returns>The run before this one; null where it is the case's first.</returns>
    /// <exception cref="InputRefusedException">The store or the report's folder cannot be written.</exception>
    public static async Task<KeptRun?> KeepAsync(
        CaseReading run,
        RunReport report,
        ICaseStore store,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(store);
        var before = await store.RunAsync(run.Folder.Case.Reference, null, stop);
        var verdict = run.Judged.Overall.Verdict;
        await store.AddAsync(run.Folder.Run(report.RunAt, verdict, report.Document), report.WriteAsync, stop);
        return before;
    }
}
