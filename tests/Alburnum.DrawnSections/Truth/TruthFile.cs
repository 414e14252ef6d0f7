using System.Text.Json;
using System.Text.Json.Serialization;

namespace Alburnum.DrawnSections;

/// <summary>The truth beside a photograph, as JSON.</summary>
public static class TruthFile
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        NewLine = "\n",
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower), new Rounded(), new Pair() },
    };

    public static string Write<T>(T truth) => JsonSerializer.Serialize(truth, Layout) + "\n";

    public static T Read<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, Layout) ?? throw new JsonException("The file holds no truth.");

    /// <summary>Thousandths are finer than anything here.</summary>
    private sealed class Rounded : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) =>
            reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(Math.Round(value, 3));
    }

    /// <summary>A point is [x, y].</summary>
    private sealed class Pair : JsonConverter<Point>
    {
        public override Point Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options)
        {
            var numbers =
                JsonSerializer.Deserialize<double[]>(ref reader, options)
                ?? throw new JsonException("A point is [x, y].");
            return numbers is [var x, var y] ? new(x, y) : throw new JsonException("A point is [x, y].");
        }

        public override void Write(Utf8JsonWriter writer, Point value, JsonSerializerOptions options)
        {
            writer.WriteStartArray();
            writer.WriteNumberValue(Math.Round(value.X, 3));
            writer.WriteNumberValue(Math.Round(value.Y, 3));
            writer.WriteEndArray();
        }
    }
}
