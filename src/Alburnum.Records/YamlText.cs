namespace Alburnum.Records;

/// <summary>Text as YAML writes it.</summary>
internal static class YamlText
{
    /// <summary>A text in quotes, whatever stands in it.</summary>
    /// <param name="text">One line.</param>
    public static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
