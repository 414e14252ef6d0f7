namespace Alburnum.Records;

/// <summary>A folder that results go to.</summary>
public static class OutFolder
{
    private const string Expected = "a folder that results can be written to";

    /// <summary>Refuses a path that cannot become a folder, before any work is done. Nothing stays behind.</summary>
    /// <param name="folder">The path.</param>
    /// <exception cref="InputRefusedException">A file stands there or on the way to it, or the folder above takes no files.</exception>
    public static void Examine(string folder)
    {
        var path = Path.GetFullPath(folder);
        for (; path is not null && !Directory.Exists(path); path = Path.GetDirectoryName(path))
            if (File.Exists(path))
                throw Refused(folder, "a file");
        if (path is not null && !TakesFiles(path))
            throw Refused(folder, "a place that takes no files");
    }

    /// <summary>Whether a file can be made in a folder, found by making one that goes again at once.</summary>
    /// <param name="folder">A folder that is there.</param>
    internal static bool TakesFiles(string folder)
    {
        try
        {
            var path = Path.Combine(folder, $".alburnum-{Guid.NewGuid():N}");
            new FileStream(
                path,
                FileMode.CreateNew,
                FileAccess.Write,
                FileShare.None,
                1,
                FileOptions.DeleteOnClose
            ).Dispose();
            return true;
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            return false;
        }
    }

    /// <summary>Makes the folder where it is missing.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="InputRefusedException">It cannot be made.</exception>
    public static void Make(string folder) =>
        FileTrouble.Refusing(folder, Expected, () => Directory.CreateDirectory(folder));

    /// <summary>Writes a file into the folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="name">Name of the file.</param>
    /// <param name="bytes">What it holds.</param>
    /// <exception cref="InputRefusedException">It cannot be written.</exception>
    public static void Write(string folder, string name, byte[] bytes) =>
        FileTrouble.Refusing(folder, Expected, () => File.WriteAllBytes(Path.Combine(folder, name), bytes));

    /// <summary>Refuses a folder that results cannot be written to.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="found">What stands in the way.</param>
    public static InputRefusedException Refused(string folder, string found) =>
        new(new InputProblem(folder, 0, "", "", found, Expected));
}
