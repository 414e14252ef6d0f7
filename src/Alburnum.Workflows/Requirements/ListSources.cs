using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Requirements;

/// <summary>Names the documents that the facts are taken from.</summary>
public static class ListSources
{
    /// <summary>Those whose id, title or publisher holds some words; all where none are given.</summary>
    /// <param name="words">Words to look for, in any case of letters; null for all.</param>
    /// <param name="facts">The facts.</param>
    /// <exception cref="InputRefusedException">No source holds the words.</exception>
    public static IReadOnlyList<Source> Run(string? words, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (words is null)
            return facts.Sources.All;
        IReadOnlyList<Source> found =
        [
            .. facts.Sources.All.Where(each =>
                $"{each.Id}\n{each.Document}\n{each.Publisher}".Contains(words, StringComparison.OrdinalIgnoreCase)
            ),
        ];
        return found.Count > 0
            ? found
            : throw new InputRefusedException(
                new InputProblem(
                    "command line",
                    0,
                    "",
                    "sources",
                    $"\"{words}\"",
                    "words of a title, publisher or id in data/sources.yaml"
                )
            );
    }
}
