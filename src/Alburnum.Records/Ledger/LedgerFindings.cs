namespace Alburnum.Records.Ledger;

/// <summary>What a check of a ledger found.</summary>
/// <param name="Entries">How many entries it has.</param>
/// <param name="Head">Hash of its last entry; null where it has none.</param>
/// <param name="Files">How many files were held against it.</param>
/// <param name="Faults">What was changed, is missing or stands in another order; empty where nothing is.</param>
/// <param name="SetBack">Where time goes back.</param>
public sealed record LedgerFindings(
    int Entries,
    string? Head,
    int Files,
    IReadOnlyList<InputProblem> Faults,
    IReadOnlyList<ClockSetBack> SetBack
)
{
    /// <summary>Holds the ledger against a head that was noted elsewhere: a chain alone does not show that its end was cut off.</summary>
    internal LedgerFindings WithNotedHead(string? noted, IReadOnlyList<KeptEntry> kept, string place)
    {
        if (noted is null)
            return this;
        var at = kept.Select(entry => entry.Hash).ToList().IndexOf(noted);
        return at >= 0
            ? this with
            {
                AfterNotedHead = kept.Count - 1 - at,
            }
            : this with
            {
                Faults =
                [
                    .. Faults,
                    new(
                        place,
                        0,
                        "",
                        "",
                        $"no entry with the hash {noted}",
                        "the entry whose hash was noted: its end was cut off, or the ledger was written anew"
                    ),
                ],
            };
    }

    /// <summary>How many entries came after a head that was noted; null where none was asked for.</summary>
    public int? AfterNotedHead { get; init; }
}

/// <summary>An entry whose time is before that of the entry before it: the clock was set back, or the machine was another.</summary>
/// <param name="Entry">Number of the entry.</param>
/// <param name="Before">Time of the entry before it, UTC.</param>
/// <param name="At">Its own, UTC.</param>
public sealed record ClockSetBack(int Entry, DateTime Before, DateTime At);
