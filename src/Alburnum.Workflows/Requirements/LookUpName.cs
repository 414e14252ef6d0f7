using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Requirements;

/// <summary>What is known under a word.</summary>
/// <param name="Word">The word as it was asked.</param>
/// <param name="Timber">What is said of it as the name of a timber; null where it is a species' own name, or none.</param>
/// <param name="Species">The species that it may mean; empty where it names no timber.</param>
/// <param name="Component">The component of that name; null where there is none.</param>
/// <param name="Preservatives">The preservatives of that name.</param>
/// <param name="Marks">The marks, one entry a system.</param>
public sealed record KnownName(
    string Word,
    TimberName? Timber,
    IReadOnlyList<Species> Species,
    ComponentName? Component,
    IReadOnlyList<Preservative> Preservatives,
    IReadOnlyList<TreatmentMark> Marks
);

/// <summary>Looks a word up among timbers, components, preservatives and marks.</summary>
public static class LookUpName
{
    /// <summary>Looks it up.</summary>
    /// <param name="word">The word.</param>
    /// <param name="facts">What is known.</param>
    /// <exception cref="InputRefusedException">Nothing is known under it; the message offers what may have been meant.</exception>
    public static KnownName Run(string word, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var known = new KnownName(
            word,
            facts.Species.Called(word),
            facts.Species.Meanings(word),
            facts.Components.Called(word),
            facts.Preservatives.Bearers(word),
            facts.Marks.Find(word)
        );
        return known is { Timber: null, Species: [], Component: null, Preservatives: [], Marks: [] }
            ? throw new InputRefusedException(
                new InputProblem("command line", 0, "", "name", $"\"{word}\"", Expected(word, facts))
            )
            : known;
    }

    private static string Expected(string word, FactLibrary facts)
    {
        List<string> near =
        [
            .. facts
                .Species.Near(word)
                .Concat(facts.Components.Near(word))
                .Concat(facts.Preservatives.Near(word))
                .Concat(facts.Marks.Near(word))
                .Distinct(StringComparer.OrdinalIgnoreCase),
        ];
        return new NotFound<string>(near).Expected(
            "the name of a timber, a component, a preservative or a mark; brand names are not kept: name the kind, such as acetylated, heat-treated or furfurylated wood"
        );
    }
}
