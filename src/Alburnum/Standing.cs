namespace Alburnum;

/// <summary>How far a fact may be relied on. Ordered: a greater value is weaker.</summary>
public enum Standing
{
    /// <summary>Read in a named document, with edition and table or clause.</summary>
    Published,

    /// <summary>Worked out here from numbers read in a named document, by a way that is said. What rests on a remembered number is itself from memory.</summary>
    WorkedOut,

    /// <summary>Known in the trade; no source is named.</summary>
    CommonPractice,

    /// <summary>Remembered; to be checked against the document before anyone relies on it.</summary>
    FromMemory,
}

/// <summary>Where a fact comes from and how far it may be relied on. Travels with every fact.</summary>
/// <param name="Standing">How far the fact may be relied on.</param>
/// <param name="Document">Document named as the source, or what kind of knowledge it is where there is no document.</param>
/// <param name="Edition">Edition or year of the document; empty where unknown.</param>
/// <param name="Place">Table, clause or page; empty where unknown.</param>
/// <param name="Note">What a reader should know, for instance "read at second hand"; empty where nothing.</param>
public sealed record Provenance(Standing Standing, string Document, string Edition, string Place, string Note)
{
    /// <summary>The source in one line, as printed under an answer.</summary>
    public string Citation =>
        string.Join(", ", new[] { Document, Edition, Place, Note }.Where(part => part.Length > 0));

    /// <summary>The weakest standing among some facts; published where there are none.</summary>
    public static Standing Weakest(IEnumerable<Standing> standings) =>
        standings.DefaultIfEmpty(Standing.Published).Max();
}
