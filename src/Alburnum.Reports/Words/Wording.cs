using System.Collections.Frozen;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Alburnum.Reports.Words;

/// <summary>
/// The sentences of one language, read from one file: <c>Words/en.json</c>. Sections are subjects, keys are what is said; a word in braces stands for a value that the
/// caller gives. A second language is a second file with the same keys.
/// </summary>
public sealed partial class Wording
{
    private readonly FrozenDictionary<string, string> _sentences;

    private Wording(FrozenDictionary<string, string> sentences) => _sentences = sentences;

    /// <summary>English, the language in which the program is written.</summary>
    public static Wording English { get; } = Shipped("en");

    /// <summary>Every key, as <c>section.key</c>.</summary>
    internal IEnumerable<string> Keys => _sentences.Keys;

    /// <summary>The sentence of a key, with its values filled in.</summary>
    /// <param name="key">Section and key, such as <c>penetration.no-depth</c>.</param>
    /// <param name="values">A value for each word in braces, already written as people read it.</param>
    /// <exception cref="KeyNotFoundException">The language has no such key.</exception>
    /// <exception cref="FormatException">A word in braces has no value, or a value no word.</exception>
    public string Say(string key, params ReadOnlySpan<(string Name, string Value)> values)
    {
        var given = new Dictionary<string, string>(values.Length, StringComparer.Ordinal);
        foreach (var (name, value) in values)
            given.Add(name, value);
        HashSet<string> filled = new(StringComparer.Ordinal);
        // In one pass, so that a value with a brace in it (a name that someone gave) stays as it is.
        var sentence = Places()
            .Replace(
                _sentences[key],
                place =>
                {
                    var name = place.Groups["name"].Value;
                    filled.Add(name);
                    return given.TryGetValue(name, out var value)
                        ? value
                        : throw new FormatException($"\"{key}\" needs a value for {place.Value}.");
                }
            );
        return given.Keys.FirstOrDefault(name => !filled.Contains(name)) is { } useless
            ? throw new FormatException($"\"{key}\" has no place for {useless}.")
            : sentence;
    }

    /// <summary>A count with its noun: keys ending in <c>.one</c> and <c>.other</c>, with <c>{count}</c>.</summary>
    /// <param name="key">The key without its ending, such as <c>count.piece</c>.</param>
    /// <param name="count">How many.</param>
    public string Count(string key, int count) =>
        Say(count == 1 ? key + ".one" : key + ".other", ("count", count.ToString(CultureInfo.InvariantCulture)));

    /// <summary>Several phrases made into one: a key with <c>{first}</c> and <c>{next}</c>, such as "{first} or {next}".</summary>
    /// <param name="key">The key that joins two.</param>
    /// <param name="phrases">One or more.</param>
    public string Joined(string key, IEnumerable<string> phrases) =>
        phrases.Aggregate((first, next) => Say(key, ("first", first), ("next", next)));

    /// <summary>A phrase with a capital letter at its start.</summary>
    public static string Capital(string phrase)
    {
        ArgumentException.ThrowIfNullOrEmpty(phrase);
        return char.ToUpperInvariant(phrase[0]) + phrase[1..];
    }

    /// <summary>Reads a language from its file.</summary>
    /// <param name="json">The file's content.</param>
    /// <exception cref="JsonException">Not an object of sections of sentences.</exception>
    public static Wording Read(Stream json)
    {
        var sections =
            JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, string>>>(json)
            ?? throw new JsonException("A language file holds sections of sentences.");
        return new(
            sections
                .SelectMany(section => section.Value, (section, entry) => ($"{section.Key}.{entry.Key}", entry.Value))
                .ToFrozenDictionary(entry => entry.Item1, entry => entry.Value, StringComparer.Ordinal)
        );
    }

    [GeneratedRegex(@"\{(?<name>[^{}]*)\}", RegexOptions.ExplicitCapture)]
    private static partial Regex Places();

    private static Wording Shipped(string language)
    {
        using var file = Assembly
            .GetExecutingAssembly()
            .GetManifestResourceStream($"Alburnum.Reports.Words.{language}.json")!;
        return Read(file);
    }
}
