using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json.Nodes;
using Alburnum.Records.Ledger;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>What a store holds, file by file, as the ledger names it.</summary>
internal static class HeldFiles
{
    /// <summary>What the tables hold of a store, or of one case. The photographs are read later: nobody has to wait for them.</summary>
    /// <param name="context">The tables.</param>
    /// <param name="onlyCase">Number of the case; null for all.</param>
    /// <param name="keep">What is kept of each file: together they may be too large to be held.</param>
    /// <param name="stop">Signalled to give up.</param>
    public static async Task<HeldInTables<T>> InTablesAsync<T>(
        StoreContext context,
        int? onlyCase,
        Func<HeldFile, T> keep,
        CancellationToken stop
    )
    {
        var files = new List<T>();
        await foreach (var (run, number) in RunsAsync(context, onlyCase, stop))
            files.AddRange(OfRun(run, number).Select(keep));
        var photographs = onlyCase is null
            ? context.Photographs
            : context.Runs.Where(run => run.CaseNumber == onlyCase).SelectMany(run => run.Photographs).Distinct();
        return new(files, await photographs.AsNoTracking().OrderBy(row => row.Sha256).ToListAsync(stop));
    }

    /// <summary>The runs with their numbers within their cases, one at a time: together they may be too large to be held.</summary>
    /// <param name="context">The tables.</param>
    /// <param name="onlyCase">Number of the case; null for all.</param>
    /// <param name="stop">Signalled to give up.</param>
    public static async IAsyncEnumerable<(RunRow Run, int Number)> RunsAsync(
        StoreContext context,
        int? onlyCase,
        [EnumeratorCancellation] CancellationToken stop
    )
    {
        var runs = await context
            .Runs.Where(run => onlyCase == null || run.CaseNumber == onlyCase)
            .OrderBy(run => run.Id)
            .Select(run => new { run.Id, run.CaseNumber })
            .ToListAsync(stop);
        foreach (var ofCase in runs.GroupBy(run => run.CaseNumber))
        foreach (var (i, run) in ofCase.Index())
        {
            var row = await context
                .Runs.AsNoTracking()
                .Include(each => each.Papers)
                .Include(each => each.Photographs)
                .AsSplitQuery()
                .FirstAsync(each => each.Id == run.Id, stop);
            yield return (row, i + 1);
        }
    }

    /// <summary>The hashes of what a store or a case holds.</summary>
    /// <param name="context">The tables.</param>
    /// <param name="photographs">The photographs beside them.</param>
    /// <param name="onlyCase">Number of the case; null for all.</param>
    /// <param name="stop">Signalled to give up.</param>
    public static async Task<IReadOnlyList<HeldSum>> SumsAsync(
        StoreContext context,
        PhotographFiles photographs,
        int? onlyCase,
        CancellationToken stop
    ) => await SumsAsync(await InTablesAsync(context, onlyCase, file => file.Sum, stop), photographs, stop);

    /// <summary>The same, with what the tables hold read already. A photograph that is missing is passed over.</summary>
    public static async Task<IReadOnlyList<HeldSum>> SumsAsync(
        HeldInTables<HeldSum> tables,
        PhotographFiles photographs,
        CancellationToken stop
    )
    {
        var sums = tables.Files.ToList();
        foreach (var row in tables.Photographs)
            if (await photographs.AsFoundAsync(row.Sha256, stop) is { } bytes)
                sums.Add(Sum(row, Sha256Of.Bytes(bytes)));
        return sums;
    }

    /// <summary>The hashes of what a store or a case holds, with each photograph taken to be what its name says.</summary>
    public static IReadOnlyList<HeldSum> SumsByName(HeldInTables<HeldSum> tables) =>
        [.. tables.Files, .. tables.Photographs.Select(row => Sum(row, row.Sha256))];

    /// <summary>The files of a run, without its photographs.</summary>
    /// <param name="row">The run with its papers, and its photographs by their hashes.</param>
    /// <param name="number">Which run of its case it is, from 1.</param>
    public static IEnumerable<HeldFile> OfRun(RunRow row, int number)
    {
        yield return new(HeldPath.Run(row.CaseNumber, number), Encoding.UTF8.GetBytes(InTheList(row)));
        yield return new(HeldPath.Document(row.CaseNumber, number), Encoding.UTF8.GetBytes(row.Document));
        foreach (var paper in row.Papers)
            yield return new(HeldPath.Paper(row.CaseNumber, number, paper.FileName), paper.Bytes);
    }

    private static HeldSum Sum(PhotographRow row, string sha256) =>
        new(HeldPath.Photograph(row.Sha256), sha256) { CameInAs = row.FileName };

    // What the tables say of a run beside its document: a verdict changed in the list of cases alone is a change too.
    private static string InTheList(RunRow row) =>
        LedgerJson.Text(
            new JsonObject
            {
                ["reference"] = row.Reference,
                ["title"] = row.Title,
                ["client"] = row.Client,
                ["run_at"] = LedgerJson.Moment(row.RunAt),
                ["verdict"] = row.Verdict,
                ["photographs"] = new JsonArray([
                    .. row
                        .Photographs.Select(photograph => photograph.Sha256)
                        .Order(StringComparer.Ordinal)
                        .Select(sha256 => JsonValue.Create(sha256)),
                ]),
            }
        );
}

/// <summary>What tables hold.</summary>
/// <param name="Files">The files of the runs.</param>
/// <param name="Photographs">The photographs, in the order of their SHA-256.</param>
internal sealed record HeldInTables<T>(IReadOnlyList<T> Files, IReadOnlyList<PhotographRow> Photographs);

/// <summary>A file that a store holds.</summary>
/// <param name="Path">Its path within a bundle.</param>
/// <param name="Bytes">Its bytes.</param>
internal sealed record HeldFile(string Path, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>The file by its hash.</summary>
    public HeldSum Sum => new(Path, Sha256Of.Bytes(Bytes.Span));
}
