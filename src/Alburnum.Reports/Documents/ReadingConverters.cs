using System.Text.Json;
using System.Text.Json.Serialization;
using Alburnum.Cases;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Measures;

namespace Alburnum.Reports.Documents;

/// <summary>photograph, ruler.</summary>
public sealed class EvidenceConverter : WordConverter<EvidenceKind>;

/// <summary>rectangle, square, round, half-round, quartered, core.</summary>
public sealed class ShapeConverter()
    : WordConverter<SectionShape>(value =>
        value switch
        {
            SectionShape.HalfRound => "half-round",
            SectionShape.CoreStrip => "core",
            _ => DocumentNames.Of(value),
        }
    );

/// <summary>given, reagent, colour, not determined.</summary>
public sealed class HeartwoodSourceConverter()
    : WordConverter<HeartwoodSource>(value =>
        value switch
        {
            HeartwoodSource.Shown => "given",
            HeartwoodSource.Unknown => "not determined",
            _ => DocumentNames.Of(value),
        }
    );

/// <summary>outline, flattening, quality, zones, front.</summary>
public sealed class ReadingStageConverter : WordConverter<ReadingStage>;

/// <summary>nominal size, known length, measured size.</summary>
public sealed class ScaleBasisConverter : WordConverter<ScaleBasis>;

/// <summary>Types of evaluation as their letter.</summary>
public sealed class EvaluationConverter() : WordConverter<EvaluationType>(type => type.ToString());

/// <summary>A value that may not be known, as a word that says so.</summary>
/// <param name="name">The name of each value and of null.</param>
/// <param name="values">The values, null among them.</param>
public abstract class KnownOrNotConverter<T>(Func<T?, string> name, IReadOnlyList<T?> values) : JsonConverter<T?>
    where T : struct
{
    /// <inheritdoc/>
    public override bool HandleNull => true;

    /// <inheritdoc/>
    public override T? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.GetString();
        foreach (var value in values)
            if (name(value) == text)
                return value;
        throw new JsonException($"\"{text}\" is not one of {string.Join(", ", values.Select(name))}.");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T? value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(name(value));
    }
}

/// <summary>yes, no, not known.</summary>
public sealed class YesNoConverter()
    : KnownOrNotConverter<bool>(
        value =>
            value switch
            {
                true => "yes",
                false => "no",
                null => "not known",
            },
        [true, false, null]
    );

/// <summary>good, fair, poor, unusable; or that it was read with a ruler.</summary>
public sealed class QualityConverter()
    : KnownOrNotConverter<QualityGrade>(
        value => value is { } grade ? DocumentNames.Of(grade) : "read with a ruler",
        [.. Enum.GetValues<QualityGrade>(), null]
    );
