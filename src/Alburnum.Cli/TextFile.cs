namespace Alburnum.Cli;

/// <summary>Writes a file whole or not at all.</summary>
internal static class TextFile
{
    public static void Write(string path, string option, string text)
    {
        var part = path + ".part";
        try
        {
            File.WriteAllText(part, text);
            File.Move(part, path, overwrite: true);
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            throw Options.Refused(option, broken.Message, "a place that can be written to");
        }
    }
}
