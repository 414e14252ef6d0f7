using System.Text.Json;
using System.Text.RegularExpressions;

namespace Alburnum.Tests.Shared;

/// <summary>A made-up language in which every sentence is the English one in brackets: what is not from the language file then stands outside them.</summary>
internal static partial class BracketedLanguage
{
    public const string Name = "x-bracketed";

    /// <summary>The file of the language.</summary>
    public static MemoryStream File()
    {
        using var english = System.IO.File.OpenRead(Repository.At("src", "Alburnum.Reports", "Words", "en.json"));
        var sections = JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, string>>>(english)!;
        var wrapped = sections.ToDictionary(
            section => section.Key,
            section => section.Value.ToDictionary(entry => entry.Key, entry => $"⟦{entry.Value}⟧")
        );
        return new(JsonSerializer.SerializeToUtf8Bytes(wrapped));
    }

    /// <summary>The words that stand outside every bracket, but units and ends of file names.</summary>
    public static IEnumerable<string> WordsOutside(string text)
    {
        while (Innermost().IsMatch(text))
            text = Innermost().Replace(text, " ");
        return Words(text).Except(["mm", "kg", "jpg"], StringComparer.Ordinal);
    }

    /// <summary>Words of two letters or more.</summary>
    public static IEnumerable<string> Words(string text) => Word().Matches(text).Select(word => word.Value.Trim('.'));

    [GeneratedRegex("⟦[^⟦⟧]*⟧")]
    private static partial Regex Innermost();

    [GeneratedRegex(@"\p{L}{2,}[\w.-]*")]
    private static partial Regex Word();
}
