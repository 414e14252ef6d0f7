using Alburnum.Letters;

namespace Alburnum.Reports.Letters;

/// <summary>From letters to their document.</summary>
public static class LetterMapping
{
    /// <summary>The document of some letters.</summary>
    public static LettersDocument From(IReadOnlyList<Letter> letters) =>
        new()
        {
            Format = "alburnum letters",
            Version = 1,
            Letters = [.. letters.Select(From)],
        };

    private static LetterDocument From(Letter letter) =>
        new()
        {
            Key = letter.Key,
            Asks = letter.Asks,
            Answer = letter.Answer,
            Points =
            [
                .. letter.Points.Select(point => new LetterPointDocument
                {
                    Says = point.Value,
                    Standing = point.Provenance.Standing,
                    Source = point.Provenance.Citation,
                }),
            ],
            Settles = letter.Settles,
            Cautions = letter.Cautions,
        };
}
