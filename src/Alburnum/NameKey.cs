using System.Text;

namespace Alburnum;

/// <summary>What of a name tells it from others: two names of one key are one name to whoever asks.</summary>
public static class NameKey
{
    private static readonly string[] HissEndings = ["ches", "shes", "sses", "xes"];

    /// <summary>The name without fuss about case, hyphens, accents and plurals.</summary>
    public static string Of(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var letters = new StringBuilder(name.Length);
        foreach (var letter in name)
        {
            if (Plain(char.ToLowerInvariant(letter)) is { } plain)
                letters.Append(plain);
            else if (char.IsLetterOrDigit(letter))
                letters.Append(char.ToLowerInvariant(letter));
            else if (letter is ' ' or '-' or '_' or '/' or ',' && letters.Length > 0 && letters[^1] != ' ')
                letters.Append(' ');
        }
        return string.Join(' ', letters.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Singular));
    }

    // Letters as people type them who do not have them. A table of our own: the program runs without the tables of languages that would take letters apart.
    private static string? Plain(char letter) =>
        letter switch
        {
            'à' or 'á' or 'â' or 'ã' or 'ä' or 'å' => "a",
            'æ' => "ae",
            'ç' or 'č' or 'ć' => "c",
            'ð' or 'đ' => "d",
            'è' or 'é' or 'ê' or 'ë' or 'ě' or 'ę' => "e",
            'ì' or 'í' or 'î' or 'ï' => "i",
            'ł' => "l",
            'ñ' or 'ń' => "n",
            'ò' or 'ó' or 'ô' or 'õ' or 'ö' or 'ø' => "o",
            'œ' => "oe",
            'ř' => "r",
            'ß' => "ss",
            'š' or 'ś' => "s",
            'þ' => "th",
            'ù' or 'ú' or 'û' or 'ü' => "u",
            'ý' or 'ÿ' => "y",
            'ž' or 'ź' or 'ż' => "z",
            _ => null,
        };

    // The plain English plurals. Done to both sides, so that "abies" still meets "abies".
    private static string Singular(string word) =>
        word switch
        {
            { Length: <= 3 } => word,
            _ when word.EndsWith("ies", StringComparison.Ordinal) => word[..^3] + 'y',
            _ when Array.Exists(HissEndings, end => word.EndsWith(end, StringComparison.Ordinal)) => word[..^2],
            _ when word.EndsWith('s') && word[^2] != 's' => word[..^1],
            _ => word,
        };
}
