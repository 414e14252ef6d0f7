using Alburnum.Records;

namespace Alburnum.Cli;

/// <summary>A folder that results go to.</summary>
internal static class OutFolder
{
    /// <summary>Refuses a path that cannot become a folder, before any work is done. Nothing is made.</summary>
    /// <exception cref="InputRefusedException">A file stands there, or on the way to it.</exception>
    public static void Examine(string folder)
    {
        for (var path = Path.GetFullPath(folder); path is not null && !Directory.Exists(path); )
        {
            if (File.Exists(path))
                throw Refused(folder, "a file");
            path = Path.GetDirectoryName(path);
        }
    }

    /// <summary>Makes the folder where it is missing.</summary>
    /// <exception cref="InputRefusedException">It cannot be made.</exception>
    public static void Make(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(folder, FileTrouble.InWords(broken));
        }
    }

    public static InputRefusedException Refused(string folder, string found) =>
        new(new InputProblem(folder, 0, "", "", found, "a folder that results can be written to"));
}
