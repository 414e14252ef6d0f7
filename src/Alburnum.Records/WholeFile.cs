using System.Text;

namespace Alburnum.Records;

/// <summary>Writes one file: whole, or not at all.</summary>
public static class WholeFile
{
    private const string Expected = "a file that can be written";

    /// <summary>Refuses a path that no file can be written to, before any work is done. Nothing is made.</summary>
    /// <param name="path">Path of the file.</param>
    /// <exception cref="InputRefusedException">A folder stands there, or its own folder is missing.</exception>
    public static void Examine(string path)
    {
        if (Directory.Exists(path))
            throw Refused(path, "a folder");
        if (!Directory.Exists(Path.GetDirectoryName(Path.GetFullPath(path))))
            throw Refused(path, "a folder that is not there");
    }

    /// <summary>Writes it.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="text">What it says.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="InputRefusedException">It cannot be written.</exception>
    public static Task WriteAsync(string path, string text, CancellationToken stop) =>
        WriteAsync(path, Encoding.UTF8.GetBytes(text), stop);

    /// <summary>Writes it.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="bytes">What it holds.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="InputRefusedException">It cannot be written.</exception>
    public static async Task WriteAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken stop)
    {
        var part = path + ".part";
        try
        {
            await File.WriteAllBytesAsync(part, bytes, stop);
            File.Move(part, path, overwrite: true);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(path, FileTrouble.InWords(broken));
        }
        finally
        {
            if (File.Exists(part))
                File.Delete(part);
        }
    }

    private static InputRefusedException Refused(string path, string found) =>
        new(new InputProblem(path, 0, "", "", found, Expected));
}
