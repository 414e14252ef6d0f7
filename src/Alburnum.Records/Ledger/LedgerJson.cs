using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Alburnum.Records.Ledger;

/// <summary>The JSON of the ledger, as docs/json/bundle.md describes it. What is hashed is kept to the letter and never written anew.</summary>
internal static class LedgerJson
{
    public const string By = "by";
    public const string Subject = "subject";
    public const string Before = "before";
    public const string After = "after";
    private const string Format = "alburnum ledger 1";

    private static readonly string[] TextNames = [By, Subject, Before, After];

    private static readonly JsonWriterOptions OnOneLine = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly JsonWriterOptions OnLines = OnOneLine with { Indented = true, NewLine = "\n" };

    /// <summary>The text of an entry that is hashed.</summary>
    public static string Sealed(LedgerEntry entry) =>
        Text(
            new JsonObject
            {
                ["format"] = Format,
                ["number"] = entry.Place.Number,
                ["case"] = entry.CaseNumber,
                ["number_in_case"] = entry.Place.NumberInCase,
                ["at"] = Moment(entry.At),
                ["act"] = entry.Act.Key(),
                [By] = entry.By.Seal,
                [Subject] = entry.Subject?.Seal,
                [Before] = entry.Before?.Seal,
                [After] = entry.After?.Seal,
                ["previous"] = entry.Place.Previous,
                ["previous_in_case"] = entry.Place.PreviousInCase,
            }
        );

    /// <summary>The texts of an entry with their salts.</summary>
    public static string Opened(LedgerEntry entry)
    {
        var texts = new JsonObject();
        foreach (var (name, text) in entry.Texts.Where(each => !each.Text.IsRemoved))
            texts[name] = new JsonObject { ["salt"] = text.Salt, ["text"] = text.Text };
        return Text(texts);
    }

    /// <summary>The entry that was kept; null where the text is none.</summary>
    public static LedgerEntry? Entry(KeptEntry kept) =>
        ReadOrNull(() =>
        {
            var entry = Object(kept.Sealed);
            var texts = Object(kept.Opened);
            if (String(entry, "format") != Format || texts.Any(text => !TextNames.Contains(text.Key)))
                throw new FormatException();
            return new LedgerEntry(
                new(
                    Whole(entry, "number"),
                    Whole(entry, "number_in_case"),
                    String(entry, "previous"),
                    String(entry, "previous_in_case")
                ),
                Whole(entry, "case"),
                Moment(String(entry, "at")),
                LedgerActKeys.Read(String(entry, "act")),
                OfName(entry, texts, By) ?? throw new FormatException(),
                OfName(entry, texts, Subject),
                OfName(entry, texts, Before),
                OfName(entry, texts, After)
            )
            {
                Hash = kept.Hash,
            };
        });

    /// <summary>An entry as a line of a bundle.</summary>
    public static string Line(KeptEntry kept) =>
        Text(
            new JsonObject
            {
                ["number"] = kept.Number,
                ["case"] = kept.CaseNumber,
                ["hash"] = kept.Hash,
                ["sealed"] = kept.Sealed,
                ["opened"] = kept.Opened,
            }
        );

    /// <summary>The entry of a line; null where it is none.</summary>
    public static KeptEntry? OfLine(string line) =>
        ReadOrNull(() =>
        {
            var kept = Object(line);
            return new KeptEntry(
                Whole(kept, "number"),
                Whole(kept, "case"),
                String(kept, "sealed"),
                String(kept, "opened"),
                String(kept, "hash")
            );
        });

    /// <summary>A person as an entry keeps them.</summary>
    public static string OfPerson(Person person) =>
        Text(new JsonObject { ["name"] = person.Name, ["known_by"] = person.KnownBy.Key() });

    /// <summary>The person of an entry; null where the text is none.</summary>
    public static Person? PersonOrNull(string text) =>
        ReadOrNull(() =>
        {
            var person = Object(text);
            return new Person(
                String(person, "name"),
                Enum.GetValues<PersonKnownBy>().First(by => by.Key() == String(person, "known_by"))
            );
        });

    /// <summary>A text part by part: that of an object by its names, any other whole; none where there is none, or it was removed.</summary>
    public static IReadOnlyList<LedgerPart> Parts(SealedText? sealedText)
    {
        if (sealedText?.Text is not { } text)
            return [];
        return ReadOrNull(() =>
                Object(text)
                    .Select(part => new LedgerPart(
                        part.Key,
                        part.Value switch
                        {
                            JsonObject many => many.Count.ToString(CultureInfo.InvariantCulture),
                            JsonArray many => many.Count.ToString(CultureInfo.InvariantCulture),
                            { } one => one.ToString(),
                            null => "",
                        }
                    ))
                    .ToList()
            ) ?? [new("", text)];
    }

    /// <summary>What the entry of a run says of it: which run of its case it is, and its files.</summary>
    public static string OfRun(int number, IEnumerable<HeldSum> files) =>
        Text(new JsonObject { ["run"] = number, ["files"] = Sums(files) });

    /// <summary>What a run is worked out with.</summary>
    public static string OfInputs(RunInputs inputs) =>
        OfTexts(
            ("program", inputs.Program),
            ("facts_sha256", inputs.FactsSha256),
            ("rulebook", inputs.Rulebook),
            ("rulebook_sha256", inputs.RulebookSha256)
        );

    /// <summary>What a redaction or deletion leaves: which texts are gone, and what the case holds since.</summary>
    public static string OfRemoval(IEnumerable<(int Entry, string Name)> removed, IEnumerable<HeldSum> files) =>
        Text(
            new JsonObject
            {
                ["removed"] = new JsonArray([
                    .. removed
                        .GroupBy(each => each.Entry)
                        .Select(entry => new JsonObject
                        {
                            ["entry"] = entry.Key,
                            ["texts"] = new JsonArray([.. entry.Select(each => JsonValue.Create(each.Name))]),
                        }),
                ]),
                ["files"] = Sums(files),
            }
        );

    /// <summary>The files that a text of <see cref="OfRun"/> or <see cref="OfRemoval"/> names; none where it cannot be read.</summary>
    public static IReadOnlyList<HeldSum> Files(string text) =>
        ReadOrNull(() =>
            Object(text)["files"]!
                .AsObject()
                .Select(file => new HeldSum(file.Key, file.Value!.GetValue<string>()))
                .ToList()
        ) ?? [];

    /// <summary>The texts that a text of <see cref="OfRemoval"/> says are gone.</summary>
    public static IReadOnlyList<(int Entry, string Name)> Removed(string text) =>
        ReadOrNull(() =>
            Object(text)["removed"]!
                .AsArray()
                .SelectMany(entry =>
                    entry!["texts"]!
                        .AsArray()
                        .Select(name => (Whole(entry.AsObject(), "entry"), name!.GetValue<string>()))
                )
                .ToList()
        ) ?? [];

    /// <summary>Names and texts as one JSON object, in the order given.</summary>
    public static string OfTexts(params IEnumerable<(string Name, string Text)> texts)
    {
        var all = new JsonObject();
        foreach (var (name, text) in texts)
            all[name] = text;
        return Text(all);
    }

    /// <summary>A moment as it is hashed: UTC, to a ten-millionth of a second.</summary>
    public static string Moment(DateTime at) =>
        DateTime.SpecifyKind(at, DateTimeKind.Utc).ToString("O", CultureInfo.InvariantCulture);

    /// <summary>The moment of a text.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static DateTime Moment(string text) =>
        DateTime.ParseExact(text, "O", CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind);

    /// <summary>JSON on one line.</summary>
    public static string Text(JsonNode node) => Encoding.UTF8.GetString(Written(node, OnOneLine));

    /// <summary>JSON on a line for each value, in UTF-8.</summary>
    public static byte[] Lines(JsonNode node) => Written(node, OnLines);

    private static byte[] Written(JsonNode node, JsonWriterOptions options)
    {
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, options))
            node.WriteTo(writer);
        return bytes.ToArray();
    }

    /// <summary>A JSON object of a text.</summary>
    public static JsonObject Object(string text) =>
        JsonNode.Parse(text, documentOptions: new() { AllowDuplicateProperties = false }) as JsonObject
        ?? throw new FormatException();

    public static string String(JsonObject from, string name) =>
        from[name]?.GetValue<string>() ?? throw new FormatException();

    public static int Whole(JsonObject from, string name) => from[name]?.GetValue<int>() ?? throw new FormatException();

    /// <summary>What a reader makes of JSON; null where that is other than it should be.</summary>
    public static T? ReadOrNull<T>(Func<T> read)
        where T : class
    {
        try
        {
            return read();
        }
        catch (Exception other)
            when (other
                    is JsonException
                        or FormatException
                        or InvalidOperationException
                        or NullReferenceException
                        or ArgumentException
            )
        {
            return null;
        }
    }

    private static JsonObject Sums(IEnumerable<HeldSum> files)
    {
        var sums = new JsonObject();
        foreach (var file in files.OrderBy(file => file.Path, StringComparer.Ordinal))
            sums[file.Path] = file.Sha256;
        return sums;
    }

    private static SealedText? OfName(JsonObject entry, JsonObject texts, string name)
    {
        if (entry[name]?.GetValue<string>() is not { } seal)
            return texts.ContainsKey(name) ? throw new FormatException() : null;
        return texts[name] is JsonObject open
            ? new(seal, String(open, "salt"), String(open, "text"))
            : new(seal, Salt: null, Text: null);
    }
}

/// <summary>What a run was worked out with, beside the files of its case.</summary>
/// <param name="Program">Name and version of the program.</param>
/// <param name="FactsSha256">SHA-256 over the fact files that ship.</param>
/// <param name="Rulebook">The code of practice and its edition.</param>
/// <param name="RulebookSha256">SHA-256 of its file.</param>
public sealed record RunInputs(string Program, string FactsSha256, string Rulebook, string RulebookSha256);

/// <summary>A file that a store or a bundle holds, by its hash.</summary>
/// <param name="Path">Its path within a bundle, which also names it in a store: <c>cases/3/runs/1/report.json</c>, <c>photographs/ab12…</c>.</param>
/// <param name="Sha256">SHA-256 of its bytes.</param>
internal sealed record HeldSum(string Path, string Sha256)
{
    /// <summary>Name under which a photograph came in, as the tables have it; null for what has none but its path.</summary>
    public string? CameInAs { get; init; }
}
