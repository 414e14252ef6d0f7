namespace Alburnum.Reports.Requirements;

/// <summary>Breaks text between words.</summary>
internal static class Wrap
{
    /// <summary>The lines of a text; one empty line for an empty text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="letters">Letters that a line holds; a longer word stands on a line of its own.</param>
    public static IEnumerable<string> Lines(string text, int letters)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > letters)
            {
                yield return line;
                line = "";
            }
            line += line.Length == 0 ? word : " " + word;
        }
        yield return line;
    }
}
