using System.Text.Json;
using System.Text.Json.Serialization;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;

namespace Alburnum.Reports.Acceptance;

/// <summary>Writes a value of an enumeration as the words that people read, and reads it from them.</summary>
/// <param name="inWords">The words of each value.</param>
public abstract class WordConverter<T>(Func<T, string> inWords) : JsonConverter<T>
    where T : struct, Enum
{
    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.GetString();
        foreach (var value in Enum.GetValues<T>())
            if (inWords(value) == text)
                return value;
        throw new JsonException($"\"{text}\" is not one of {string.Join(", ", Enum.GetValues<T>().Select(inWords))}.");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(inWords(value));
    }
}

/// <summary>Verdicts as words.</summary>
public sealed class VerdictConverter() : WordConverter<Verdict>(VerdictWords.InWords);

/// <summary>Populations as words.</summary>
public sealed class PopulationConverter() : WordConverter<Population>(PopulationWords.InWords);

/// <summary>Inspection levels as written.</summary>
public sealed class LevelConverter() : WordConverter<InspectionLevel>(InspectionWords.InWords);

/// <summary>Severities as words.</summary>
public sealed class SeverityConverter() : WordConverter<Severity>(InspectionWords.InWords);

/// <summary>Standings as words.</summary>
public sealed class StandingConverter() : WordConverter<Standing>(StandingWords.InWords);

/// <summary>What became of lots, as words.</summary>
public sealed class LotOutcomeConverter() : WordConverter<LotOutcome>(LotWords.InWords);

/// <summary>The next inspection as words.</summary>
public sealed class NextInspectionConverter() : WordConverter<NextInspection>(LotWords.InWords);
