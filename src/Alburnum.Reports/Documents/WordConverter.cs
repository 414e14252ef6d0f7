using System.Text.Json;
using System.Text.Json.Serialization;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using Alburnum.Requirements;

namespace Alburnum.Reports.Documents;

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

/// <summary>Standings as words.</summary>
public sealed class StandingConverter() : WordConverter<Standing>(StandingWords.InWords);

/// <summary>Populations as words.</summary>
public sealed class PopulationConverter() : WordConverter<Population>(PopulationWords.InWords);

/// <summary>Inspection levels as written.</summary>
public sealed class LevelConverter() : WordConverter<InspectionLevel>(InspectionWords.InWords);

/// <summary>Severities as words.</summary>
public sealed class SeverityConverter() : WordConverter<Severity>(InspectionWords.InWords);

/// <summary>What became of lots, as words.</summary>
public sealed class LotOutcomeConverter() : WordConverter<LotOutcome>(LotWords.English.Say);

/// <summary>The next inspection as words.</summary>
public sealed class NextInspectionConverter() : WordConverter<NextInspection>(LotWords.English.Say);

/// <summary>Sawn or round, as words.</summary>
public sealed class FormConverter() : WordConverter<TimberForm>(RequirementWords.English.Say);

/// <summary>Outcomes of an answer as words.</summary>
public sealed class AnswerOutcomeConverter() : WordConverter<AnswerOutcome>(RequirementWords.English.Answers.Say);

/// <summary>Subjects of rows as words.</summary>
public sealed class SubjectConverter() : WordConverter<Subject>(RequirementWords.English.Rows.Say);

/// <summary>Fields of an enquiry as words.</summary>
public sealed class FieldConverter() : WordConverter<Field>(RequirementWords.English.Rows.Say);

/// <summary>Kinds of routes as words.</summary>
public sealed class RouteKindConverter() : WordConverter<RouteKind>(RequirementWords.English.Routes.Say);

/// <summary>Whether a demand is usually met, as words.</summary>
public sealed class ReachConverter() : WordConverter<ReachVerdict>(RequirementWords.English.Routes.Say);

/// <summary>Kinds of findings as words.</summary>
public sealed class FindingKindConverter() : WordConverter<RulebookFindingKind>(RequirementWords.English.Checks.Say);
