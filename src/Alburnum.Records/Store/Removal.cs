namespace Alburnum.Records.Store;

/// <summary>What is to be removed for a person's sake.</summary>
/// <param name="CaseNumber">Number of the case.</param>
/// <param name="Because">Why; the ledger keeps it.</param>
public sealed record Removal(int CaseNumber, string Because);

/// <summary>What a redaction did.</summary>
/// <param name="Texts">How many texts of entries were removed.</param>
/// <param name="Files">How many documents and files were changed.</param>
/// <param name="NotSearched">Files that are no text, such as workbooks: whether they hold it is not known.</param>
/// <param name="Photographs">How many photographs the case has, which were not looked at.</param>
public sealed record Redaction(int Texts, int Files, IReadOnlyList<string> NotSearched, int Photographs);

/// <summary>What a deletion did.</summary>
/// <param name="Runs">How many runs were deleted.</param>
/// <param name="Photographs">How many photographs; those that another case rests on stay.</param>
/// <param name="Entries">How many entries stay, without their texts.</param>
public sealed record CaseDeletion(int Runs, int Photographs, int Entries);
