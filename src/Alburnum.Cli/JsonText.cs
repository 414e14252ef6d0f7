using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Alburnum.Cli;

/// <summary>What a command prints with <c>--json</c>: indented, snake_case, numbers as numbers.</summary>
internal static class JsonText
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write<T>(T document) => JsonSerializer.Serialize(document, Options);
}
