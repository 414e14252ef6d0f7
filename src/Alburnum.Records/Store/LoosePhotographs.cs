using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>
/// Files among the photographs that no run rests on: what a run leaves that was broken off while it was added, and a deletion that was
/// broken off before it came to the files.
/// </summary>
internal static class LoosePhotographs
{
    /// <summary>Longer than a run takes from its first photograph to its last entry: what is younger may be another program's work.</summary>
    private static readonly TimeSpan LeftAlone = TimeSpan.FromHours(1);

    /// <summary>The files that no run rests on, in the order of their paths.</summary>
    /// <param name="files">Every photograph there is.</param>
    /// <param name="used">SHA-256 of those that runs rest on.</param>
    public static IReadOnlyList<string> Among(PhotographFiles files, IEnumerable<string> used)
    {
        var names = used.ToHashSet(StringComparer.Ordinal);
        return [.. files.All.Where(each => !names.Contains(Path.GetFileName(each))).Order(StringComparer.Ordinal)];
    }

    /// <summary>Removes them; one that cannot be removed, or is younger than an hour, stays for the next time.</summary>
    /// <param name="file">The store; it is of this version.</param>
    /// <param name="stop">Signalled to give up.</param>
    public static async Task RemoveAsync(SqliteFile file, CancellationToken stop)
    {
        using var context = file.Open(SqliteOpenMode.ReadWrite);
        if (!(await OldAsync(context, file, stop)).Any())
            return;
        // Alone, since another may be keeping one of them just now.
        await using var transaction = await file.BeginAsync(context, stop);
        foreach (var path in await OldAsync(context, file, stop))
            try
            {
                File.Delete(path);
            }
            catch (Exception trouble) when (FileTrouble.Is(trouble))
            {
                // A check of the store counts it.
            }
    }

    private static async Task<IEnumerable<string>> OldAsync(
        StoreContext context,
        SqliteFile file,
        CancellationToken stop
    )
    {
        var used = await file.WaitAsync(() => context.Photographs.Select(row => row.Sha256).ToListAsync(stop), stop);
        var before = DateTime.UtcNow - LeftAlone;
        return Among(file.Photographs, used).Where(path => File.GetLastWriteTimeUtc(path) < before);
    }
}
