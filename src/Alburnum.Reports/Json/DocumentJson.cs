using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Handling;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Ledger;
using Alburnum.Reports.Letters;
using Alburnum.Reports.Requirements;

namespace Alburnum.Reports.Json;

/// <summary>Documents as JSON text and back: indented, snake_case, every field written, <c>null</c> for what is not known or does not apply.</summary>
public static class DocumentJson
{
    private static readonly DocumentJsonContext Context = new(
        new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
            WriteIndented = true,
            // Read by people as well: × and ³ stay as they are. The text is never placed inside a page unescaped.
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>The document as JSON text.</summary>
    /// <typeparam name="T">A document of this project, or a list of them that a command prints.</typeparam>
    /// <exception cref="NotSupportedException">Not such a document.</exception>
    public static string Write<T>(T document) => JsonSerializer.Serialize(document, typeof(T), Context);

    /// <summary>The document that a JSON text holds.</summary>
    /// <exception cref="JsonException">The text is no such document.</exception>
    /// <exception cref="NotSupportedException">Not a document of this project.</exception>
    public static T Read<T>(string json)
        where T : class =>
        (T?)JsonSerializer.Deserialize(InTodaysNames(json), typeof(T), Context)
        ?? throw new JsonException("The document is empty.");

    // Stores hold case reports of version 1. Within a sentence the quotes would be escaped.
    private static string InTodaysNames(string json) =>
        json.Replace("\"told\":", "\"detected_by\":", StringComparison.Ordinal);
}

[JsonSerializable(typeof(AnswerDocument))]
[JsonSerializable(typeof(BoronDocument))]
[JsonSerializable(typeof(FixationDocument))]
[JsonSerializable(typeof(CaseDocument))]
[JsonSerializable(typeof(ChargeAccountDocument))]
[JsonSerializable(typeof(ChargePlanDocument))]
[JsonSerializable(typeof(CountedRetentionDocument))]
[JsonSerializable(typeof(HandlingDocument))]
[JsonSerializable(typeof(HistoryDocument))]
[JsonSerializable(typeof(IncisingDocument))]
[JsonSerializable(typeof(IReadOnlyList<ReadingDocument>))]
[JsonSerializable(typeof(IReadOnlyList<RulebookDocument>))]
[JsonSerializable(typeof(IReadOnlyList<SourceDocument>))]
[JsonSerializable(typeof(JudgeDocument))]
[JsonSerializable(typeof(LedgerDocument))]
[JsonSerializable(typeof(LettersDocument))]
[JsonSerializable(typeof(LotsDocument))]
[JsonSerializable(typeof(NameDocument))]
[JsonSerializable(typeof(PredictionDocument))]
[JsonSerializable(typeof(ReagentChoiceDocument))]
[JsonSerializable(typeof(RulebookCheckDocument))]
[JsonSerializable(typeof(RulebookComparisonDocument))]
[JsonSerializable(typeof(SampleDocument))]
[JsonSerializable(typeof(SawingDocument))]
[JsonSerializable(typeof(SchemeDocument))]
[JsonSerializable(typeof(SweepDocument))]
[JsonSerializable(typeof(UseClassDocument))]
[JsonSerializable(typeof(VariablesDocument))]
[JsonSerializable(typeof(WorksheetDocument))]
internal sealed partial class DocumentJsonContext : JsonSerializerContext;
