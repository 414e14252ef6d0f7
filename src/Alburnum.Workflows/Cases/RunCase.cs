using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Ledger;
using Alburnum.Records.Marks;
using Alburnum.Records.Store;

namespace Alburnum.Workflows.Cases;

/// <summary>What is to be kept of a run beside its evidence.</summary>
/// <param name="RunAt">When it was made, UTC.</param>
/// <param name="Document">The result as JSON.</param>
/// <param name="Files">The report's files; the run is kept only where they can be written.</param>
public sealed record RunReport(DateTime RunAt, string Document, FilesTogether Files)
{
    /// <summary>Number of the case that this is another run of; null: it is found by its reference, or made.</summary>
    public int? CaseNumber { get; init; }
}

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
    /// <returns>As which case it was kept, and what that case was before.</returns>
    /// <exception cref="InputRefusedException">The store or the report's folder cannot be written.</exception>
    public static Task<KeptAs> KeepAsync(CaseReading run, RunReport report, ICaseStore store, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(store);
        var kept = run.Folder.Run(report.RunAt, run.Judged.Overall.Verdict, report.Document) with
        {
            CaseNumber = report.CaseNumber,
            Inputs = run.Inputs,
            Statements = [.. Statements(run.Folder)],
        };
        return store.AddAsync(kept, report.Files, stop);
    }

    // What a person decided about the case, beside what lies in its files as text.
    private static IEnumerable<LedgerStatement> Statements(CaseFolder folder)
    {
        yield return new(LedgerAct.RulebookChosen, Subject: null, folder.Rulebook.FullTitle);
        foreach (var photograph in folder.Photographs)
            if (MarkText.CaseLines(photograph.Marks) is { Count: > 0 } lines)
                yield return new(LedgerAct.MarksPlaced, photograph.Piece, string.Join("; ", lines));
        foreach (var photograph in folder.LeftOut)
            yield return new(LedgerAct.PhotographLeftOut, photograph.FileName, photograph.Reason);
    }
}
