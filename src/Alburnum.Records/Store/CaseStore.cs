using Alburnum.Records.Ledger;

namespace Alburnum.Records.Store;

/// <summary>The ways to a case store: to look at it, or to keep runs in it.</summary>
public static class CaseStore
{
    /// <summary>How long a command waits for another program.</summary>
    internal static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(30);

    /// <summary>The same for a page, which somebody is looking at.</summary>
    private static readonly TimeSpan LongestWaitOfAPage = TimeSpan.FromSeconds(2);

    /// <summary>Refuses a path that cannot be a case store, before any work is done. Nothing is changed, and nothing stays behind.</summary>
    /// <param name="path">Database file of the store; it need not be there yet.</param>
    /// <exception cref="InputRefusedException">A folder stands there, or a file in which no run can be kept.</exception>
    public static void Examine(string path) => new SqliteFile(path, _ => { }, LongestWait).Examine();

    /// <summary>Opens a store to look at it: nothing is made, changed or brought forward, not by a byte.</summary>
    /// <param name="path">Database file of the store.</param>
    /// <param name="say">Told in a line when another program has to be waited for.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <exception cref="InputRefusedException">
    /// It is not there, is no case store, was made by another version, or was cut off in the middle of a change.
    /// </exception>
    public static async Task<ICaseStore> LookAsync(string path, Action<string> say, CancellationToken stop)
    {
        var file = new SqliteFile(path, say, LongestWait);
        await file.RefuseUnlessReadableAsync(stop);
        return new SqliteStore(file, by: null);
    }

    /// <summary>
    /// Opens a store to keep runs in it. It is made where it is missing; one of an earlier version is brought forward, after a
    /// copy of it was put beside it.
    /// </summary>
    /// <param name="path">Database file of the store; its folder is made where it is missing.</param>
    /// <param name="by">Who does what is done through it.</param>
    /// <param name="say">Told in a line when the store is brought forward, and when another program has to be waited for.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <exception cref="InputRefusedException">It cannot be opened, is no case store, or was made by a newer version.</exception>
    public static Task<ICaseStore> KeepAsync(string path, Person by, Action<string> say, CancellationToken stop) =>
        ReadyAsync(new(path, say, LongestWait), by, stop);

    /// <summary>
    /// Opens a store for pages, to keep runs in it; one that may not be written is opened to look at, and that is said.
    /// </summary>
    /// <inheritdoc cref="KeepAsync"/>
    public static async Task<ICaseStore> KeepOrLookAsync(
        string path,
        Person by,
        Action<string> say,
        CancellationToken stop
    )
    {
        var file = new SqliteFile(path, say, LongestWaitOfAPage);
        if (file.MayBeWritten)
            return await ReadyAsync(file, by, stop);
        var store = await LookAsync(path, say, stop);
        say($"{path} may not be written to: its cases can be viewed, but no run can be kept.");
        return store;
    }

    /// <summary>Where the store is by default: the user's data folder.</summary>
    /// <exception cref="InputRefusedException">The user has none.</exception>
    public static string UsualPath()
    {
        var folder = Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData,
            Environment.SpecialFolderOption.DoNotVerify
        );
        return folder.Length > 0
            ? Path.Combine(folder, "alburnum", "cases.db")
            : throw new InputRefusedException(
                new InputProblem("case store", 0, "", "", "no home folder to keep it in", "the name of its file")
            );
    }

    private static async Task<ICaseStore> ReadyAsync(SqliteFile file, Person by, CancellationToken stop)
    {
        await file.MakeReadyAsync(by, stop);
        return new SqliteStore(file, by);
    }
}
