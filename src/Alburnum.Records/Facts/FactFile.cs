namespace Alburnum.Records.Facts;

/// <summary>One fact file being read: its sources, and everything found wrong with it.</summary>
public sealed class FactFile
{
    private readonly List<InputProblem> problems;
    private readonly Dictionary<string, SourceEntry> sources = new(StringComparer.Ordinal);

    private FactFile(string name, List<InputProblem> problems)
    {
        Name = name;
        this.problems = problems;
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
            using var fields = new FactRow(file, root, "");
            file.ReadSources(fields);
            read(fields);
        }
        var inOrder = problems.Skip(earlier).OrderBy(problem => problem.Line).ToList();
        problems.RemoveRange(earlier, inOrder.Count);
        problems.AddRange(inOrder);
    }

    internal void Add(InputProblem problem) => problems.Add(problem);

    internal SourceEntry? Source(string id) => sources.GetValueOrDefault(id);

    private void ReadSources(FactRow root)
    {
        foreach (var row in root.OptionalRows("sources"))
        {
            var id = row.Text("id");
            if (!sources.TryAdd(id, SourceEntry.Read(row)))
                row.Refuse("id", id, "an id of its own");
            row.Dispose();
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
