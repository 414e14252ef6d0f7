using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Handling;

/// <summary>What shows a preservative.</summary>
/// <param name="Preservative">The preservative; null where none was named, and everything is listed.</param>
/// <param name="Reagents">Reagents that colour it, in the order in which they are offered; empty where no spray shows it.</param>
/// <param name="NotShown">Its elements that none of them colours.</param>
/// <param name="Analyses">What a laboratory does.</param>
/// <param name="Always">What goes for every reagent.</param>
public sealed record ChosenReagents(
    Preservative? Preservative,
    IReadOnlyList<Reagent> Reagents,
    IReadOnlyList<string> NotShown,
    IReadOnlyList<AnalysisMethod> Analyses,
    IReadOnlyList<Fact<string>> Always
)
{
    /// <summary>The name that was asked for, where several kinds go by it that the same things show; null where one is meant.</summary>
    public string? SharedName { get; init; }
}

/// <summary>Finds what shows a preservative on a fresh cut, and what a laboratory does where nothing does.</summary>
public static class ChooseReagent
{
    /// <summary>Finds it.</summary>
    /// <param name="preservative">The preservative that is suspected.</param>
    /// <param name="facts">Reagents and analyses.</param>
    public static ChosenReagents Run(Preservative preservative, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(preservative);
        ArgumentNullException.ThrowIfNull(facts);
        var shelf = facts.Reagents;
        IReadOnlyList<Reagent> reagents =
        [
            .. shelf.Reagents.Where(each => Meets(each.Shows, each.Preservatives, preservative)),
        ];
        return new(
            preservative,
            reagents,
            [.. preservative.ActiveElements.Except(reagents.SelectMany(each => each.Shows), StringComparer.Ordinal)],
            [.. shelf.Analyses.Where(each => Meets(each.Elements, each.Preservatives, preservative))],
            reagents.Count > 0 ? shelf.Always : []
        );
    }

    /// <summary>What shows any of the kinds that go by a name, where that is the same for all; null where one kind goes by it, or where it differs.</summary>
    /// <param name="name">The name.</param>
    /// <param name="facts">Reagents and analyses.</param>
    public static ChosenReagents? OfShared(string name, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        List<ChosenReagents> each = [.. facts.Preservatives.Bearers(name).Select(kind => Run(kind, facts))];
        return
            each is [var first, _, ..]
            && each.TrueForAll(other =>
                other.Reagents.SequenceEqual(first.Reagents)
                && other.NotShown.SequenceEqual(first.NotShown, StringComparer.Ordinal)
                && other.Analyses.SequenceEqual(first.Analyses)
                && other.Preservative!.ActiveElements.SequenceEqual(
                    first.Preservative!.ActiveElements,
                    StringComparer.Ordinal
                )
            )
            ? first with
            {
                SharedName = name,
            }
            : null;
    }

    /// <summary>Every reagent and every analysis, where no preservative is named.</summary>
    /// <param name="facts">Reagents and analyses.</param>
    public static ChosenReagents All(FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var shelf = facts.Reagents;
        return new(null, shelf.Reagents, [], shelf.Analyses, shelf.Always);
    }

    private static bool Meets(
        IReadOnlyList<string> elements,
        IReadOnlyList<string> preservatives,
        Preservative preservative
    ) =>
        elements.Intersect(preservative.ActiveElements, StringComparer.Ordinal).Any()
        || preservatives.Contains(preservative.Key, StringComparer.Ordinal);
}
