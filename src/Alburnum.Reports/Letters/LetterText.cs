using Alburnum.Reports.Requirements;
using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Letters;

/// <summary>Letters as plain lines.</summary>
public static class LetterText
{
    private const int Width = 96;

    /// <summary>The one letter asked for, answered in full; of several, what each asks and the word that it is asked for by.</summary>
    public static IEnumerable<string> Lines(LettersDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.Letters is [var one]
            ? Lines(one)
            : document.Letters.Select(letter => $"{letter.Key, -14} {letter.Asks}");
    }

    /// <summary>What a code or a book says, with its standing and its source.</summary>
    public static string Point(LetterPointDocument point)
    {
        ArgumentNullException.ThrowIfNull(point);
        var standing = Current.Say(point.Standing);
        // Common practice has no other source.
        return point.Standing == Standing.CommonPractice
            ? Said("letters.point-of-practice", ("says", point.Says), ("standing", standing))
            : Said("letters.point", ("says", point.Says), ("standing", standing), ("source", point.Source));
    }

    private static IEnumerable<string> Lines(LetterDocument letter) =>
        [
            .. Wrap.Lines(letter.Asks, Width),
            .. letter.Answer.SelectMany(paragraph => Wrap.Lines(paragraph, Width).Prepend("")),
            .. Part(Said("letters.points"), letter.Points.Select(Point)),
            .. Part(Said("letters.settles"), letter.Settles),
            .. Part(Said("letters.cautions"), letter.Cautions),
        ];

    private static IEnumerable<string> Part(string title, IEnumerable<string> sentences) =>
        [
            "",
            title,
            .. sentences.SelectMany(sentence =>
                Wrap.Lines(sentence, Width - 2).Select((line, k) => (k == 0 ? "· " : "  ") + line)
            ),
        ];
}
