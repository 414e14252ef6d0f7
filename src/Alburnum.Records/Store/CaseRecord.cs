namespace Alburnum.Records.Store;

/// <summary>A case as the list shows it: what it is and how its last run came out.</summary>
/// <param name="Reference">The technologist's own reference; unique in the store.</param>
/// <param name="Title">What the case is about.</param>
/// <param name="Client">Who asked.</param>
/// <param name="RunAt">When it was last run, UTC.</param>
/// <param name="Verdict">"conforms", "does not conform" or "undecided".</param>
/// <param name="Runs">How often it was run.</param>
public sealed record CaseEntry(string Reference, string Title, string Client, DateTime RunAt, string Verdict, int Runs);

/// <summary>One run of a case, whole: its result document and the photographs it rests on.</summary>
/// <param name="Reference">The technologist's own reference.</param>
/// <param name="Title">What the case is about.</param>
/// <param name="Client">Who asked.</param>
/// <param name="RunAt">When it was run, UTC.</param>
/// <param name="Verdict">"conforms", "does not conform" or "undecided".</param>
/// <param name="Document">The result as JSON, the same text as report.json.</param>
/// <param name="Photographs">Photographs that the document names by their SHA-256.</param>
public sealed record CaseRecord(
    string Reference,
    string Title,
    string Client,
    DateTime RunAt,
    string Verdict,
    string Document,
    IReadOnlyList<PhotographRecord> Photographs
);

/// <summary>A photograph exactly as it arrived.</summary>
/// <param name="Sha256">SHA-256 of the bytes, 64 lower-case hexadecimal digits: its name in the store.</param>
/// <param name="FileName">Name under which it arrived.</param>
/// <param name="Bytes">The file's bytes, unchanged.</param>
public sealed record PhotographRecord(string Sha256, string FileName, ReadOnlyMemory<byte> Bytes);
