using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Alburnum.Reports.Words;

/// <summary>
/// The sentences of one language, read from one file: <c>Words/en.json</c>. Sections are subjects, keys are what is said; a word in braces stands for a value that the
/// caller gives. A second language is a second file with the same keys and the same words in braces.
/// </summary>
public sealed partial class Wording
{
    private const string Folder = "Alburnum.Reports.Words.";
    private const string Extension = ".json";

    // A key given twice would hide one of two sentences.
    private static readonly JsonDocumentOptions EachKeyOnce = new() { AllowDuplicateProperties = false };

    private readonly Dictionary<string, string> _sentences;

    private Wording(string language, Dictionary<string, string> sentences) =>
        (Language, _sentences) = (language, sentences);

    /// <summary>English, the language in which the program is written.</summary>
    public static Wording English { get; } = Shipped("en");

    /// <summary>Every language that there is a file for, by its name.</summary>
    private static ConcurrentDictionary<string, Lazy<Wording>> Languages { get; } =
        new(
            Names().Select(name => KeyValuePair.Create(name, new Lazy<Wording>(() => Shipped(name).SameAs(English)))),
            StringComparer.OrdinalIgnoreCase
        );

    /// <summary>The language chosen: that of <see cref="CultureInfo.CurrentUICulture"/>, English where there is no file for it. Numbers do not depend on it.</summary>
    public static Wording Current => Of(CultureInfo.CurrentUICulture.Name);

    /// <summary>Name of the language, the name of its file: "en", "pt-BR".</summary>
    public string Language { get; }

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

    /// <summary>A sentence of the language chosen: <see cref="Say"/> of <see cref="Current"/>.</summary>
    /// <param name="key">Section and key.</param>
    /// <param name="values">A value for each word in braces.</param>
    public static string Said(string key, params ReadOnlySpan<(string Name, string Value)> values) =>
        Current.Say(key, values);

    /// <summary>A small number as a word, from no to ten; a greater one in figures.</summary>
    public string Number(int count) =>
        count is >= 0 and <= 10
            ? Say($"number.{count.ToString(CultureInfo.InvariantCulture)}")
            : count.ToString(CultureInfo.InvariantCulture);

    /// <summary>One part in so many, as a noun: 4 is "a quarter".</summary>
    public string Part(int part) => Say($"number.part.{part.ToString(CultureInfo.InvariantCulture)}");

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

    /// <summary>The file that comes nearest to a language: "de" for "de-AT", English where there is none.</summary>
    /// <param name="language">Name of the language.</param>
    public static Wording Of(string language)
    {
        ArgumentNullException.ThrowIfNull(language);
        for (var name = language; name.Length > 0; name = name[..Math.Max(0, name.LastIndexOf('-'))])
            if (Languages.TryGetValue(name, out var wording))
                return wording.Value;
        return English;
    }

    /// <summary>The same language, found to say all that another does with the same values.</summary>
    /// <exception cref="JsonException">A key is missing or not known, or has other words in braces.</exception>
    internal Wording SameAs(Wording other)
    {
        foreach (var key in other.Keys.Except(Keys, StringComparer.Ordinal))
            throw new JsonException($"{Language}{Extension}: \"{key}\" is missing.");
        foreach (var key in Keys.Except(other.Keys, StringComparer.Ordinal))
            throw new JsonException(
                $"{Language}{Extension}: \"{key}\" is not known; {other.Language}{Extension} has no such key."
            );
        foreach (var key in Keys.Where(key => !PlacesOf(key).SetEquals(other.PlacesOf(key))))
            throw new JsonException(
                $"{Language}{Extension}: \"{key}\" must have the same words in braces as in {other.Language}{Extension}."
            );
        return this;
    }

    /// <summary>Adds a language to those that can be chosen.</summary>
    internal static void Add(Wording language) => Languages[language.Language] = new(() => language.SameAs(English));

    /// <summary>Reads a language from its file.</summary>
    /// <param name="language">Name of the language.</param>
    /// <param name="json">The file's content.</param>
    /// <exception cref="JsonException">Not an object of sections of sentences.</exception>
    public static Wording Read(string language, Stream json)
    {
        // Read as a tree: the program reads one language at each start, and a serializer takes longer to set up than this file to read.
        using var tree = JsonDocument.Parse(json, EachKeyOnce);
        if (tree.RootElement.ValueKind != JsonValueKind.Object)
            throw new JsonException("A language file holds sections of sentences.");
        Dictionary<string, string> sentences = new(StringComparer.Ordinal);
        foreach (var section in tree.RootElement.EnumerateObject())
        {
            if (section.Value.ValueKind != JsonValueKind.Object)
                throw new JsonException($"\"{section.Name}\" is no section of sentences.");
            foreach (var entry in section.Value.EnumerateObject())
                sentences.Add(
                    $"{section.Name}.{entry.Name}",
                    entry.Value.ValueKind == JsonValueKind.String
                        ? entry.Value.GetString()!
                        : throw new JsonException($"\"{section.Name}.{entry.Name}\" is no sentence.")
                );
        }
        return new(language, sentences);
    }

    [GeneratedRegex(@"\{(?<name>[^{}]*)\}", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Places();

    private HashSet<string> PlacesOf(string key) => [.. Places().Matches(_sentences[key]).Select(place => place.Value)];

    private static IEnumerable<string> Names() =>
        Assembly
            .GetExecutingAssembly()
            .GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .Select(name => name[Folder.Length..^Extension.Length]);

    private static Wording Shipped(string language)
    {
        using var file = Assembly.GetExecutingAssembly().GetManifestResourceStream(Folder + language + Extension)!;
        return Read(language, file);
    }
}
