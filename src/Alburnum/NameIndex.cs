namespace Alburnum;

/// <summary>What came of looking a name up.</summary>
/// <typeparam name="T">What is looked up.</typeparam>
public abstract record Lookup<T>
{
    private protected Lookup() { }

    /// <summary>What was expected in place of a name that is no answer, for a message: what may have been meant, and what decides.</summary>
    /// <param name="expected">What a right name would be, for instance "a species in the catalogue".</param>
    public virtual string Expected(string expected) =>
        this switch
        {
            NotFound<T> { Suggestions: { Count: > 0 } near } => $"{expected}; did you mean {Quoted(near, ", ")}?",
            Several<T> several => string.Join("; ", Parts(several)),
            _ => expected,
        };

    private static IEnumerable<string> Parts(Several<T> several)
    {
        yield return several.Names.Count > 0
            ? $"the one that is meant: {Quoted(several.Names, " or ")}"
            : "a narrower name";
        if (several.Decides.Length > 0)
            yield return $"what decides: {several.Decides.TrimEnd('.')}";
    }

    private static string Quoted(IEnumerable<string> names, string between) =>
        string.Join(between, names.Select(name => $"\"{name}\""));
}

/// <summary>Exactly one thing bears the name.</summary>
/// <param name="Value">The thing.</param>
/// <typeparam name="T">What is looked up.</typeparam>
public sealed record Found<T>(T Value) : Lookup<T>;

/// <summary>Several things bear the name: a question, never an answer.</summary>
/// <param name="Names">What it may mean, each by its own name; empty where none of them is in the catalogue.</param>
/// <param name="Decides">What decides between them, one sentence; empty where that is not known.</param>
/// <typeparam name="T">What is looked up.</typeparam>
public sealed record Several<T>(IReadOnlyList<string> Names, string Decides) : Lookup<T>;

/// <summary>Nothing bears the name.</summary>
/// <param name="Suggestions">Names that may have been meant, nearest first; empty where nothing is near.</param>
/// <typeparam name="T">What is looked up.</typeparam>
public sealed record NotFound<T>(IReadOnlyList<string> Suggestions) : Lookup<T>;

/// <summary>Finds things by any of their names, without fuss about case, hyphens, plurals or small misspellings.</summary>
/// <typeparam name="T">What is looked up.</typeparam>
public sealed class NameIndex<T>
    where T : class
{
    private const int SuggestionsMax = 5;

    // Words of any wood or part, and of its sorting: they tell no name from another.
    private static readonly string[] Fillers =
    [
        "timber",
        "wood",
        "wooden",
        "lumber",
        "solid",
        "treated",
        "sapwood",
        "unsorted",
        "carcassing",
    ];

    private readonly Dictionary<string, List<(string Name, T Value)>> _byKey = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(string Name, T Value)>> _unspaced = new(StringComparer.Ordinal);

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
            foreach (var key in all.Select(NameKey.Of).Distinct(StringComparer.Ordinal))
            {
                Add(_byKey, key, (all[0], value));
                Add(_unspaced, Unspaced(key), (all[0], value));
            }
        }
    }

    private static void Add(
        Dictionary<string, List<(string Name, T Value)>> index,
        string key,
        (string Name, T Value) bearer
    )
    {
        if (!index.TryGetValue(key, out var bearers))
            index[key] = bearers = [];
        if (!bearers.Exists(known => ReferenceEquals(known.Value, bearer.Value)))
            bearers.Add(bearer);
    }

    /// <summary>The one thing of that name, or what may have been meant.</summary>
    public Lookup<T> Find(string name)
    {
        var bearers = Bearers(name);
        return bearers.Count switch
        {
            0 => new NotFound<T>(Near(name)),
            1 => new Found<T>(bearers[0].Value),
            _ => new Several<T>([.. bearers.Select(bearer => bearer.Name)], ""),
        };
    }

    /// <summary>Everything of that name, in the order given; empty where nothing is.</summary>
    /// <remarks>Tried in turn: as written, without its spaces ("weather board"), without words that go with any name ("treated larch timber", "unsorted redwood").</remarks>
    public IReadOnlyList<(string Name, T Value)> Bearers(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var key = NameKey.Of(name);
        return Of(_byKey, key) ?? Of(_unspaced, Unspaced(key)) ?? Of(_byKey, WithoutFillers(key)) ?? [];
    }

    /// <summary>Names that may have been meant, nearest first; empty where nothing is near.</summary>
    public IReadOnlyList<string> Near(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var key = NameKey.Of(name);
        if (key.Length == 0)
            return [];
        var tolerance = Math.Max(1, key.Length / 4);
        return
        [
            .. _byKey
                .Select(entry => (Known: entry.Key, Bearers: entry.Value, Distance: Distance(key, entry.Key)))
                .Where(entry => entry.Distance <= tolerance)
                .OrderBy(entry => entry.Distance)
                .ThenBy(entry => Math.Abs(entry.Known.Length - key.Length))
                .SelectMany(entry => entry.Bearers.Select(bearer => bearer.Name))
                .Distinct(StringComparer.Ordinal)
                .Take(SuggestionsMax),
        ];
    }

    private static List<(string Name, T Value)>? Of(
        Dictionary<string, List<(string Name, T Value)>> index,
        string key
    ) => key.Length > 0 ? index.GetValueOrDefault(key) : null;

    // One name holds the other as whole words, or is a few letters away from it.
    private static int Distance(string asked, string known) =>
        Holds(known, asked) || Holds(asked, known) ? 1 : EditDistance(asked, known);

    private static bool Holds(string text, string words) =>
        words.Length > 2 && (' ' + text + ' ').Contains(' ' + words + ' ', StringComparison.Ordinal);

    private static string Unspaced(string key) => key.Replace(" ", "", StringComparison.Ordinal);

    private static string WithoutFillers(string key) =>
        string.Join(' ', key.Split(' ').Where(word => Array.IndexOf(Fillers, word) < 0));

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
    /// <summary>The thing that a name was found to mean; refuses a name that nothing, or more than one thing, bears.</summary>
    /// <param name="lookup">What came of looking it up.</param>
    /// <param name="name">The name.</param>
    /// <param name="field">Option or field that the name was given in.</param>
    /// <param name="expected">What a right name would be, for instance "a species in the catalogue".</param>
    /// <exception cref="InputRefusedException">Nothing, or more than one thing, bears the name.</exception>
    public static T OrRefused<T>(this Lookup<T> lookup, string name, string field, string expected)
    {
        ArgumentNullException.ThrowIfNull(lookup);
        return lookup is Found<T> found
            ? found.Value
            : throw new InputRefusedException(
                new InputProblem("enquiry", 0, "", field, $"\"{name}\"", lookup.Expected(expected))
            );
    }
}
