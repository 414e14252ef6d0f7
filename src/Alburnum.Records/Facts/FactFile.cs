using System.Text;

namespace Alburnum.Records.Facts;

/// <summary>One fact file being read: its sources, and everything found wrong with it.</summary>
public sealed class FactFile
{
    private readonly List<InputProblem> _problems;
    private readonly Lazy<SourceRegister> _register;
    private SourceRegister _own = SourceRegister.Empty;
    private readonly Dictionary<FactFields, FactRow> _rows = new(ReferenceEqualityComparer.Instance);

    private FactFile(string name, List<InputProblem> problems, Lazy<SourceRegister> register)
    {
        Name = name;
        _problems = problems;
        _register = register;
    }

    /// <summary>Name of the file for messages.</summary>
    public string Name { get; }

    /// <summary>Reads a file and hands its outermost fields to a reader; nothing is thrown for what a person wrote wrong.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="problems">Gains all problems of the file.</param>
    /// <param name="read">Turns the outermost fields into facts.</param>
    /// <param name="register">Sources that its rows may name besides the file's own; null for none.</param>
    public static void Read(
        string path,
        string name,
        List<InputProblem> problems,
        Action<FactRow> read,
        Lazy<SourceRegister>? register = null
    ) => ReadText(TextOf(path, name), name, problems, read, register);

    /// <summary>As <see cref="Read"/>, from text already in memory.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="problems">Gains all problems of the file.</param>
    /// <param name="read">Turns the outermost fields into facts.</param>
    /// <param name="register">Sources that its rows may name besides the file's own; null for none.</param>
    public static void ReadText(
        string text,
        string name,
        List<InputProblem> problems,
        Action<FactRow> read,
        Lazy<SourceRegister>? register = null
    )
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(problems);
        var file = new FactFile(name, problems, register ?? new(SourceRegister.Empty));
        file.ReadFields(
            text,
            root =>
            {
                file._own = root.Has("sources") ? file._register.Value.OwnOf(root) : SourceRegister.Empty;
                read(root);
            }
        );
    }

    /// <summary>Reads one file of the data folder into facts, or refuses with every problem in it.</summary>
    /// <param name="dataFolder">The data folder.</param>
    /// <param name="name">Path of the file inside the folder, also its name in messages.</param>
    /// <param name="register">Sources that its rows may name.</param>
    /// <param name="read">Turns the outermost fields into facts; what it gives is used only where the file holds no problem.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    internal static T Load<T>(string dataFolder, string name, Lazy<SourceRegister> register, Func<FactRow, T> read)
    {
        var problems = new List<InputProblem>();
        T? facts = default;
        ReadInto(dataFolder, name, problems, register, root => facts = read(root));
        return problems.Count == 0 ? facts! : throw new InputRefusedException(problems);
    }

    /// <summary>As <see cref="Load"/>, gathering the problems of several files.</summary>
    internal static void ReadInto(
        string dataFolder,
        string name,
        List<InputProblem> problems,
        Lazy<SourceRegister> register,
        Action<FactRow> read
    )
    {
        if (Found(dataFolder, name, problems) is { } path)
            Read(path, name, problems, read, register);
    }

    /// <summary>As <see cref="Load"/>, for the file that holds the sources themselves.</summary>
    internal static SourceRegister LoadSources(string dataFolder, string name, Func<FactRow, SourceRegister> read)
    {
        var problems = new List<InputProblem>();
        var sources = SourceRegister.Empty;
        if (Found(dataFolder, name, problems) is { } path)
        {
            var file = new FactFile(name, problems, new(SourceRegister.Empty));
            file.ReadFields(TextOf(path, name), root => sources = read(root));
        }
        return problems.Count == 0 ? sources : throw new InputRefusedException(problems);
    }

    /// <summary>The reader of some named fields: one for each place in the file, so that what was asked of it is known.</summary>
    internal FactRow Row(FactFields fields, string key)
    {
        if (!_rows.TryGetValue(fields, out var row))
            _rows[fields] = row = new FactRow(this, fields, key);
        return row;
    }

    internal void Add(InputProblem problem) => _problems.Add(problem);

    /// <summary>The source of that id: the file's own, otherwise the register's.</summary>
    internal Source? Source(string id) => _own.Find(id) ?? _register.Value.Find(id);

    /// <summary>The source that stands in a row itself.</summary>
    internal Source SourceIn(FactRow row) => _register.Value.Read(row, "");

    private void ReadFields(string text, Action<FactRow> read)
    {
        var earlier = _problems.Count;
        if (FactSource.Read(text, Name, _problems) is { } root)
        {
            read(Row(root, ""));
            foreach (var row in _rows.Values)
                row.RefuseUnasked();
        }
        var inOrder = _problems.Skip(earlier).OrderBy(problem => problem.Line).ToList();
        _problems.RemoveRange(earlier, inOrder.Count);
        _problems.AddRange(inOrder);
    }

    private static string TextOf(string path, string name) => PlainFile.Text(path, name, "a file that can be read");

    private static string? Found(string dataFolder, string name, List<InputProblem> problems)
    {
        var path = Path.Combine(dataFolder, name);
        if (File.Exists(path))
            return path;
        problems.Add(new InputProblem(name, 0, "", "", "no such file", $"a file in {dataFolder}"));
        return null;
    }

    /// <summary>SHA-256 over every file of a data folder, whatever was read of it: that of what <c>sha256sum</c> prints of them in the order of their paths.</summary>
    /// <param name="dataFolder">The data folder.</param>
    internal static string Sha256OfAll(string dataFolder)
    {
        var lines = new StringBuilder();
        foreach (
            var path in Directory
                .EnumerateFiles(dataFolder, "*", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(dataFolder, file).Replace(Path.DirectorySeparatorChar, '/'))
                .Order(StringComparer.Ordinal)
        )
        {
            var hash = Sha256Of.Bytes(File.ReadAllBytes(Path.Combine(dataFolder, path)));
            lines.Append(hash).Append("  ").Append(path).Append('\n');
        }
        return Sha256Of.Text(lines.ToString());
    }
}
