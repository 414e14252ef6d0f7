using System.Text;
using System.Text.Json.Nodes;
using Alburnum.Records.Ledger;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>
/// Removes a text from a case: in its runs and files another word takes its place; in the ledger the texts that hold it go, and their seals stay.
/// </summary>
/// <param name="context">The tables, in a transaction.</param>
/// <param name="file">The store.</param>
/// <param name="asked">What is asked.</param>
/// <param name="keeper">Who does it.</param>
internal sealed class Redacting(StoreContext context, SqliteFile file, Removal asked, Person keeper)
{
    private const int ShortestText = 3;

    // A plain word in YAML, CSV and JSON alike.
    private const string Instead = "REDACTED";

    /// <summary>Does it.</summary>
    public async Task<Redaction> RunAsync(string text, CancellationToken stop)
    {
        if (text.Trim().Length < ShortestText)
            throw file.Refused($"\"{text}\" to be removed", $"a text of at least {ShortestText} letters");
        if (asked.Because.Contains(text, StringComparison.Ordinal))
            throw file.Refused(
                "a reason that holds the text itself",
                "a reason without it: the ledger keeps the reason"
            );
        if (keeper.Name.Contains(text, StringComparison.Ordinal))
            throw file.Refused(
                "the text in the name of the person who removes it",
                "another person: the ledger keeps who"
            );
        var before = await HeldFiles.SumsAsync(context, file.Photographs, onlyCase: null, stop);
        // Whatever was changed before would be covered up by a redaction that names everything anew.
        var whole = LedgerCheck.OfStore(
            file.Path,
            await new LedgerTable(context).EntriesAsync(onlyCase: null, stop),
            before
        );
        if (whole.Faults.Count > 0)
            throw new InputRefusedException(whole.Faults);
        var notSearched = await ReplaceAsync(text, stop);
        // What stands in the tables now, not what was read before.
        context.ChangeTracker.Clear();
        var after = await HeldFiles.SumsAsync(context, file.Photographs, asked.CaseNumber, stop);
        var changed = before.Where(each => IsOfCase(each) && !after.Contains(each)).ToList();
        // The hash of a file that is gone would let a name be found by trying.
        var hashes = changed.Select(each => each.Sha256).ToList();
        var (now, all) = await RemovedTexts.TakeOutAsync(
            context,
            asked.CaseNumber,
            open =>
                open.Contains(text, StringComparison.Ordinal)
                || open.Contains(Escaped(text), StringComparison.Ordinal)
                || hashes.Exists(hash => open.Contains(hash, StringComparison.Ordinal)),
            stop
        );
        if (now == 0 && changed.Count == 0)
            throw file.Refused(
                $"case {asked.CaseNumber} without the text",
                "a text that stands in it, letter for letter"
            );
        await new LedgerTable(context).AppendAsync(
            asked.CaseNumber,
            DateTime.UtcNow,
            keeper,
            [new(LedgerAct.Redacted, asked.Because, Before: null, LedgerJson.OfRemoval(all, after))],
            stop
        );
        var photographs = after.Count(each => each.Path == HeldPath.Photograph(each.Sha256));
        return new(now, changed.Count, notSearched, photographs);
    }

    /// <summary>A run as it would be without a text; files that are no text stay as they are.</summary>
    public static KeptRun Without(KeptRun run, string text)
    {
        string Less(string from) => from.Replace(text, Instead, StringComparison.Ordinal);
        return run with
        {
            Document = InJson(run.Document, Less),
            Files =
            [
                .. run.Files.Select(each =>
                    each with
                    {
                        FileName = Less(each.FileName),
                        Bytes = InText(each.Bytes.ToArray(), Less) ?? each.Bytes,
                    }
                ),
            ],
        };
    }

    private bool IsOfCase(HeldSum each) =>
        each.Path.StartsWith(HeldPath.OfCase(asked.CaseNumber), StringComparison.Ordinal);

    private async Task<IReadOnlyList<string>> ReplaceAsync(string text, CancellationToken stop)
    {
        string Without(string from) => from.Replace(text, Instead, StringComparison.Ordinal);
        var notSearched = new SortedSet<string>(StringComparer.Ordinal);
        await foreach (var (run, _) in HeldFiles.RunsAsync(context, asked.CaseNumber, stop))
        {
            await context.Database.ExecuteSqlAsync(
                $"UPDATE run SET Reference = {Without(run.Reference)}, Title = {Without(run.Title)}, Client = {Without(run.Client)}, Document = {InJson(run.Document, Without)} WHERE Id = {run.Id}",
                stop
            );
            foreach (var paper in run.Papers)
            {
                var bytes = InText(paper.Bytes, Without);
                if (bytes is null)
                    notSearched.Add(paper.FileName);
                await context.Database.ExecuteSqlAsync(
                    $"UPDATE paper SET FileName = {Without(paper.FileName)}, Bytes = {bytes ?? paper.Bytes} WHERE RunId = {run.Id} AND FileName = {paper.FileName}",
                    stop
                );
            }
            foreach (var photograph in run.Photographs)
                await context.Database.ExecuteSqlAsync(
                    $"UPDATE photograph SET FileName = {Without(photograph.FileName)} WHERE Sha256 = {photograph.Sha256}",
                    stop
                );
        }
        return [.. notSearched];
    }

    // Null for bytes that are no text.
    private static byte[]? InText(byte[] bytes, Func<string, string> without)
    {
        if (bytes.Contains((byte)0) || !System.Text.Unicode.Utf8.IsValid(bytes))
            return null;
        return Encoding.UTF8.GetBytes(without(Encoding.UTF8.GetString(bytes)));
    }

    // Values alone: a name that is also the name of a field must leave the field.
    private static string InJson(string document, Func<string, string> without)
    {
        if (LedgerJson.ReadOrNull(() => LedgerJson.Object(document)) is not { } node)
            return without(document);
        return Replaced(node, without) ? Encoding.UTF8.GetString(LedgerJson.Lines(node)) : document;
    }

    private static bool Replaced(JsonNode node, Func<string, string> without)
    {
        var changed = false;
        var inside = node switch
        {
            JsonObject named => named.Select(each => each.Value).ToList(),
            JsonArray list => [.. list],
            _ => [],
        };
        foreach (var each in inside.OfType<JsonNode>())
        {
            if (each is JsonValue value && value.TryGetValue<string>(out var text))
            {
                var now = without(text);
                if (now == text)
                    continue;
                each.ReplaceWith(now);
                changed = true;
            }
            else
                changed |= Replaced(each, without);
        }
        return changed;
    }

    // As it stands within a JSON text.
    private static string Escaped(string text) => LedgerJson.Text(JsonValue.Create(text))[1..^1];
}
