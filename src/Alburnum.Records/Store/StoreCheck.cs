using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>What a check of a store found.</summary>
/// <param name="Cases">How many cases it has.</param>
/// <param name="Runs">How many runs.</param>
/// <param name="Photographs">How many photographs they rest on.</param>
/// <param name="Damages">What is damaged or missing; empty where the store is whole.</param>
/// <param name="Unused">Files among its photographs that no run rests on. What was broken off leaves them; the next opening to keep runs removes those older than an hour.</param>
/// <param name="OpenToOthers">Files that others than their owner may read.</param>
public sealed record StoreFindings(
    int Cases,
    int Runs,
    int Photographs,
    IReadOnlyList<InputProblem> Damages,
    IReadOnlyList<string> Unused,
    IReadOnlyList<string> OpenToOthers
);

/// <summary>Checks that a store is whole: its tables, and each photograph against its SHA-256. Nothing is changed.</summary>
public static class StoreCheck
{
    /// <summary>Checks a store.</summary>
    /// <param name="path">Database file of the store.</param>
    /// <param name="say">Told in a line when another program has to be waited for.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <exception cref="InputRefusedException">It is not there, is no case store, or was made by another version.</exception>
    public static async Task<StoreFindings> RunAsync(string path, Action<string> say, CancellationToken stop)
    {
        var file = new SqliteFile(path, say, CaseStore.LongestWait);
        await file.RefuseUnlessReadableAsync(stop);
        return await file.RefusingAsync(async () =>
        {
            using var context = file.Open(SqliteOpenMode.ReadOnly);
            List<InputProblem> damages = [.. await StoreTables.FaultsAsync(context, path, stop)];
            // What cannot be read cannot be counted either.
            if (damages.Count > 0)
                throw new InputRefusedException(damages);
            var photographs = await context.Photographs.AsNoTracking().ToListAsync(stop);
            foreach (var row in photographs)
                await CheckAsync(file.Photographs, row, damages, stop);
            return new StoreFindings(
                await context.Runs.Select(run => run.CaseNumber).Distinct().CountAsync(stop),
                await context.Runs.CountAsync(stop),
                photographs.Count,
                damages,
                LoosePhotographs.Among(file.Photographs, photographs.Select(row => row.Sha256)),
                [
                    .. file
                        .Photographs.All.Order(StringComparer.Ordinal)
                        .Append(file.Path)
                        .Where(OwnersOnly.IsOpenToOthers),
                ]
            );
        });
    }

    private static async Task CheckAsync(
        PhotographFiles files,
        PhotographRow row,
        List<InputProblem> damages,
        CancellationToken stop
    )
    {
        try
        {
            await files.ReadAsync(row.Sha256, row.FileName, stop);
        }
        catch (InputRefusedException refused)
        {
            damages.AddRange(refused.Problems);
        }
    }
}
