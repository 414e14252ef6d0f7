using System.Text.Json;
using System.Text.Json.Serialization;

namespace Alburnum.Reports.Documents;

/// <summary>Writes a value with its standard uncertainty as <c>value</c> and <c>standard_uncertainty</c>, and reads it from them.</summary>
public sealed class EstimateConverter : JsonConverter<Estimate>
{
    private const string Value = "value";
    private const string StandardUncertainty = "standard_uncertainty";

    /// <inheritdoc/>
    public override Estimate Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var json = JsonDocument.ParseValue(ref reader);
        return new(Number(json, Value), Number(json, StandardUncertainty));
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Estimate value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartObject();
        writer.WriteNumber(Value, value.Value);
        writer.WriteNumber(StandardUncertainty, value.StandardUncertainty);
        writer.WriteEndObject();
    }

    private static double Number(JsonDocument json, string name) =>
        json.RootElement.ValueKind == JsonValueKind.Object
        && json.RootElement.TryGetProperty(name, out var number)
        && number.TryGetDouble(out var value)
            ? value
            : throw new JsonException($"A value with its uncertainty needs a number {name}.");
}
