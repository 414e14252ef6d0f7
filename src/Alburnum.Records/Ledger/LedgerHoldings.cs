namespace Alburnum.Records.Ledger;

/// <summary>What a store must hold according to its ledger.</summary>
internal static class LedgerHoldings
{
    /// <summary>Each file that must be there, by its path.</summary>
    /// <param name="entries">The entries in their order.</param>
    public static IReadOnlyDictionary<string, LedgerHolding> Of(IEnumerable<LedgerEntry> entries)
    {
        var byCase = new Dictionary<int, Dictionary<string, LedgerHolding>>();
        foreach (var entry in entries)
        {
            if (!byCase.TryGetValue(entry.CaseNumber, out var files))
                byCase[entry.CaseNumber] = files = new(StringComparer.Ordinal);
            // A redaction names anew all that its case holds; a deletion leaves nothing.
            if (entry.Act is LedgerAct.Redacted or LedgerAct.CaseDeleted)
                files.Clear();
            foreach (var file in Named(entry))
                files[file.Path] = new(file.Sha256, entry.Place.Number);
        }
        // Two cases may rest on one photograph.
        var all = new Dictionary<string, LedgerHolding>(StringComparer.Ordinal);
        foreach (var (path, holding) in byCase.Values.SelectMany(files => files))
            all.TryAdd(path, holding);
        return all;
    }

    private static IEnumerable<HeldSum> Named(LedgerEntry entry) =>
        entry.After?.Text is not { } text
            ? []
            : entry.Act switch
            {
                LedgerAct.CaseRun or LedgerAct.RunFound or LedgerAct.Redacted => LedgerJson.Files(text),
                LedgerAct.PhotographTakenIn => [new(HeldPath.Photograph(text), text)],
                _ => [],
            };
}

/// <summary>A file that must be there.</summary>
/// <param name="Sha256">SHA-256 of its bytes.</param>
/// <param name="Entry">Number of the entry that says so.</param>
internal sealed record LedgerHolding(string Sha256, int Entry);
