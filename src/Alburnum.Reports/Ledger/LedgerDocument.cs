using Alburnum.Records.Ledger;

namespace Alburnum.Reports.Ledger;

/// <summary>The entries of a case in the ledger. Fields as in docs/json/ledger.md.</summary>
public sealed record LedgerDocument
{
    /// <summary>Number of the case in the store.</summary>
    public required int Case { get; init; }

    /// <summary>The entries, the first one first.</summary>
    public required IReadOnlyList<LedgerEntryDocument> Entries { get; init; }

    /// <summary>The document of a case's entries.</summary>
    public static LedgerDocument From(int caseNumber, IEnumerable<LedgerEntry> entries) =>
        new() { Case = caseNumber, Entries = [.. entries.Select(LedgerEntryDocument.From)] };
}

/// <summary>One entry.</summary>
public sealed record LedgerEntryDocument
{
    /// <summary>Its number in the ledger of the store.</summary>
    public required int Number { get; init; }

    /// <summary>Its number among the entries of its case.</summary>
    public required int NumberInCase { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTime At { get; init; }

    /// <summary>What was done.</summary>
    public required string Act { get; init; }

    /// <summary>Who did it; null where the name was removed.</summary>
    public required string? By { get; init; }

    /// <summary>How the name is known; null likewise.</summary>
    public required string? KnownBy { get; init; }

    /// <summary>What it was done to; null where that is the case itself.</summary>
    public required string? Subject { get; init; }

    /// <summary>What was so before; null where nothing was.</summary>
    public required string? Before { get; init; }

    /// <summary>What is so since; null where nothing is.</summary>
    public required string? After { get; init; }

    /// <summary>Names of the texts that were removed.</summary>
    public required IReadOnlyList<string> Removed { get; init; }

    /// <summary>Hash of the entry before it in the store.</summary>
    public required string Previous { get; init; }

    /// <summary>Hash of the entry.</summary>
    public required string Hash { get; init; }

    /// <summary>The document of an entry.</summary>
    internal static LedgerEntryDocument From(LedgerEntry entry) =>
        new()
        {
            Number = entry.Place.Number,
            NumberInCase = entry.Place.NumberInCase,
            At = entry.At,
            Act = entry.Act.Key(),
            By = entry.Who?.Name,
            KnownBy = entry.Who?.KnownBy.Key(),
            Subject = entry.Subject?.Text,
            Before = entry.Before?.Text,
            After = entry.After?.Text,
            Removed = entry.Removed,
            Previous = entry.Place.Previous,
            Hash = entry.Hash,
        };
}
