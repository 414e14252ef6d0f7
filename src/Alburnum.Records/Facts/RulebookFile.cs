using System.Globalization;
using Alburnum.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads a rulebook: one edition of one code of practice. The form is described in docs/how-to/write-a-rulebook.md.</summary>
public static class RulebookFile
{
    private static readonly (string, WoodType)[] Types =
    [
        ("softwood", WoodType.Softwood),
        ("hardwood", WoodType.Hardwood),
    ];

    /// <summary>The rulebook that a person named: a file where there is one, otherwise the name of one that ships.</summary>
    /// <param name="text">Path or name.</param>
    /// <param name="library">The rulebooks that ship, and the words that a rulebook may use.</param>
    /// <exception cref="InputRefusedException">There is no such rulebook, or it cannot be read.</exception>
    public static Rulebook Named(string text, FactLibrary library)
    {
        ArgumentNullException.ThrowIfNull(library);
        if (File.Exists(text))
            return Load(text, Path.GetFileNameWithoutExtension(text), library);
        return Path.GetExtension(text) is not ".yaml"
            ? library.Rulebooks.Named(text)
            : throw new InputRefusedException(
                new InputProblem(text, 0, "", "", "no such file", "a rulebook file, or the name of one supplied")
            );
    }

    /// <summary>Reads one rulebook file and refuses it with every problem found.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="name">Name of the rulebook, for instance "british-2014".</param>
    /// <param name="library">Names of components, species and penetration classes that rows may use.</param>
    /// <exception cref="InputRefusedException">The file is not a rulebook.</exception>
    public static Rulebook Load(string path, string name, FactLibrary library)
    {
        ArgumentNullException.ThrowIfNull(library);
        return Load(path, path, name, library.Words);
    }

    // The shown path is the one that messages name.
    internal static Rulebook Load(string path, string shownPath, string name, RulebookWords words)
    {
        var problems = new List<InputProblem>();
        Rulebook? rulebook = null;
        FactFile.Read(path, shownPath, problems, root => rulebook = Read(root, name, words), words.Sources);
        return problems.Count == 0 && rulebook is not null ? rulebook : throw new InputRefusedException(problems);
    }

    internal static Rulebook Read(FactRow root, string name, RulebookWords words)
    {
        var title = root.Text("title");
        var document = root.Text("document");
        var edition = root.Text("edition");
        var lives = Lives(root);
        var completeOver = CompleteOver(root);
        var notes = root.Texts("notes");
        var groups = Groups(root, words.Species);
        var classes = PenetrationClassFile.Read(root, words.Classes);

        var rows = new List<Row>();
        var places = new Dictionary<Row, FactRow>(ReferenceEqualityComparer.Instance);
        var conditions = new ConditionReader(words.Components, groups, lives, words.Insects);
        var demands = new DemandReader(classes);
        foreach (var (field, subject) in Subjects)
        {
            foreach (var source in root.OptionalRows(field))
            {
                var row = new Row(
                    source.Text("key"),
                    subject,
                    conditions.Read(source),
                    demands.Read(source, subject),
                    source.Texts("exceptionTo"),
                    source.Provenance()
                );
                rows.Add(row);
                places[row] = source;
            }
        }

        var faults = Exceptions.Faults(rows).ToList();
        foreach (var fault in faults)
            Refuse(places[fault.Row], fault);
        return new Rulebook(faults.Count == 0 ? rows : [])
        {
            Name = name,
            Title = title,
            Document = document,
            Edition = edition,
            Lives = lives,
            Groups = groups,
            CompleteOver = completeOver,
            Notes = notes,
        };
    }

    private static void Refuse(FactRow row, ExceptionFault fault)
    {
        switch (fault)
        {
            case KeyUsedBefore:
                row.Refuse("key", "a key used before", "a unique key");
                break;
            case ExceptionToNoRow { Key: var key }:
                row.Refuse("exceptionTo", $"an exception to \"{key}\"", "the key of a row about the same subject");
                break;
            case ExceptionToItself:
                row.Refuse(
                    "exceptionTo",
                    "a row that is an exception to itself",
                    "exceptions that end at a general row"
                );
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault.");
        }
    }

    private static readonly (string Field, Subject Subject)[] Subjects =
    [
        ("useClass", Subject.UseClass),
        ("life", Subject.Life),
        ("penetration", Subject.Penetration),
        ("retention", Subject.Retention),
        ("moisture", Subject.Moisture),
        ("advice", Subject.Advice),
    ];

    private static List<int> Lives(FactRow root)
    {
        var lives = new List<int>();
        foreach (var text in root.Texts("lives"))
        {
            if (
                int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var years)
                && Ranges.LifeYears.Holds(years)
            )
                lives.Add(years);
            else
                root.Refuse("lives", text, Ranges.LifeYears.InWords);
        }
        lives.Sort();
        return lives;
    }

    private static List<Field> CompleteOver(FactRow root)
    {
        var fields = new List<Field>();
        foreach (var text in root.Texts("completeOver"))
        {
            var known = FieldWords
                .All.Where(field => string.Equals(field.Key(), text, StringComparison.Ordinal))
                .ToList();
            if (known.Count == 1)
                fields.Add(known[0]);
            else
                root.Refuse("completeOver", text, string.Join(", ", FieldWords.All.Select(field => field.Key())));
        }
        return fields;
    }

    private static List<SpeciesGroup> Groups(FactRow root, SpeciesCatalogue species)
    {
        var groups = new List<SpeciesGroup>();
        foreach (var row in root.OptionalRows("speciesGroups"))
        {
            var types = row.Texts("types").Count == 0 ? (IReadOnlyList<WoodType>)[] : [row.Word("types", Types)];
            var names = row.Texts("species");
            foreach (var each in names.Where(each => species.Named(each) is null))
                row.Refuse("species", each, "a species of timber/species.yaml");
            var group = new SpeciesGroup(
                row.Text("name"),
                types,
                row.Texts("genera"),
                row.Texts("exceptGenera"),
                [.. names.Select(each => species.Named(each)?.Name ?? each)],
                row.Provenance()
            );
            if (group.Types.Count + group.Genera.Count + group.Names.Count == 0)
                row.Refuse("species", "nothing", "types, genera or species");
            groups.Add(group);
        }
        return groups;
    }
}

/// <summary>Names that the rows of a rulebook may use without defining them.</summary>
internal sealed record RulebookWords(
    ComponentCatalogue Components,
    SpeciesCatalogue Species,
    IReadOnlyDictionary<string, PenetrationDemand> Classes,
    IReadOnlyList<Insect> Insects,
    Lazy<SourceRegister> Sources
);
