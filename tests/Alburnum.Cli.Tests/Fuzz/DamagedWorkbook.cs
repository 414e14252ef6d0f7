using System.IO.Compression;
using System.Text;
using Alburnum.Tests.Shared.Fuzz;

namespace Alburnum.Cli.Tests.Fuzz;

/// <summary>Ways in which the parts of a workbook come damaged inside a package that is whole.</summary>
internal static class DamagedWorkbook
{
    private const string Bomb =
        "<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c SYSTEM \"file:///etc/hostname\">]>";

    private static readonly string[] AwkwardNumbers = ["-1", "0", "999999999", "4294967296", "1e400", "NaN", "x", ""];

    public static IReadOnlyList<Func<byte[], Random, byte[]>> Ways { get; } =
    [
        OfPart(InText),
        OfPart(InText),
        OfPart(NumberReplaced),
        OfPart(NumberReplaced),
        OfPart(WithEntities),
        PartRemoved,
        PartTwice,
        PartRenamed,
    ];

    private static string InText(string xml, Random random) =>
        Encoding.UTF8.GetString(new Mutator(DamagedText.Ways).Of(Encoding.UTF8.GetBytes(xml), random));

    private static string NumberReplaced(string xml, Random random)
    {
        var starts = Enumerable
            .Range(1, Math.Max(0, xml.Length - 1))
            .Where(at => char.IsAsciiDigit(xml[at]) && !char.IsAsciiDigit(xml[at - 1]))
            .ToList();
        if (starts.Count == 0)
            return xml;
        var at = starts[random.Next(starts.Count)];
        var end = at;
        while (end < xml.Length && char.IsAsciiDigit(xml[end]))
            end++;
        return xml[..at] + AwkwardNumbers[random.Next(AwkwardNumbers.Length)] + xml[end..];
    }

    private static string WithEntities(string xml, Random random)
    {
        var start = xml.IndexOf("?>", StringComparison.Ordinal) + 2;
        return xml[..start]
            + Bomb
            + xml[start..].Replace("P01", random.Next(2) == 0 ? "&b;" : "&c;", StringComparison.Ordinal);
    }

    private static Func<byte[], Random, byte[]> OfPart(Func<string, Random, string> way) =>
        (file, random) =>
            OfPackage(
                file,
                random,
                (package, part) =>
                {
                    string xml;
                    using (var reader = new StreamReader(part.Open()))
                        xml = reader.ReadToEnd();
                    var name = part.FullName;
                    part.Delete();
                    Write(package, name, way(xml, random));
                }
            );

    private static byte[] PartRemoved(byte[] file, Random random) =>
        OfPackage(file, random, (_, part) => part.Delete());

    private static byte[] PartTwice(byte[] file, Random random) =>
        OfPackage(file, random, (package, part) => Write(package, part.FullName, "<x/>"));

    private static byte[] PartRenamed(byte[] file, Random random) =>
        OfPackage(
            file,
            random,
            (package, part) =>
            {
                part.Delete();
                Write(package, "../" + part.FullName, "<x/>");
            }
        );

    private static void Write(ZipArchive package, string name, string text)
    {
        using var writer = new StreamWriter(package.CreateEntry(name).Open());
        writer.Write(text);
    }

    // What no longer is a package stays as it is.
    private static byte[] OfPackage(byte[] file, Random random, Action<ZipArchive, ZipArchiveEntry> change)
    {
        using var stream = new MemoryStream();
        stream.Write(file);
        try
        {
            using (var package = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
            {
                if (package.Entries.Count == 0)
                    return file;
                change(package, package.Entries[random.Next(package.Entries.Count)]);
            }
            return stream.ToArray();
        }
        catch (Exception damaged)
            when (damaged is InvalidDataException or IOException or ArgumentException or NotSupportedException)
        {
            return file;
        }
    }
}
