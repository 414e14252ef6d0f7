using Alburnum.Records.Ledger;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>Deletes what a case holds. Its entries stay, without their texts; a last one says who deleted it, when and why.</summary>
/// <param name="context">The tables, in a transaction.</param>
/// <param name="asked">What is asked.</param>
/// <param name="keeper">Who does it.</param>
internal sealed class Deleting(StoreContext context, Removal asked, Person keeper)
{
    /// <summary>Does it.</summary>
    /// <returns>What was done, and the photographs whose files are now loose.</returns>
    public async Task<(CaseDeletion Deletion, IReadOnlyList<string> Loose)> RunAsync(CancellationToken stop)
    {
        var number = asked.CaseNumber;
        var runs = context.Runs.Where(run => run.CaseNumber == number);
        var count = await runs.CountAsync(stop);
        var own = await runs.SelectMany(run => run.Photographs)
            .Select(each => each.Sha256)
            .Distinct()
            .ToListAsync(stop);
        var ofOthers = await context
            .Runs.Where(run => run.CaseNumber != number)
            .SelectMany(run => run.Photographs)
            .Select(each => each.Sha256)
            .Distinct()
            .ToListAsync(stop);
        List<string> loose = [.. own.Except(ofOthers, StringComparer.Ordinal)];
        await NameAsOthersDoAsync([.. own.Intersect(ofOthers, StringComparer.Ordinal)], stop);
        // Files and links go with the runs.
        await runs.ExecuteDeleteAsync(stop);
        await context.Photographs.Where(row => loose.Contains(row.Sha256)).ExecuteDeleteAsync(stop);
        var (_, gone) = await RemovedTexts.TakeOutAsync(context, number, _ => true, stop);
        var ledger = new LedgerTable(context);
        await ledger.AppendAsync(
            number,
            DateTime.UtcNow,
            keeper,
            [new(LedgerAct.CaseDeleted, asked.Because, Before: null, LedgerJson.OfRemoval(gone, []))],
            stop
        );
        var entries = await context.Ledger.CountAsync(row => row.CaseNumber == number, stop);
        return (new(count, loose.Count, entries), loose);
    }

    // A photograph keeps the name under which it first came in, which may be this case's.
    private async Task NameAsOthersDoAsync(IReadOnlyList<string> shared, CancellationToken stop)
    {
        if (shared.Count == 0)
            return;
        var names = (await new LedgerTable(context).EntriesAsync(onlyCase: null, stop))
            .Where(kept => kept.CaseNumber != asked.CaseNumber)
            .Select(LedgerJson.Entry)
            .OfType<LedgerEntry>()
            .Where(entry => entry.Act == LedgerAct.PhotographTakenIn && entry.After?.Text is not null)
            .ToLookup(entry => entry.After!.Text!, entry => entry.Subject?.Text, StringComparer.Ordinal);
        foreach (var sha256 in shared)
            if (names[sha256].FirstOrDefault(name => name is not null) is { } name)
                await context.Database.ExecuteSqlAsync(
                    $"UPDATE photograph SET FileName = {name} WHERE Sha256 = {sha256}",
                    stop
                );
    }
}
