namespace Alburnum.Records.Store;

/// <summary>Cases, their runs and their photographs, wherever they are kept. Runs are only ever added.</summary>
/// <remarks>Everything throws <see cref="InputRefusedException"/> where the store, or a file beside it, cannot be used.</remarks>
public interface ICaseStore
{
    /// <summary>Where the store is, for people.</summary>
    string Place { get; }

    /// <summary>
    /// Adds a run with its evidence: first its photographs, then whatever <paramref name="beforeKept"/> writes, last the run
    /// itself. Cut off anywhere, the run is not in the store.
    /// </summary>
    /// <param name="run">The run with its photographs and files.</param>
    /// <param name="beforeKept">What must succeed before the run is kept, for instance writing its reports.</param>
    /// <param name="stop">Signalled to give up; the run is not kept then.</param>
    Task AddAsync(CaseRecord run, Func<CancellationToken, Task> beforeKept, CancellationToken stop);

    /// <summary>Every case with its last run, the latest first.</summary>
    Task<IReadOnlyList<CaseEntry>> ListAsync(CancellationToken stop);

    /// <summary>Every run of a case, the first one first; empty where the store has no such case.</summary>
    Task<IReadOnlyList<RunEntry>> RunsAsync(string reference, CancellationToken stop);

    /// <summary>A run of a case by its number, or its last; null where the store has none.</summary>
    /// <param name="reference">Reference of the case.</param>
    /// <param name="number">Number of the run, from 1; null for the last.</param>
    /// <param name="stop">Signalled to give up.</param>
    Task<KeptRun?> RunAsync(string reference, int? number, CancellationToken stop);

    /// <summary>A photograph by its SHA-256, its bytes checked against it; null where no run rests on such a photograph.</summary>
    Task<Photograph?> PhotographAsync(string sha256, CancellationToken stop);
}
