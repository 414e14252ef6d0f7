using Alburnum.Records.Ledger;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>The ledger within the tables. Entries are made in the transaction of the act that they record: both are kept, or neither.</summary>
/// <param name="context">The tables, in a transaction where entries are made.</param>
internal sealed class LedgerTable(StoreContext context)
{
    /// <summary>Every entry, or those of one case, in their order.</summary>
    public async Task<IReadOnlyList<KeptEntry>> EntriesAsync(int? onlyCase, CancellationToken stop)
    {
        var rows = await context
            .Ledger.AsNoTracking()
            .Where(row => onlyCase == null || row.CaseNumber == onlyCase)
            .OrderBy(row => row.Number)
            .ToListAsync(stop);
        return [.. rows.Select(row => new KeptEntry(row.Number, row.CaseNumber, row.Sealed, row.Opened, row.Hash))];
    }

    /// <summary>Begins the ledger: the first entry, and what is in the store already as it is found.</summary>
    /// <param name="at">When, UTC.</param>
    /// <param name="by">Who.</param>
    /// <param name="stop">Signalled to give up.</param>
    public async Task BeginAsync(DateTime at, Person by, CancellationToken stop)
    {
        await AppendAsync(0, at, by, [new(LedgerAct.LedgerBegun, Subject: null, Before: null, After: null)], stop);
        await foreach (var (run, number) in HeldFiles.RunsAsync(context, onlyCase: null, stop))
            await AppendRunAsync(run, number, new(at, by) { Act = LedgerAct.RunFound }, stop);
    }

    /// <summary>Enters a run: what is otherwise than before, the run, its verdict, its reports.</summary>
    /// <param name="run">The run as it is kept.</param>
    /// <param name="number">Which run of its case it is, from 1.</param>
    /// <param name="account">What is to be entered of it beside what the tables hold.</param>
    /// <param name="stop">Signalled to give up.</param>
    public async Task AppendRunAsync(RunRow run, int number, RunAccount account, CancellationToken stop)
    {
        var before = (await EntriesAsync(run.CaseNumber, stop)).Select(LedgerJson.Entry).OfType<LedgerEntry>().ToList();
        IEnumerable<LedgerStatement> statements =
        [
            new(
                LedgerAct.CaseNamed,
                Subject: null,
                LedgerJson.OfTexts(("reference", run.Reference), ("title", run.Title), ("client", run.Client))
            ),
            .. account.Photographs
                ?? run.Photographs.Select(each => new LedgerStatement(
                    LedgerAct.PhotographTakenIn,
                    each.FileName,
                    each.Sha256
                )),
            .. account.Statements,
            .. account.Inputs is { } inputs
                ? new[] { new LedgerStatement(LedgerAct.InputsUsed, Subject: null, LedgerJson.OfInputs(inputs)) }
                : [],
        ];
        var files = HeldFiles.OfRun(run, number).Select(file => file.Sum);
        var wasVerdict = before.FindLast(entry => entry.Act == LedgerAct.VerdictGiven)?.After?.Text;
        List<LedgerDraft> drafts =
        [
            .. Changes(before, [.. statements]),
            new(account.Act, Subject: null, Before: null, LedgerJson.OfRun(number, files)),
            new(LedgerAct.VerdictGiven, Subject: null, wasVerdict, run.Verdict),
        ];
        if (account.Reports.Count > 0)
            drafts.Add(new(LedgerAct.ReportsIssued, Subject: null, Before: null, LedgerJson.OfTexts(account.Reports)));
        await AppendAsync(run.CaseNumber, account.At, account.By, drafts, stop);
    }

    /// <summary>Adds entries to the end.</summary>
    /// <param name="caseNumber">Number of the case; 0: the store as a whole.</param>
    /// <param name="at">When, UTC.</param>
    /// <param name="by">Who.</param>
    /// <param name="drafts">What is to be entered, in order.</param>
    /// <param name="stop">Signalled to give up.</param>
    public async Task AppendAsync(
        int caseNumber,
        DateTime at,
        Person by,
        IReadOnlyList<LedgerDraft> drafts,
        CancellationToken stop
    )
    {
        var last = await context.Ledger.AsNoTracking().OrderByDescending(row => row.Number).FirstOrDefaultAsync(stop);
        var ofCase = context.Ledger.AsNoTracking().Where(row => row.CaseNumber == caseNumber);
        var lastOfCase = await ofCase.OrderByDescending(row => row.Number).FirstOrDefaultAsync(stop);
        var (number, inCase) = (last?.Number ?? 0, await ofCase.CountAsync(stop));
        var (previous, previousInCase) = (last?.Hash ?? LedgerPlace.Nothing, lastOfCase?.Hash ?? LedgerPlace.Nothing);
        foreach (var draft in drafts)
        {
            var kept = KeptEntry.Of(
                new(
                    new(++number, ++inCase, previous, previousInCase),
                    caseNumber,
                    at,
                    draft.Act,
                    SealedText.Of(LedgerJson.OfPerson(by))!,
                    SealedText.Of(draft.Subject),
                    SealedText.Of(draft.Before),
                    SealedText.Of(draft.After)
                )
            );
            previous = previousInCase = kept.Hash;
            context.Ledger.Add(
                new()
                {
                    Number = kept.Number,
                    CaseNumber = kept.CaseNumber,
                    Sealed = kept.Sealed,
                    Opened = kept.Opened,
                    Hash = kept.Hash,
                }
            );
        }
        await context.SaveChangesAsync(stop);
    }

    // What is said now and was otherwise, or not said; then what was said and is no longer.
    private static IEnumerable<LedgerDraft> Changes(
        IReadOnlyList<LedgerEntry> before,
        IReadOnlyList<LedgerStatement> statements
    )
    {
        var acts = statements
            .Select(each => each.Act)
            .Append(LedgerAct.MarksPlaced)
            .Append(LedgerAct.PhotographLeftOut);
        var was = new Dictionary<(LedgerAct, string), string?>();
        foreach (
            var entry in before.Where(entry => acts.Contains(entry.Act) && entry.Subject is not { IsRemoved: true })
        )
            was[(entry.Act, entry.Subject?.Text ?? "")] = entry.After?.Text;
        foreach (var now in statements)
        {
            var text = was.GetValueOrDefault((now.Act, now.Subject ?? ""));
            if (text != now.Text)
                yield return new(now.Act, now.Subject, text, now.Text);
        }
        var isSaid = statements.Select(each => (each.Act, each.Subject ?? "")).ToHashSet();
        foreach (var ((act, subject), text) in was)
            if (text is not null && !isSaid.Contains((act, subject)))
                yield return new(act, subject, text, After: null);
    }
}

/// <summary>What is entered of a run beside what the tables hold of it.</summary>
/// <param name="At">When it is entered, UTC. When the run was made, its document says.</param>
/// <param name="By">Who made it.</param>
internal sealed record RunAccount(DateTime At, Person By)
{
    /// <summary>Whether it is made now, or was found when the ledger began.</summary>
    public LedgerAct Act { get; init; } = LedgerAct.CaseRun;

    /// <summary>What it was worked out with; null where that is not known.</summary>
    public RunInputs? Inputs { get; init; }

    /// <summary>Its photographs under their names within the case; null: as the tables name them.</summary>
    public IEnumerable<LedgerStatement>? Photographs { get; init; }

    /// <summary>What it makes so of its case.</summary>
    public IReadOnlyList<LedgerStatement> Statements { get; init; } = [];

    /// <summary>Names and hashes of the report files that were written.</summary>
    public IReadOnlyList<(string Name, string Sha256)> Reports { get; init; } = [];
}
