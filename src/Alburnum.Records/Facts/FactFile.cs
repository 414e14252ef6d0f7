namespace Alburnum.Records.Facts;

/// <summary>One fact file being read: its sources, and everything found wrong with it.</summary>
public sealed class FactFile
{
    private readonly List<InputProblem> _problems;
    private readonly Dictionary<string, SourceEntry> _sources = new(StringComparer.Ordinal);
    private readonly Dictionary<FactFields, FactRow> _rows = new(ReferenceEqualityComparer.Instance);

    private FactFile(string name, List<InputProblem> problems)
    {
        Name = name;
        _problems = problems;
    }

    /// <summary>Name of the file for messages.</summary>
    public string Name { get; }

    /// <summary>Reads a file and hands its outermost fields to a reader; nothing is thrown for what a person wrote wrong.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="problems">Gains all problems of the file.</param>
    /// <param name="read">Turns the outermost fields into facts.</param>
    public static void Read(string path, string name, List<InputProblem> problems, Action<FactRow> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        ReadText(
            FileTrouble.Refusing(name, "a file that can be read", () => File.ReadAllText(path)),
            name,
            problems,
            read
        );
    }

    /// <summary>As <see cref="Read"/>, from text already in memory.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="problems">Gains all problems of the file.</param>
    /// <param name="read">Turns the outermost fields into facts.</param>
    public static void ReadText(string text, string name, List<InputProblem> problems, Action<FactRow> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(problems);
        var earlier = problems.Count;
        var file = new FactFile(name, problems);
        if (FactSource.Read(text, name, problems) is { } root)
        {
            var fields = file.Row(root, "");
            file.ReadSources(fields);
            read(fields);
            foreach (var row in file._rows.Values)
                row.RefuseUnasked();
        }
        var inOrder = problems.Skip(earlier).OrderBy(problem => problem.Line).ToList();
        problems.RemoveRange(earlier, inOrder.Count);
        problems.AddRange(inOrder);
    }

    /// <summary>Reads one file of the data folder into facts, or refuses with every problem in it.</summary>
    /// <param name="dataFolder">The data folder.</param>
    /// <param name="name">Path of the file inside the folder, also its name in messages.</param>
    /// <param name="read">Turns the outermost fields into facts; what it gives is used only where the file holds no problem.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    internal static T Load<T>(string dataFolder, string name, Func<FactRow, T> read)
    {
        var problems = new List<InputProblem>();
        T? facts = default;
        ReadInto(dataFolder, name, problems, root => facts = read(root));
        return problems.Count == 0 ? facts! : throw new InputRefusedException(problems);
    }

    /// <summary>As <see cref="Load"/>, gathering the problems of several files.</summary>
    internal static void ReadInto(string dataFolder, string name, List<InputProblem> problems, Action<FactRow> read)
    {
        var path = Path.Combine(dataFolder, name);
        if (File.Exists(path))
            Read(path, name, problems, read);
        else
            problems.Add(new InputProblem(name, 0, "", "", "no such file", $"a file in {dataFolder}"));
    }

    /// <summary>The reader of some named fields: one for each place in the file, so that what was asked of it is known.</summary>
    internal FactRow Row(FactFields fields, string key)
    {
        if (!_rows.TryGetValue(fields, out var row))
            _rows[fields] = row = new FactRow(this, fields, key);
        return row;
    }

    internal void Add(InputProblem problem) => _problems.Add(problem);

    internal SourceEntry? Source(string id) => _sources.GetValueOrDefault(id);

    private void ReadSources(FactRow root)
    {
        foreach (var row in root.OptionalRows("sources"))
        {
            var id = row.Text("id");
            if (!_sources.TryAdd(id, SourceEntry.Read(row)))
                row.Refuse("id", id, "a unique id");
        }
    }
}

/// <summary>A document that facts are taken from.</summary>
internal sealed record SourceEntry(string Document, string Edition, string Place, string Note)
{
    public static SourceEntry CommonPractice { get; } = new("common practice", "", "", "");

    public static SourceEntry Read(FactRow row) =>
        new(row.Text("document"), row.OptionalText("edition"), row.OptionalText("place"), row.OptionalText("note"));
}
