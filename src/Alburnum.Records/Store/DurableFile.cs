using System.Runtime.InteropServices;

namespace Alburnum.Records.Store;

/// <summary>Files that are whole under their name or not there at all, also after a power cut.</summary>
internal static class DurableFile
{
    /// <summary>Writes a file under a name of its own beside its place, flushes it to the disk, and only then gives it its name.</summary>
    /// <param name="path">The file; its folder is there.</param>
    /// <param name="bytes">What it is to hold.</param>
    /// <param name="stop">Signalled to give up; no file is left then.</param>
    public static async Task WriteAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken stop)
    {
        var part = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            await using (var stream = OwnersOnly.New(part))
            {
                await stream.WriteAsync(bytes, stop);
                stream.Flush(flushToDisk: true);
            }
            Name(part, path);
        }
        finally
        {
            File.Delete(part);
        }
    }

    /// <summary>The same, unless a file of that name is there already, which then stays as it is.</summary>
    /// <inheritdoc cref="WriteAsync"/>
    public static async Task WriteFirstAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken stop)
    {
        var whole = $"{path}.{Guid.NewGuid():N}.part";
        await WriteAsync(whole, bytes, stop);
        try
        {
            File.Move(whole, path, overwrite: false);
            FlushFolder(Path.GetDirectoryName(path)!);
        }
        catch (IOException) when (File.Exists(path))
        {
            // Somebody was first.
        }
        finally
        {
            File.Delete(whole);
        }
    }

    /// <summary>Gives a finished file its name.</summary>
    public static void Name(string part, string path)
    {
        File.Move(part, path, overwrite: true);
        FlushFolder(Path.GetDirectoryName(path)!);
    }

    /// <summary>Flushes a folder, so that the names in it last. Windows keeps names in a journal of its own and needs no asking.</summary>
    public static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows() || Open(folder, 0) is not (>= 0 and var handle))
            return;
        // Some file systems refuse to flush a folder; there is nothing more to be done on those.
        _ = Flush(handle);
        _ = Close(handle);
    }

    // The runtime opens no folders; these are the calls of POSIX.
    [DllImport("libc", EntryPoint = "open")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Flush(int handle);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
