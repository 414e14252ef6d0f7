using System.Text;

namespace Alburnum;

/// <summary>What came of looking a name up.</summary>
/// <typeparam name="T">What is looked up.</typeparam>
public abstract record Lookup<T>
{
    private protected Lookup() { }
}

/// <summary>Exactly one thing bears the name.</summary>
/// <param name="Value">The thing.</param>
/// <typeparam name="T">What is looked up.</typeparam>
public sealed record Found<T>(T Value) : Lookup<T>;

/// <summary>Nothing, or more than one thing, bears the name.</summary>
/// <param name="Suggestions">Names that may have been meant, nearest first; empty where nothing is near.</param>
/// <typeparam name="T">What is looked up.</typeparam>
public sealed record NotFound<T>(IReadOnlyList<string> Suggestions) : Lookup<T>
{
    /// <summary>What was expected, with the names that may have been meant, for a message.</summary>
    /// <param name="expected">What a right name would be, for instance "a species in the catalogue".</param>
    public string Expected(string expected) =>
        Suggestions.Count == 0
            ? expected
            : $"{expected}; did you mean {string.Join(", ", Suggestions.Select(each => $"\"{each}\""))}?";
}

/// <summary>Finds things by any of their names, without fuss about case, hyphens, plurals or small misspellings.</summary>
/// <typeparam name="T">What is looked up.</typeparam>
public sealed class NameIndex<T>
    where T : class
{
    private const int SuggestionsMax = 5;

    private readonly Dictionary<string, List<(string Name, T Value)>> _byKey = new(StringComparer.Ordinal);

    /// <summary>Indexes things by all their names.</summary>
    /// <param name="values">The things, in the order in which suggestions are offered.</param>
    /// <param name="names">All names of a thing; the first is the one shown.</param>
    public NameIndex(IEnumerable<T> values, Func<T, IEnumerable<string>> names)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(names);
        foreach (var value in values)
        {
            var all = names(value).ToList();
            foreach (var key in all.Select(Key).Distinct(StringComparer.Ordinal))
            {
                if (!_byKey.TryGetValue(key, out var bearers))
                    _byKey[key] = bearers = [];
                bearers.Add((all[0], value));
            }
        }
    }

    /// <summary>The one thing of that name, or what may have been meant.</summary>
    public Lookup<T> Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var key = Key(name);
        if (key.Length == 0)
            return new NotFound<T>([]);
        if (_byKey.TryGetValue(key, out var bearers))
            return bearers.Count == 1
                ? new Found<T>(bearers[0].Value)
                : new NotFound<T>([.. bearers.Select(bearer => bearer.Name)]);
        return new NotFound<T>(Near(key));
    }

    private List<string> Near(string key)
    {
        var tolerance = Math.Max(1, key.Length / 4);
        return
        [
            .. _byKey
                .Select(entry => (entry.Value, Distance: Distance(key, entry.Key)))
                .Where(entry => entry.Distance <= tolerance)
                .OrderBy(entry => entry.Distance)
                .SelectMany(entry => entry.Value.Select(bearer => bearer.Name))
                .Distinct(StringComparer.Ordinal)
                .Take(SuggestionsMax),
        ];
    }

    // A name shares a word with what was asked, or is a few letters away from it.
    private static int Distance(string asked, string known)
    {
        var asWords = (' ' + known + ' ').Contains(' ' + asked + ' ', StringComparison.Ordinal) ? 1 : int.MaxValue;
        return Math.Min(asWords, EditDistance(asked, known));
    }

    private static string Key(string name)
    {
        var letters = new StringBuilder(name.Length);
        foreach (var letter in name.Normalize(NormalizationForm.FormD))
        {
            if (char.IsLetterOrDigit(letter))
                letters.Append(char.ToLowerInvariant(letter));
            else if (letter is ' ' or '-' or '_' or '/' or ',' && letters.Length > 0 && letters[^1] != ' ')
                letters.Append(' ');
        }
        return string.Join(' ', letters.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Singular));
    }

    // The plain English plural. Done to both sides, so that "abies" still meets "abies".
    private static string Singular(string word) =>
        word.Length > 3 && word.EndsWith('s') && word[^2] != 's' ? word[..^1] : word;

    // Damerau–Levenshtein distance with adjacent swaps (optimal string alignment).
    private static int EditDistance(string a, string b)
    {
        var before = new int[b.Length + 1];
        var above = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var row = new int[b.Length + 1];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[j] = Math.Min(Math.Min(above[j], row[j - 1]) + 1, change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
            }
            (before, above) = (above, row);
        }
        return above[b.Length];
    }
}

/// <summary>Looking up a name that a person must have right.</summary>
public static class NameLookup
{
    /// <summary>The thing of that name; refuses a name that nothing, or more than one thing, bears.</summary>
    /// <param name="index">Where to look.</param>
    /// <param name="name">The name.</param>
    /// <param name="field">Option or field that the name was given in.</param>
    /// <param name="expected">What a right name would be, for instance "a species in the catalogue".</param>
    /// <exception cref="InputRefusedException">Nothing, or more than one thing, bears the name.</exception>
    public static T Get<T>(this NameIndex<T> index, string name, string field, string expected)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(index);
        return index.Find(name) switch
        {
            Found<T> found => found.Value,
            NotFound<T> near => throw new InputRefusedException(
                new InputProblem("enquiry", 0, "", field, $"\"{name}\"", near.Expected(expected))
            ),
            var other => throw new ArgumentOutOfRangeException(nameof(index), other, "Not a lookup."),
        };
    }
}
