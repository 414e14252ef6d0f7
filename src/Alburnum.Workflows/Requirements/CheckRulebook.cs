using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Requirements;

/// <summary>What a check of a rulebook found.</summary>
/// <param name="Rulebook">The rulebook.</param>
/// <param name="Findings">Every finding, the weightiest first.</param>
public sealed record CheckedRulebook(Rulebook Rulebook, IReadOnlyList<RulebookFinding> Findings)
{
    /// <summary>Number of findings that must be corrected before anyone relies on the rulebook.</summary>
    public int Faults => Findings.Count(finding => finding.IsFault);
}

/// <summary>Looks for what does not hold together in a rulebook.</summary>
public static class CheckRulebook
{
    /// <summary>Checks it.</summary>
    /// <param name="rulebook">A rulebook file, or the name of a rulebook that ships.</param>
    /// <param name="facts">The rulebooks that ship, and the words that a rulebook may use.</param>
    /// <param name="stop">Signalled to stop early.</param>
    /// <exception cref="InputRefusedException">There is no such rulebook, or it cannot be read.</exception>
    public static CheckedRulebook Run(string rulebook, FactLibrary facts, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var read = RulebookFile.Named(rulebook, facts);
        return new(read, RulebookCheck.Run(read, stop));
    }
}
