using Alburnum.Records;

namespace Alburnum.Cli;

/// <summary>A folder that results go to.</summary>
internal static class OutFolder
{
    private const string Expected = "a folder that results can be written to";

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
    public static void Make(string folder) =>
        FileTrouble.Refusing(folder, Expected, () => Directory.CreateDirectory(folder));

    /// <summary>Writes a file into the folder.</summary>
    /// <exception cref="InputRefusedException">It cannot be written.</exception>
    public static void Write(string folder, string name, byte[] bytes) =>
        FileTrouble.Refusing(folder, Expected, () => File.WriteAllBytes(Path.Combine(folder, name), bytes));

    public static InputRefusedException Refused(string folder, string found) =>
        new(new InputProblem(folder, 0, "", "", found, Expected));
}
