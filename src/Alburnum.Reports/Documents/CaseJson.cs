using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Alburnum.Reports.Documents;

/// <summary>Case documents as JSON text and back.</summary>
public static class CaseJson
{
    private static readonly CaseJsonContext Context = new(
        new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
            WriteIndented = true,
            // Read by people as well: × and ³ stay as they are. The text is never placed inside a page unescaped.
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>The document as indented JSON with snake_case names.</summary>
    public static string Write(CaseDocument document) => JsonSerializer.Serialize(document, Context.CaseDocument);

    /// <summary>The document that a JSON text holds.</summary>
    /// <exception cref="JsonException">The text is not a case document.</exception>
    public static CaseDocument Read(string json) =>
        JsonSerializer.Deserialize(json, Context.CaseDocument) ?? throw new JsonException("The document is empty.");
}

[JsonSerializable(typeof(CaseDocument))]
internal sealed partial class CaseJsonContext : JsonSerializerContext;
