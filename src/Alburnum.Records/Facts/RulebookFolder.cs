using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Every edition of every code of practice that ships, by name. Each is read when it is first asked for, and then once.</summary>
public sealed class RulebookFolder
{
    private readonly IReadOnlyList<(string Name, Lazy<Rulebook> Book)> _rulebooks;
    private readonly string _dataFolder;

    /// <summary>The rulebooks of one data folder.</summary>
    /// <param name="dataFolder">The data folder.</param>
    /// <param name="words">Names that their rows may use.</param>
    internal RulebookFolder(string dataFolder, Lazy<RulebookWords> words)
    {
        _dataFolder = dataFolder;
        _rulebooks =
        [
            .. Files(dataFolder)
                .Select(each =>
                    (
                        each.Name,
                        new Lazy<Rulebook>(() =>
                            RulebookFile.LoadSupplied(
                                Path.Combine(dataFolder, each.File),
                                each.File,
                                each.Name,
                                words.Value
                            )
                        )
                    )
                ),
        ];
    }

    /// <summary>SHA-256 of the file that a rulebook was read from, 64 lower-case hexadecimal digits.</summary>
    /// <param name="rulebook">One that ships, or a copy of the user's.</param>
    public string Sha256Of(Rulebook rulebook)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        if (rulebook.Copy is { } copy)
            return copy.Sha256;
        var file = Files(_dataFolder).First(each => each.Name == rulebook.Name).File;
        return Records.Sha256Of.Bytes(File.ReadAllBytes(Path.Combine(_dataFolder, file)));
    }

    /// <summary>Their names, in order; none is read for it.</summary>
    public IEnumerable<string> Names => _rulebooks.Select(each => each.Name);

    /// <summary>All of them, in the order of their names.</summary>
    /// <exception cref="InputRefusedException">A rulebook says something that cannot be read.</exception>
    public IEnumerable<Rulebook> All => _rulebooks.Select(each => each.Book.Value);

    /// <summary>The rulebook of that name; refuses a name that is not there.</summary>
    /// <exception cref="InputRefusedException">No rulebook has that name, or the rulebook cannot be read.</exception>
    public Rulebook Named(string name) =>
        _rulebooks
            .FirstOrDefault(each => string.Equals(each.Name, name, StringComparison.OrdinalIgnoreCase))
            .Book?.Value
        ?? throw new InputRefusedException(
            new InputProblem("command line", 0, "", "rulebook", $"\"{name}\"", MeantBy(name))
        );

    /// <summary>Which rulebooks there are, for a message to those who named another: the nearest first, where one is near.</summary>
    /// <param name="name">What was named.</param>
    /// <param name="orElse">What else might be named, such as ", or a rulebook file".</param>
    public string MeantBy(string name, string orElse = "")
    {
        var all = string.Join(", ", Names) + orElse;
        return
            new NameIndex<string>(Names, each => [each]).Find(name)
                is NotFound<string> { Suggestions: { Count: > 0 } near }
            ? $"one of {all}; did you mean {string.Join(", ", near)}?"
            : all;
    }

    // rulebooks/british/2014.yaml is "british-2014".
    private static IEnumerable<(string Name, string File)> Files(string dataFolder)
    {
        var root = Path.Combine(dataFolder, "rulebooks");
        if (!Directory.Exists(root))
            return [];
        return Directory
            .EnumerateFiles(root, "*.yaml", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)
            .Select(path => (Name(Path.GetRelativePath(root, path)), Path.GetRelativePath(dataFolder, path)));

        static string Name(string relative) =>
            Path.ChangeExtension(relative, null).Replace(Path.DirectorySeparatorChar, '-');
    }
}
