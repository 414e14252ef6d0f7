using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Alburnum.Reports.Requirements;

/// <summary>Answers as JSON text; the form is described in docs/json/requirement.md.</summary>
public static class AnswerJson
{
    private static readonly AnswerJsonContext Context = new(
        new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
            WriteIndented = true,
            // Read by people as well: × and ³ stay as they are. The text is never placed inside a page unescaped.
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>The document as indented JSON with snake_case names.</summary>
    public static string Write(AnswerDocument document) => JsonSerializer.Serialize(document, Context.AnswerDocument);

    /// <summary>The document that a JSON text holds.</summary>
    /// <exception cref="JsonException">The text is not an answer.</exception>
    public static AnswerDocument Read(string json) =>
        JsonSerializer.Deserialize(json, Context.AnswerDocument) ?? throw new JsonException("The document is empty.");
}

[JsonSerializable(typeof(AnswerDocument))]
internal sealed partial class AnswerJsonContext : JsonSerializerContext;
