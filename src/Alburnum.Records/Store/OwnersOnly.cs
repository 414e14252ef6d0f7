namespace Alburnum.Records.Store;

/// <summary>Files and folders that only their owner may read: cases are confidential. Windows keeps a user's files so by itself.</summary>
internal static class OwnersOnly
{
    /// <summary>Opens a new file to be written.</summary>
    public static FileStream New(string path)
    {
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
            Share = FileShare.None,
        };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new(path, options);
    }

    /// <summary>Makes an empty file, unless another program did so meanwhile.</summary>
    public static void MakeEmpty(string path)
    {
        try
        {
            New(path).Dispose();
        }
        catch (IOException) when (File.Exists(path))
        {
            // It is there: that is all that was wanted.
        }
    }

    /// <summary>Makes a folder where it is missing.</summary>
    public static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(path);
        else
            Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    /// <summary>Whether others than its owner may read a file.</summary>
    public static bool IsOpenToOthers(string path) =>
        !OperatingSystem.IsWindows()
        && (File.GetUnixFileMode(path) & (UnixFileMode.GroupRead | UnixFileMode.OtherRead)) != UnixFileMode.None;
}
