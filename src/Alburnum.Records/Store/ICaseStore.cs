using Alburnum.Records.Ledger;

namespace Alburnum.Records.Store;

/// <summary>Cases, their runs and their photographs, wherever they are kept. Runs are only ever added, and what is removed for a person's sake leaves an entry.</summary>
/// <remarks>Everything throws <see cref="InputRefusedException"/> where the store, or a file beside it, cannot be used.</remarks>
public interface ICaseStore
{
    /// <summary>Where the store is, for people.</summary>
    string Place { get; }

    /// <summary>
    /// Adds a run with its evidence: first its photographs, then its reports, last the run itself. Cut off anywhere, the run is not in the
    /// store; refused at any step, the reports are as they were before.
    /// </summary>
    /// <remarks>
    /// A run belongs to the case of its reference where that has the same title, the same client or a photograph in common; otherwise to a
    /// new case.
    /// </remarks>
    /// <param name="run">The run with its photographs and files.</param>
    /// <param name="reports">Its reports.</param>
    /// <param name="stop">Signalled to give up; the run is not kept then.</param>
    Task<KeptAs> AddAsync(CaseRecord run, FilesTogether reports, CancellationToken stop);

    /// <summary>Some of the cases, each with its last run, the latest first.</summary>
    /// <param name="skipped">How many of the latest are passed over.</param>
    /// <param name="most">How many are listed at most.</param>
    /// <param name="stop">Signalled to give up.</param>
    Task<CaseListing> ListAsync(int skipped, int most, CancellationToken stop);

    /// <summary>Every run of a case, the first one first; empty where the store has no such case.</summary>
    Task<IReadOnlyList<RunEntry>> RunsAsync(int caseNumber, CancellationToken stop);

    /// <summary>A run of a case by its number, or its last; null where the store has none.</summary>
    /// <param name="caseNumber">Number of the case.</param>
    /// <param name="number">Number of the run, from 1; null for the last.</param>
    /// <param name="stop">Signalled to give up.</param>
    Task<KeptRun?> RunAsync(int caseNumber, int? number, CancellationToken stop);

    /// <summary>Names the state of a case: hash of its last entry in the ledger, to which every act on it adds. Null where the store has no such case.</summary>
    Task<string?> StateAsync(int caseNumber, CancellationToken stop);

    /// <summary>A photograph by its SHA-256, its bytes checked against it; null where no run rests on such a photograph.</summary>
    Task<Photograph?> PhotographAsync(string sha256, CancellationToken stop);

    /// <summary>Number of the case that a person means: its number, or a reference that one case alone has. Of a deleted case, the number.</summary>
    Task<int> CaseNumberAsync(string text, CancellationToken stop);

    /// <summary>The entries of a case in the ledger, the first one first; empty where the store has no such case. Nothing is verified.</summary>
    Task<IReadOnlyList<LedgerEntry>> LedgerAsync(int caseNumber, CancellationToken stop);

    /// <summary>Holds the whole ledger against itself and against every run, document and photograph in the store. Nothing is changed.</summary>
    /// <param name="notedHead">Hash of an entry that was the last one once, noted elsewhere; null where none was.</param>
    /// <param name="stop">Signalled to give up.</param>
    Task<LedgerFindings> VerifyAsync(string? notedHead, CancellationToken stop);

    /// <summary>Enters a correction of an earlier entry, which stays as it is.</summary>
    /// <param name="caseNumber">Number of the case.</param>
    /// <param name="entry">Number of the entry that is corrected.</param>
    /// <param name="text">What is right.</param>
    /// <param name="stop">Signalled to give up.</param>
    Task CorrectAsync(int caseNumber, int entry, string text, CancellationToken stop);

    /// <summary>Removes a text, such as a person's name, from all that a case holds and from its entries. The chain stays whole.</summary>
    /// <param name="asked">Of which case, and why.</param>
    /// <param name="text">The text, as it is written.</param>
    /// <param name="isReadable">Whether a run can be read: one that could must not be left so that it cannot.</param>
    /// <param name="stop">Signalled to give up.</param>
    Task<Redaction> RedactAsync(
        Removal asked,
        string text,
        Func<KeptRun, Task<bool>> isReadable,
        CancellationToken stop
    );

    /// <summary>Deletes what a case holds, and the texts of its entries. The entries stay, and one that says who deleted it and why.</summary>
    /// <param name="asked">Of which case, and why.</param>
    /// <param name="stop">Signalled to give up.</param>
    Task<CaseDeletion> DeleteCaseAsync(Removal asked, CancellationToken stop);

    /// <summary>The same to be read bit by bit; null likewise. Checked before anything is read of it.</summary>
    Task<OpenPhotograph?> OpenPhotographAsync(string sha256, CancellationToken stop);
}
