using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Alburnum.Reports.Documents;

/// <summary>Readings of photographs as JSON text: one array, in the order of the photographs.</summary>
public static class ReadingJson
{
    private static readonly ReadingJsonContext Context = new(
        new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
            WriteIndented = true,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>The readings as indented JSON with snake_case names.</summary>
    public static string Write(IReadOnlyList<ReadingDocument> readings) =>
        JsonSerializer.Serialize(readings, Context.IReadOnlyListReadingDocument);

    /// <summary>The readings that a JSON text holds.</summary>
    /// <exception cref="JsonException">The text is not an array of readings.</exception>
    public static IReadOnlyList<ReadingDocument> Read(string json) =>
        JsonSerializer.Deserialize(json, Context.IReadOnlyListReadingDocument)
        ?? throw new JsonException("The array is missing.");
}

[JsonSerializable(typeof(IReadOnlyList<ReadingDocument>))]
internal sealed partial class ReadingJsonContext : JsonSerializerContext;
