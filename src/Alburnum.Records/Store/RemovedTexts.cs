using Alburnum.Records.Ledger;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>Takes texts out of the entries of a case. Their seals stay, and with them the chain.</summary>
internal static class RemovedTexts
{
    /// <summary>Takes them out.</summary>
    /// <param name="context">The tables, in a transaction.</param>
    /// <param name="caseNumber">Number of the case.</param>
    /// <param name="goes">Whether a text goes.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <returns>How many were taken out now, and every one that is gone.</returns>
    public static async Task<(int Now, IReadOnlyList<(int Entry, string Name)> All)> TakeOutAsync(
        StoreContext context,
        int caseNumber,
        Func<string, bool> goes,
        CancellationToken stop
    )
    {
        var gone = new List<(int, string)>();
        var now = 0;
        foreach (var row in await context.Ledger.Where(row => row.CaseNumber == caseNumber).ToListAsync(stop))
        {
            if (LedgerJson.Entry(new(row.Number, row.CaseNumber, row.Sealed, row.Opened, row.Hash)) is not { } entry)
                continue;
            var rest = entry with
            {
                By = Left(entry.By)!,
                Subject = Left(entry.Subject),
                Before = Left(entry.Before),
                After = Left(entry.After),
            };
            row.Opened = LedgerJson.Opened(rest);
            gone.AddRange(rest.Texts.Where(each => each.Text.IsRemoved).Select(each => (row.Number, each.Name)));
        }
        await context.SaveChangesAsync(stop);
        return (now, gone);

        SealedText? Left(SealedText? text)
        {
            if (text?.Text is not { } open || !goes(open))
                return text;
            now++;
            return text with { Salt = null, Text = null };
        }
    }
}
