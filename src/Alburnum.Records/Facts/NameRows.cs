namespace Alburnum.Records.Facts;

/// <summary>Reads rows that each give a name, and the things of another file that it may mean.</summary>
internal static class NameRows
{
    /// <summary>One entry a row; a name that stands there twice, though written otherwise, and a thing that the other file does not have, are refused.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="expected">What the thing should be, for messages.</param>
    /// <param name="known">The things, by their own names.</param>
    /// <param name="field">Field with the things' names.</param>
    /// <param name="read">Reads the rest of a row.</param>
    public static List<TName> Named<TName, T>(
        this IReadOnlyList<FactRow> rows,
        string expected,
        IReadOnlyDictionary<string, T> known,
        string field,
        Func<FactRow, string, IReadOnlyList<T>, TName> read
    )
    {
        var all = new List<TName>(rows.Count);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var name = row.Text("name");
            if (!seen.Add(NameKey.Of(name)))
                row.Refuse("name", name, "a unique name, however its words are joined or counted");
            var things = new List<T>();
            foreach (var word in row.Texts(field))
            {
                if (known.TryGetValue(word, out var thing))
                    things.Add(thing);
                else
                    row.Refuse(field, word, expected);
            }
            all.Add(read(row, name, things));
        }
        return all;
    }
}
