using Alburnum.Records;
using Alburnum.Records.CaseFolders;

namespace Alburnum.Workflows.Measuring;

/// <summary>Which files a list of photographs and folders means, and their bytes.</summary>
public static class PhotographPaths
{
    /// <summary>Every file named, and every photograph directly in a folder named, in order.</summary>
    /// <exception cref="InputRefusedException">Nothing is meant.</exception>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> named)
    {
        var files = new List<string>();
        foreach (var path in named)
        {
            if (!Directory.Exists(path))
            {
                files.Add(path);
                continue;
            }
            var inside = FileTrouble
                .Refusing(path, "photographs, or a folder of them", () => Directory.GetFiles(path))
                .Where(FolderFiles.IsPhotograph)
                .Order(StringComparer.Ordinal)
                .ToList();
            if (inside.Count == 0)
                throw Refused(path, "a folder without photographs", "photographs, or a folder of them");
            files.AddRange(inside);
        }
        return files;
    }

    /// <summary>A photograph's bytes. A symbolic link is followed to the plain file at its end.</summary>
    /// <exception cref="InputRefusedException">Missing, not a file, too large or not readable.</exception>
    public static byte[] Read(string file)
    {
        var bytes = PlainFile.Bytes(file, file, "a photograph");
        return bytes.Length > 0 ? bytes : throw Refused(file, "an empty file", "a photograph");
    }

    private static InputRefusedException Refused(string file, string found, string expected) =>
        new(new InputProblem(file, 0, "", "", found, expected));
}
