using System.Text;
using System.Text.RegularExpressions;

namespace Alburnum.Tests.Shared.Fuzz;

/// <summary>Ways in which a text file (YAML, CSV, JSON, a form's field) comes awkward: it still reads as text, and says something else.</summary>
internal static partial class DamagedText
{
    // What people type, paste and export, and what somebody would write to do damage.
    private static readonly string[] AwkwardWords =
    [
        "",
        " ",
        "-",
        "~",
        "null",
        "yes",
        "NaN",
        "-NaN",
        "Infinity",
        "1e999",
        "-1e-999",
        "-0",
        "0",
        "-1",
        "1.7976931348623157e308",
        "9223372036854775808",
        "99999999999999999999999999",
        "0x10",
        "1_000",
        "1,5",
        "1.234,5",
        "1'234.5",
        "½",
        "٣",
        "１２",
        "𝟗",
        "5 ± ",
        "5 ± 0 (k=0)",
        "5 ± -1 (k=2)",
        "< -5 mg/kg",
        "101 %",
        "75 x",
        "x 75",
        "75 × 100 mm",
        "0 x 0 mm",
        "1e9 x 1e9 mm",
        "round -1 mm",
        "2026-02-30",
        "0000-00-00",
        "9999-12-31",
        "../../../etc/passwd",
        "/dev/zero",
        "P01.jpg\0.txt",
        "=1+1",
        "@SUM(A1)",
        "\"",
        "'",
        "\\",
        "\0",
        "\u0007",
        "\u001b[31m",
        "\u202eFDP.exe",
        "\u2028",
        "\uFEFF",
        "\uD800",
        "😀",
        "<script>alert(1)</script>",
        "%s%n{0}{{",
        "&a [*a]",
        "*a",
        "!!binary AA==",
        "!<tag:yaml.org,2002:js/function> x",
        "{",
        "}",
        "[[[[[[[[",
        "|",
        "> ",
        "? ",
        "- - - -",
        "--- ",
        "...",
        "%YAML 9.9",
        "# ",
        ":",
        ": :",
        ";;;;",
        "\t",
    ];

    public static IReadOnlyList<Func<byte[], Random, byte[]>> Ways { get; } =
    [
        OfText(WordReplaced),
        OfText(WordReplaced),
        OfText(WordFromElsewhere),
        OfText(ValueReplaced),
        OfText(ValueReplaced),
        OfText(LineRemoved),
        OfText(LineRepeated),
        OfText(LinesSwapped),
        OfText(LineShifted),
        OfText(LinesJoined),
        OfText(CharacterInserted),
        OfText(CharacterRemoved),
        OfText(LongWord),
        OfText(DeepNest),
        OfText(OtherLineEnds),
        OfText(OtherSeparator),
        OtherEncoding,
    ];

    private static Func<byte[], Random, byte[]> OfText(Func<string, Random, string> way) =>
        (bytes, random) => Encoding.UTF8.GetBytes(way(Encoding.UTF8.GetString(bytes), random));

    private static string Awkward(Random random) => AwkwardWords[random.Next(AwkwardWords.Length)];

    private static string WordReplaced(string text, Random random) => Replaced(text, Word(), random, Awkward(random));

    private static string ValueReplaced(string text, Random random) => Replaced(text, Value(), random, Awkward(random));

    private static string WordFromElsewhere(string text, Random random)
    {
        var words = Word().Matches(text);
        return words.Count == 0 ? text : Replaced(text, Word(), random, words[random.Next(words.Count)].Value);
    }

    private static string Replaced(string text, Regex what, Random random, string with)
    {
        var places = what.Matches(text);
        if (places.Count == 0)
            return text + with;
        var place = places[random.Next(places.Count)];
        return text[..place.Index] + with + text[(place.Index + place.Length)..];
    }

    private static string LineRemoved(string text, Random random) => OfLines(text, random, (_, _) => []);

    private static string LineRepeated(string text, Random random) =>
        OfLines(text, random, (line, _) => [.. Enumerable.Repeat(line, random.Next(2, 40))]);

    private static string LineShifted(string text, Random random) =>
        OfLines(text, random, (line, _) => [new string(' ', random.Next(1, 9)) + line.TrimStart()]);

    private static string LinesSwapped(string text, Random random) =>
        OfLines(text, random, (line, lines) => [lines[random.Next(lines.Length)], line]);

    private static string LinesJoined(string text, Random random)
    {
        var ends = text.Select((letter, at) => (letter, at)).Where(each => each.letter == '\n').ToList();
        return ends.Count == 0 ? text : text.Remove(ends[random.Next(ends.Count)].at, 1);
    }

    private static string OfLines(string text, Random random, Func<string, string[], IReadOnlyList<string>> with)
    {
        var lines = text.Split('\n');
        var at = random.Next(lines.Length);
        return string.Join('\n', [.. lines[..at], .. with(lines[at], lines), .. lines[(at + 1)..]]);
    }

    private static string CharacterInserted(string text, Random random) =>
        text.Insert(random.Next(text.Length + 1), ((char)random.Next(1, 0x3000)).ToString());

    private static string CharacterRemoved(string text, Random random) =>
        text.Length == 0 ? text : text.Remove(random.Next(text.Length), 1);

    private static string LongWord(string text, Random random) =>
        Replaced(text, Word(), random, new string((char)random.Next('0', 'z'), random.Next(200, 20_000)));

    private static string DeepNest(string text, Random random) =>
        Replaced(text, Value(), random, new string(random.Next(2) == 0 ? '[' : '{', random.Next(10, 3000)));

    private static string OtherLineEnds(string text, Random random) =>
        text.Replace("\n", random.Next(2) == 0 ? "\r\n" : "\r", StringComparison.Ordinal);

    private static string OtherSeparator(string text, Random random) =>
        text.Replace(',', random.Next(2) == 0 ? ';' : '\t');

    private static byte[] OtherEncoding(byte[] file, Random random)
    {
        Encoding[] encodings = [Encoding.Latin1, Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.UTF32];
        var encoding = encodings[random.Next(encodings.Length)];
        var bytes = encoding.GetBytes(Encoding.UTF8.GetString(file) + "é°±");
        return random.Next(2) == 0 ? [.. encoding.Preamble, .. bytes] : bytes;
    }

    [GeneratedRegex(@"[\p{L}\p{N}._+-]+", RegexOptions.NonBacktracking)]
    private static partial Regex Word();

    // What stands after a colon or between separators.
    [GeneratedRegex(@"[^:,\n{}\[\]]+", RegexOptions.NonBacktracking)]
    private static partial Regex Value();
}
