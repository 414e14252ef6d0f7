using Alburnum.Letters;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Letters;

/// <summary>Answers the letters that lay clients write most often.</summary>
public static class AnswerLetters
{
    /// <summary>The letter of a key; all of them where none is named.</summary>
    /// <param name="key">Key of a letter; null for all.</param>
    /// <param name="facts">Has the letters.</param>
    /// <exception cref="InputRefusedException">There is no letter of that key.</exception>
    public static IReadOnlyList<Letter> Run(string? key, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (key is null)
            return facts.Letters;
        return facts.Letters.FirstOrDefault(letter => letter.Key == key) is { } letter
            ? [letter]
            : throw new InputRefusedException(
                new InputProblem(
                    "command line",
                    0,
                    "",
                    "LETTER",
                    key,
                    string.Join(", ", facts.Letters.Select(each => each.Key))
                )
            );
    }
}
