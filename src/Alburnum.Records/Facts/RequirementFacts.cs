using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>The facts that requirements rest on, whose files name each other. Each is read once, a rulebook when it is first asked for.</summary>
internal sealed class RequirementFacts
{
    private readonly IReadOnlyList<(string Name, Lazy<Rulebook> Book)> _rulebooks;

    private RequirementFacts(RulebookWords words, IReadOnlyList<(string Name, Lazy<Rulebook> Book)> rulebooks)
    {
        Words = words;
        _rulebooks = rulebooks;
    }

    /// <summary>Species and what is known of them.</summary>
    public SpeciesCatalogue Species => Words.Species;

    /// <summary>Names of components.</summary>
    public ComponentCatalogue Components => Words.Components;

    /// <summary>Names of all rulebooks, in order; none is read for it.</summary>
    public IEnumerable<string> RulebookNames => _rulebooks.Select(each => each.Name);

    /// <summary>Every edition of every code of practice, in the order of their names.</summary>
    /// <exception cref="InputRefusedException">A rulebook says something that cannot be read.</exception>
    public IEnumerable<Rulebook> Rulebooks => _rulebooks.Select(each => each.Book.Value);

    /// <summary>Named penetration classes that codes refer to, by name.</summary>
    public IReadOnlyDictionary<string, PenetrationDemand> PenetrationClasses => Words.Classes;

    /// <summary>What EN 335 says of each use class.</summary>
    public required IReadOnlyList<UseClassFacts> UseClasses { get; init; }

    /// <summary>What readers of use classes get wrong.</summary>
    public required IReadOnlyList<UseClassTrap> UseClassTraps { get; init; }

    /// <summary>Natural durability against use class.</summary>
    public required NaturalDurability Durability { get; init; }

    /// <summary>Years in the ground by durability class, from trials.</summary>
    public required IReadOnlyList<YearsInGround> YearsInGround { get; init; }

    /// <summary>What pressure treatment usually reaches.</summary>
    public required UsualReach UsualReach { get; init; }

    /// <summary>Rough matches between systems: orientation only.</summary>
    public required IReadOnlyList<Equivalence> Equivalences { get; init; }

    /// <summary>What other systems say of timbers, on scales of their own: orientation only.</summary>
    public required IReadOnlyList<OtherScale> OtherScales { get; init; }

    internal RulebookWords Words { get; }

    /// <summary>Reads everything but the rulebooks, or refuses with every problem in every file.</summary>
    /// <param name="dataFolder">The data folder, such as the one beside the program.</param>
    /// <exception cref="InputRefusedException">A file is missing or says something that cannot be read.</exception>
    public static RequirementFacts Load(string dataFolder)
    {
        var problems = new List<InputProblem>();
        IReadOnlyList<Species> species = [];
        IReadOnlyList<Component> components = [];
        FactFile.ReadInto(dataFolder, "timber/species.yaml", problems, root => species = SpeciesFile.Read(root));
        FactFile.ReadInto(dataFolder, "components.yaml", problems, root => components = ComponentFile.Read(root));
        IReadOnlyDictionary<string, PenetrationDemand> classes = new Dictionary<string, PenetrationDemand>(
            StringComparer.Ordinal
        );
        FactFile.ReadInto(
            dataFolder,
            "penetration-classes.yaml",
            problems,
            root => classes = PenetrationClassFile.Read(root, classes)
        );
        var words = new RulebookWords(new ComponentCatalogue(components), new SpeciesCatalogue(species), classes);

        IReadOnlyList<UseClassFacts> useClasses = [];
        IReadOnlyList<UseClassTrap> traps = [];
        IReadOnlyList<DurabilityRow> matrix = [];
        IReadOnlyList<YearsInGround> years = [];
        IReadOnlyList<Equivalence> equivalences = [];
        IReadOnlyList<OtherScale> scales = [];
        var reach = new UsualReach([]);
        FactFile.ReadInto(
            dataFolder,
            "use-classes.yaml",
            problems,
            root => (useClasses, traps) = (UseClassFile.ReadClasses(root), UseClassFile.ReadTraps(root))
        );
        FactFile.ReadInto(
            dataFolder,
            "durability.yaml",
            problems,
            root => (matrix, years) = (DurabilityFile.ReadMatrix(root), DurabilityFile.ReadYears(root))
        );
        FactFile.ReadInto(dataFolder, "usual-reach.yaml", problems, root => reach = DurabilityFile.ReadReach(root));
        FactFile.ReadInto(
            dataFolder,
            "equivalence.yaml",
            problems,
            root => equivalences = UseClassFile.ReadEquivalences(root)
        );
        FactFile.ReadInto(
            dataFolder,
            "timber/other-scales.yaml",
            problems,
            root => scales = OtherScaleFile.Read(root, words.Species)
        );

        if (problems.Count > 0)
            throw new InputRefusedException(problems);
        return new RequirementFacts(words, [.. RulebookFiles(dataFolder).Select(each => (each.Name, Later(each)))])
        {
            UseClasses = useClasses,
            UseClassTraps = traps,
            Durability = new NaturalDurability(matrix),
            YearsInGround = years,
            UsualReach = reach,
            Equivalences = equivalences,
            OtherScales = scales,
        };

        Lazy<Rulebook> Later((string Name, string File) each) =>
            new(() => RulebookFile.Load(Path.Combine(dataFolder, each.File), each.File, each.Name, words));
    }

    /// <summary>The rulebook of that name; refuses a name that is not there.</summary>
    /// <exception cref="InputRefusedException">No rulebook has that name, or the rulebook cannot be read.</exception>
    public Rulebook Rulebook(string name) =>
        _rulebooks
            .FirstOrDefault(each => string.Equals(each.Name, name, StringComparison.OrdinalIgnoreCase))
            .Book?.Value
        ?? throw new InputRefusedException(
            new InputProblem("command line", 0, "", "rulebook", $"\"{name}\"", RulebookMeantBy(name))
        );

    /// <summary>Which rulebooks there are, for a message to those who named another: the nearest first, where one is near.</summary>
    public string RulebookMeantBy(string name)
    {
        var all = string.Join(", ", RulebookNames);
        return
            new NameIndex<string>(RulebookNames, each => [each]).Find(name)
                is NotFound<string> { Suggestions: { Count: > 0 } near }
            ? $"one of {all}; did you mean {string.Join(", ", near)}?"
            : all;
    }

    // rulebooks/british/2014.yaml is "british-2014".
    private static IEnumerable<(string Name, string File)> RulebookFiles(string dataFolder)
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
