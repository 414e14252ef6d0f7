using Alburnum.Facts;
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
        try
        {
            var target = File.ResolveLinkTarget(file, returnFinalTarget: true)?.FullName ?? file;
            if (Directory.Exists(target))
                throw Refused(file, "a link to a folder", "a photograph");
            // Pipes and devices have no length; opening one could wait for ever.
            if (new FileInfo(target).Length == 0)
                throw Refused(file, "an empty file, or something that is not a plain file", "a photograph");
            using var stream = new FileStream(target, FileMode.Open, FileAccess.Read, FileShare.Read);
            if (!stream.CanSeek)
                throw Refused(file, "something that is not a plain file", "a photograph");
            if (PhotographSize.IsBeyond(stream.Length))
                throw Refused(file, PhotographSize.Found(stream.Length), PhotographSize.Expected);
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
        catch (Exception missing) when (missing is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Refused(file, "no such file", "a photograph");
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(file, FileTrouble.InWords(broken), "a photograph");
        }
    }

    private static InputRefusedException Refused(string file, string found, string expected) =>
        new(new InputProblem(file, 0, "", "", found, expected));
}
