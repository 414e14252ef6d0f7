using Alburnum.Requirements;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Documents;

/// <summary>A user's own file of a rulebook.</summary>
public sealed record RulebookCopyDocument
{
    /// <summary>Its path, as it was given.</summary>
    public required string File { get; init; }

    /// <summary>SHA-256 of its bytes, in hexadecimal digits.</summary>
    public required string Sha256 { get; init; }

    /// <summary>A rulebook with the user's own file of it behind it.</summary>
    /// <param name="rulebook">Document and edition.</param>
    /// <param name="copy">The file; null for a rulebook that ships.</param>
    public static string Title(string rulebook, RulebookCopyDocument? copy) =>
        copy is null
            ? rulebook
            : Said("sheet.code-of-copy", ("rulebook", rulebook), ("file", copy.File), ("sha256", copy.Sha256));

    /// <summary>Writes it down; null for a rulebook that ships.</summary>
    internal static RulebookCopyDocument? Of(RulebookCopy? copy) =>
        copy is null ? null : new() { File = copy.File, Sha256 = copy.Sha256 };
}
