using Alburnum.Records;

namespace Alburnum.Cli;

/// <summary>Writes one text file: whole, or not at all.</summary>
internal static class TextFile
{
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
