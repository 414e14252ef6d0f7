namespace Alburnum.Records;

/// <summary>Writes one text file: whole, or not at all.</summary>
public static class TextFile
{
    /// <summary>Writes it.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="text">What it says.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="InputRefusedException">It cannot be written.</exception>
    public static async Task WriteAsync(string path, string text, CancellationToken stop)
    {
        var part = path + ".part";
        try
        {
            await File.WriteAllTextAsync(part, text, stop);
            File.Move(part, path, overwrite: true);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw new InputRefusedException(
                new InputProblem(path, 0, "", "", FileTrouble.InWords(broken), "a file that can be written")
            );
        }
        finally
        {
            if (File.Exists(part))
                File.Delete(part);
        }
    }
}
