namespace Alburnum.Records.Ledger;

/// <summary>One act on a case: who did what and when, and what was before and after.</summary>
/// <param name="Place">Where it stands in the chain.</param>
/// <param name="CaseNumber">Number of the case; 0 for the store as a whole.</param>
/// <param name="At">When, UTC, by the clock of the machine.</param>
/// <param name="Act">What was done.</param>
/// <param name="By">Who did it, as JSON: <c>name</c> and <c>known_by</c>.</param>
/// <param name="Subject">What it was done to: a photograph, a piece; null where that is the case itself. Of a redaction or deletion, why.</param>
/// <param name="Before">What was so before; null where nothing was.</param>
/// <param name="After">What is so since; null where nothing is.</param>
public sealed record LedgerEntry(
    LedgerPlace Place,
    int CaseNumber,
    DateTime At,
    LedgerAct Act,
    SealedText By,
    SealedText? Subject,
    SealedText? Before,
    SealedText? After
)
{
    /// <summary>SHA-256 of what is hashed of it, as it was kept.</summary>
    public string Hash { get; init; } = "";

    /// <summary>Who did it; null where the name was removed.</summary>
    public Person? Who => By.Text is { } text ? LedgerJson.PersonOrNull(text) : null;

    /// <summary>What was so before, part by part.</summary>
    public IReadOnlyList<LedgerPart> PartsBefore => LedgerJson.Parts(Before);

    /// <summary>What is so since, part by part.</summary>
    public IReadOnlyList<LedgerPart> PartsAfter => LedgerJson.Parts(After);

    /// <summary>Names of the texts that were removed: "by", "subject", "before", "after".</summary>
    public IReadOnlyList<string> Removed => [.. Texts.Where(each => each.Text.IsRemoved).Select(each => each.Name)];

    /// <summary>Its texts by their names, those that it has.</summary>
    internal IEnumerable<(string Name, SealedText Text)> Texts
    {
        get
        {
            yield return (LedgerJson.By, By);
            if (Subject is not null)
                yield return (LedgerJson.Subject, Subject);
            if (Before is not null)
                yield return (LedgerJson.Before, Before);
            if (After is not null)
                yield return (LedgerJson.After, After);
        }
    }
}

/// <summary>A part of what an entry says.</summary>
/// <param name="Name">Its name; empty where the whole is one text.</param>
/// <param name="Text">What it says; of a list, how many it has.</param>
public sealed record LedgerPart(string Name, string Text);

/// <summary>Where an entry stands.</summary>
/// <param name="Number">Its number in the ledger of the store, from 1.</param>
/// <param name="NumberInCase">Its number among the entries of its case, from 1.</param>
/// <param name="Previous">Hash of the entry before it; zeros for the first.</param>
/// <param name="PreviousInCase">Hash of the entry before it in its case; zeros for the first.</param>
public sealed record LedgerPlace(int Number, int NumberInCase, string Previous, string PreviousInCase)
{
    /// <summary>What stands for the hash of the entry before the first.</summary>
    internal static string Nothing { get; } = new('0', 64);
}

/// <summary>What is to be entered.</summary>
/// <param name="Act">What was done.</param>
/// <param name="Subject">What it was done to; null: the case itself.</param>
/// <param name="Before">What was so before; null: nothing.</param>
/// <param name="After">What is so since; null: nothing.</param>
internal sealed record LedgerDraft(LedgerAct Act, string? Subject, string? Before, string? After);

/// <summary>An entry as it is kept, to the byte.</summary>
/// <param name="Number">Its number in the ledger of the store.</param>
/// <param name="CaseNumber">Number of the case.</param>
/// <param name="Sealed">The text that is hashed: one JSON object, with seals in place of texts.</param>
/// <param name="Opened">The texts and their salts as one JSON object, by their names; those removed are missing.</param>
/// <param name="Hash">SHA-256 of <paramref name="Sealed"/> in UTF-8.</param>
internal sealed record KeptEntry(int Number, int CaseNumber, string Sealed, string Opened, string Hash)
{
    /// <summary>Seals an entry at its place.</summary>
    public static KeptEntry Of(LedgerEntry entry)
    {
        var text = LedgerJson.Sealed(entry);
        return new(entry.Place.Number, entry.CaseNumber, text, LedgerJson.Opened(entry), Sha256Of.Text(text));
    }
}

/// <summary>What a run makes so of its case, beside the run itself: a mark, an exclusion, a rulebook. What was otherwise before is entered in the ledger.</summary>
/// <param name="Act">The act by which it came to be so.</param>
/// <param name="Subject">What it is said of: a photograph, a piece; null: the case itself.</param>
/// <param name="Text">What is so.</param>
public sealed record LedgerStatement(LedgerAct Act, string? Subject, string Text);
