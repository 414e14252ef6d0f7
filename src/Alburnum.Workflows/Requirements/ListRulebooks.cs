using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Requirements;

/// <summary>Names the rulebooks that ship.</summary>
public static class ListRulebooks
{
    /// <summary>Every edition of every code, in the order of their names.</summary>
    /// <exception cref="InputRefusedException">A rulebook cannot be read.</exception>
    public static IReadOnlyList<Rulebook> Run(FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. facts.Rulebooks.All];
    }
}
