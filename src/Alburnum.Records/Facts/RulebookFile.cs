using System.Globalization;
using Alburnum.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads a rulebook: one edition of one code of practice. The form is described in docs/how-to/write-a-rulebook.md.</summary>
public static class RulebookFile
{
    /// <summary>How the name of a rulebook file ends.</summary>
    public const string Extension = ".yaml";

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
        return Path.GetExtension(text) is not Extension
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
    public static Rulebook Load(string path, string name, FactLibrary library) =>
        Read(PlainFile.Bytes(path, path, "a rulebook file"), path, name, library);

    /// <summary>Reads a rulebook from text that is not yet a file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="library">Names that its rows may use.</param>
    /// <exception cref="InputRefusedException">It is not that of a rulebook.</exception>
    public static Rulebook FromText(string text, FactLibrary library)
    {
        ArgumentNullException.ThrowIfNull(library);
        return Load(text, "", root => Read(root, "", library.Words), library.Words);
    }

    /// <summary>As <see cref="Load(string, string, FactLibrary)"/>, from bytes already in memory.</summary>
    /// <param name="bytes">The file's bytes.</param>
    /// <param name="file">Path of the file, as it was given.</param>
    /// <param name="name">Name of the rulebook.</param>
    /// <param name="library">Names of components, species and penetration classes that rows may use.</param>
    /// <exception cref="InputRefusedException">They are not those of a rulebook.</exception>
    public static Rulebook Read(ReadOnlyMemory<byte> bytes, string file, string name, FactLibrary library)
    {
        ArgumentNullException.ThrowIfNull(library);
        var copy = new RulebookCopy(file, Sha256Of.Bytes(bytes.Span));
        return Load(PlainFile.Text(bytes, file), file, root => Read(root, name, library.Words, copy), library.Words);
    }

    /// <summary>Reads a rulebook that ships.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="shownPath">The path that messages name.</param>
    /// <param name="name">Name of the rulebook.</param>
    /// <param name="words">Names that its rows may use.</param>
    internal static Rulebook LoadSupplied(string path, string shownPath, string name, RulebookWords words) =>
        Load(
            PlainFile.Text(path, shownPath, "a file that can be read"),
            shownPath,
            root => Read(root, name, words),
            words
        );

    private static Rulebook Load(string text, string shownPath, Func<FactRow, Rulebook> read, RulebookWords words)
    {
        var problems = new List<InputProblem>();
        Rulebook? rulebook = null;
        FactFile.ReadText(text, shownPath, problems, root => rulebook = read(root), words.Sources);
        return problems.Count == 0 && rulebook is not null ? rulebook : throw new InputRefusedException(problems);
    }

    internal static Rulebook Read(FactRow root, string name, RulebookWords words, RulebookCopy? copy = null)
    {
        var basis = RulebookBasis.Of(root, words);
        var lives = basis is null || root.Has("lives") ? Lives(root) : basis.Lives;
        IReadOnlyList<SpeciesGroup> groups = basis is null
            ? Groups(root, words.Species)
            : RulebookBasis.Merged(basis.Groups, Groups(root, words.Species), group => group.Name);
        var own = OwnRows(
            root,
            groups,
            lives,
            PenetrationClassFile.Read(root, RulebookBasis.Classes(basis, words)),
            words
        );
        var rows = RulebookBasis.Merged(basis?.Rows ?? [], [.. own.Select(each => each.Row)], row => row.Key);

        var faults = Exceptions.Faults(rows).ToList();
        foreach (var fault in faults)
            Refuse(own.FirstOrDefault(each => ReferenceEquals(each.Row, fault.Row)).Place ?? root, fault);
        string Text(string field, string? ofBasis) => ofBasis is null || root.Has(field) ? root.Text(field) : ofBasis;
        var (document, edition) = (Text("document", basis?.Document), Text("edition", basis?.Edition));
        return new Rulebook(faults.Count > 0 ? [] : RowConfirmations.Applied(root, rows, (document, edition), words))
        {
            Name = name,
            Title = Text("title", basis?.Title),
            Document = document,
            Edition = edition,
            BasedOn = basis?.Name,
            Copy = copy,
            Lives = lives,
            Groups = groups,
            CompleteOver = Fields(root, "completeOver", FieldWords.All),
            Cells = basis is null || root.Has("cells") ? Cells(root) : basis.Cells,
            Notes = [.. basis?.Notes ?? [], .. root.Texts("notes")],
        };
    }

    private static List<(Row Row, FactRow Place)> OwnRows(
        FactRow root,
        IReadOnlyList<SpeciesGroup> groups,
        IReadOnlyList<int> lives,
        IReadOnlyDictionary<string, PenetrationDemand> classes,
        RulebookWords words
    )
    {
        var rows = new List<(Row, FactRow)>();
        var conditions = new ConditionReader(words.Components, groups, lives, words.Insects);
        var demands = new DemandReader(classes);
        foreach (var (field, subject) in Subjects)
        {
            foreach (var source in root.OptionalRows(field))
            {
                rows.Add(
                    (
                        new Row(
                            source.Text("key"),
                            subject,
                            conditions.Read(source),
                            demands.Read(source, subject),
                            source.Texts("exceptionTo"),
                            source.Provenance()
                        ),
                        source
                    )
                );
            }
        }
        return rows;
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
        ("acceptance", Subject.Acceptance),
        ("advice", Subject.Advice),
    ];

    private static readonly (string, Subject)[] CellSubjects =
    [
        .. Subjects.Where(each => each.Subject != Subject.Advice),
    ];

    // Cells are told apart by words; a number would need its ranges.
    private static readonly Field[] OfWords =
    [
        Field.Component,
        Field.Form,
        Field.SpeciesGroup,
        Field.StatedClass,
        Field.Preservative,
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

    private static IReadOnlyList<CellKind> Cells(FactRow root) =>
        [
            .. root.OptionalRows("cells")
                .Select(row => new CellKind(row.Word("subject", CellSubjects), Fields(row, "by", OfWords))),
        ];

    private static List<Field> Fields(FactRow row, string name, IReadOnlyList<Field> allowed)
    {
        var fields = new List<Field>();
        foreach (var text in row.Texts(name))
        {
            var known = allowed.Where(field => string.Equals(field.Key(), text, StringComparison.Ordinal)).ToList();
            if (known.Count == 1)
                fields.Add(known[0]);
            else
                row.Refuse(name, text, string.Join(", ", allowed.Select(field => field.Key())));
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
    Lazy<SourceRegister> Sources,
    Lazy<RulebookFolder> Supplied
)
{
    /// <summary>Today, where the reader sits: no copy can have been read on a later day.</summary>
    public required Func<DateOnly> Today { get; init; }
}
