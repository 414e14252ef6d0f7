namespace Alburnum.Records.Facts;

/// <summary>A place in a document that facts are taken from.</summary>
public sealed record Source
{
    /// <summary>Rows name it by this.</summary>
    public required string Id { get; init; }

    /// <summary>Title of the document, or its number.</summary>
    public required string Document { get; init; }

    /// <summary>Who published it; empty where that is not known.</summary>
    public required string Publisher { get; init; }

    /// <summary>Year that it was published; empty where that is not known.</summary>
    public required string Year { get; init; }

    /// <summary>Edition; the year where the document names none.</summary>
    public required string Edition { get; init; }

    /// <summary>Table, clause or page, unless a row names another; may be empty.</summary>
    public required string Place { get; init; }

    /// <summary>Where it can be read; may be empty.</summary>
    public required string Address { get; init; }

    /// <summary>When it was read; may be empty.</summary>
    public required string DateRead { get; init; }

    /// <summary>How it was read, in words; empty where that was not said.</summary>
    public required string HowRead { get; init; }

    /// <summary>True where it was remembered: nobody has read it for this.</summary>
    public required bool IsRemembered { get; init; }

    /// <summary>What a reader should know of it; may be empty.</summary>
    public required string Note { get; init; }

    /// <summary>How it was read and what should be known of it, as a citation ends.</summary>
    internal string Remark => string.Join(", ", new[] { HowRead, Note }.Where(part => part.Length > 0));
}

/// <summary>The documents that facts are taken from, each with an id: <c>sources.yaml</c>.</summary>
public sealed class SourceRegister
{
    private const string FileName = "sources.yaml";
    private const string Unknown = "unknown";
    private const string Memory = "memory";

    private readonly Dictionary<string, Source> _byId = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _waysOfReading = new(StringComparer.Ordinal);

    private SourceRegister() { }

    /// <summary>All of them, in the order of the file.</summary>
    public IReadOnlyList<Source> All => [.. _byId.Values];

    /// <summary>A register without an entry, for files that name all their sources themselves.</summary>
    internal static SourceRegister Empty { get; } = new();

    /// <summary>The register of a data folder.</summary>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    internal static SourceRegister Load(string dataFolder)
    {
        var register = new SourceRegister();
        return FactFile.LoadSources(
            dataFolder,
            FileName,
            root =>
            {
                if (root.OptionalRow("howRead") is { } ways)
                {
                    foreach (var way in ways.FieldNames)
                        register._waysOfReading[way] = ways.Text(way);
                }
                register.Add(root);
                return register;
            }
        );
    }

    /// <summary>The words for a way of reading; the way itself where there are none.</summary>
    internal string InWords(string way) => _waysOfReading.GetValueOrDefault(way, way);

    /// <summary>The entry of that id; null where there is none.</summary>
    internal Source? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>The entries that a file names itself; its words for how a document was read are those of the register.</summary>
    internal SourceRegister OwnOf(FactRow root)
    {
        var own = new SourceRegister();
        foreach (var (way, words) in _waysOfReading)
            own._waysOfReading[way] = words;
        own.Add(root);
        return own;
    }

    /// <summary>One entry, without an id where it stands in the row that it is for.</summary>
    internal Source Read(FactRow row, string id)
    {
        string KnownText(string field) =>
            row.OptionalText(field) is var text && string.Equals(text, Unknown, StringComparison.Ordinal) ? "" : text;
        var way = row.OptionalText("howRead");
        if (way.Length > 0 && !_waysOfReading.ContainsKey(way))
            row.Refuse("howRead", way, string.Join(", ", _waysOfReading.Keys));
        // Kept for whoever looks for the document; no answer prints it.
        if (row.Has("noAddress") && row.Has("address"))
            row.Refuse("noAddress", row.OptionalText("noAddress"), "nothing, where there is an address");
        var year = KnownText("year");
        return new()
        {
            Id = id,
            Document = row.Text("document"),
            Publisher = KnownText("publisher"),
            Year = year,
            Edition = row.OptionalText("edition") is { Length: > 0 } edition ? edition : year,
            Place = row.OptionalText("place"),
            Address = row.OptionalText("address"),
            DateRead = row.OptionalText("dateRead"),
            HowRead = _waysOfReading.GetValueOrDefault(way, ""),
            IsRemembered = string.Equals(way, Memory, StringComparison.Ordinal),
            Note = row.OptionalText("note"),
        };
    }

    private void Add(FactRow root)
    {
        foreach (var row in root.OptionalRows("sources"))
        {
            var id = row.Text("id");
            if (!_byId.TryAdd(id, Read(row, id)))
                row.Refuse("id", id, "a unique id");
        }
    }
}
