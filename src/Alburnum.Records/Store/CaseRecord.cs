using Alburnum.Penetration;
using Alburnum.Records.Ledger;

namespace Alburnum.Records.Store;

/// <summary>A case as the list shows it: what it is and how its last run came out.</summary>
/// <param name="Number">Its number in the store, from 1: what it is addressed by.</param>
/// <param name="Reference">The technologist's own reference. Another case may have the same.</param>
/// <param name="Title">What the case is about.</param>
/// <param name="Client">Who asked.</param>
/// <param name="RunAt">When it was last run, UTC.</param>
/// <param name="Verdict">What was said of it.</param>
/// <param name="Runs">How often it was run.</param>
public sealed record CaseEntry(
    int Number,
    string Reference,
    string Title,
    string Client,
    DateTime RunAt,
    Verdict Verdict,
    int Runs
);

/// <summary>A part of the list of cases.</summary>
/// <param name="Entries">The cases listed.</param>
/// <param name="Cases">How many cases the store has.</param>
public sealed record CaseListing(IReadOnlyList<CaseEntry> Entries, int Cases);

/// <summary>One run of a case, whole: its result document and the photographs it rests on.</summary>
/// <param name="Reference">The technologist's own reference.</param>
/// <param name="Title">What the case is about.</param>
/// <param name="Client">Who asked.</param>
/// <param name="RunAt">When it was run, UTC.</param>
/// <param name="Verdict">What was said of it.</param>
/// <param name="Document">The result as JSON, the same text as report.json.</param>
/// <param name="Photographs">Photographs that it rests on; the document names them by their SHA-256.</param>
/// <param name="Files">case.yaml and its tables as they were read: with the photographs, all it takes to run the case again.</param>
public sealed record CaseRecord(
    string Reference,
    string Title,
    string Client,
    DateTime RunAt,
    Verdict Verdict,
    string Document,
    IReadOnlyList<Photograph> Photographs,
    IReadOnlyList<KeptFile> Files
)
{
    /// <summary>Number of the case that this is another run of; null: it is found by its reference, or made.</summary>
    public int? CaseNumber { get; init; }

    /// <summary>What it was worked out with, beside its files; null where that is not known.</summary>
    public RunInputs? Inputs { get; init; }

    /// <summary>What it makes so of its case, beside its name and photographs: marks, exclusions, the rulebook.</summary>
    public IReadOnlyList<LedgerStatement> Statements { get; init; } = [];
}

/// <summary>How a run was kept.</summary>
/// <param name="CaseNumber">Number of its case in the store.</param>
/// <param name="Before">What its case was called by its last run; null where the case is new.</param>
/// <param name="DocumentBefore">The result of its case's last run as JSON; null likewise.</param>
/// <param name="Namesake">Another case of the same reference that it was not taken for; null where there is none.</param>
public sealed record KeptAs(int CaseNumber, CaseTitle? Before, string? DocumentBefore, CaseTitle? Namesake);

/// <summary>What a case is called.</summary>
/// <param name="Number">Its number in the store.</param>
/// <param name="Title">What it is about.</param>
/// <param name="Client">Who asked.</param>
public sealed record CaseTitle(int Number, string Title, string Client);

/// <summary>A written file of a case exactly as it was read.</summary>
/// <param name="FileName">Name within the case.</param>
/// <param name="Bytes">The file's bytes, unchanged.</param>
public sealed record KeptFile(string FileName, ReadOnlyMemory<byte> Bytes);

/// <summary>One run of a case, as a list of runs shows it.</summary>
/// <param name="Number">Which run of its case it is, from 1.</param>
/// <param name="RunAt">When it was run, UTC.</param>
/// <param name="Verdict">What was said of it.</param>
public sealed record RunEntry(int Number, DateTime RunAt, Verdict Verdict);

/// <summary>A run as it was kept, without its photographs.</summary>
/// <param name="Number">Which run of its case it is, from 1.</param>
/// <param name="Document">The result as JSON.</param>
/// <param name="Files">What it was read from; empty for runs from before files were kept.</param>
public sealed record KeptRun(int Number, string Document, IReadOnlyList<KeptFile> Files);
