using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>
/// Photographs that no run rests on, because a run was broken off while it was added, or a deletion before it came to the files. Whoever begins either
/// notes the photographs first, so that nothing else is ever taken for loose: not the photographs of a database that was lost or put back, nor
/// another program's files.
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

    /// <summary>Removes those that were noted more than an hour ago; one that cannot be removed stays for the next time.</summary>
    /// <param name="file">The store; it is of this version.</param>
    /// <param name="stop">Signalled to give up.</param>
    public static async Task RemoveAsync(SqliteFile file, CancellationToken stop)
    {
        var before = DateTime.UtcNow - LeftAlone;
        List<string> notes = [.. file.Photographs.Notes.Where(note => File.GetLastWriteTimeUtc(note) < before)];
        if (notes.Count == 0)
            return;
        using var context = file.Open(SqliteOpenMode.ReadWrite);
        // Alone, since another may be keeping one of them just now.
        await using var transaction = await file.BeginAsync(context, stop);
        var used = await context.Photographs.Select(row => row.Sha256).ToListAsync(stop);
        foreach (var note in notes)
            try
            {
                // A note whose writing was broken off may end in half a name.
                var noted = (await File.ReadAllLinesAsync(note, stop)).Where(PhotographFiles.IsName);
                foreach (var sha256 in noted.Except(used, StringComparer.Ordinal))
                    file.Photographs.Remove(sha256);
                File.Delete(note);
            }
            catch (Exception trouble) when (FileTrouble.Is(trouble) || trouble is InputRefusedException)
            {
                // A check of the store counts what is left.
            }
    }
}
