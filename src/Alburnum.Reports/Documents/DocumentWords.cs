using System.Text.Json;
using System.Text.Json.Serialization;
using Alburnum.Cases;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Measures;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Documents;

/// <summary>The words that stand for single values in the documents of cases and readings.</summary>
public static class DocumentWords
{
    /// <summary>"photograph" or "ruler".</summary>
    public static string InWords(this EvidenceKind evidence) =>
        evidence switch
        {
            EvidenceKind.Photograph => "photograph",
            EvidenceKind.Ruler => "ruler",
            _ => throw new ArgumentOutOfRangeException(nameof(evidence), evidence, "Not a kind of evidence."),
        };

    /// <summary>"rectangle", "square", "round", "half-round", "quartered" or "core".</summary>
    public static string InWords(this SectionShape shape) =>
        shape switch
        {
            SectionShape.Rectangle => "rectangle",
            SectionShape.Round => "round",
            SectionShape.HalfRound => "half-round",
            SectionShape.Quartered => "quartered",
            SectionShape.CoreStrip => "core",
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Not a shape."),
        };

    /// <summary>How the heartwood was found, in a word or two.</summary>
    public static string InWords(this HeartwoodSource source) =>
        source switch
        {
            HeartwoodSource.Shown => Wording.English.Say("reading.heartwood.source.shown"),
            HeartwoodSource.Reagent => Wording.English.Say("reading.heartwood.source.reagent"),
            HeartwoodSource.Colour => Wording.English.Say("reading.heartwood.source.colour"),
            HeartwoodSource.Unknown => Wording.English.Say("reading.heartwood.source.unknown"),
            _ => throw new ArgumentOutOfRangeException(nameof(source), source, "Nothing known of heartwood."),
        };

    /// <summary>How good a reading's photograph is; of a reading without one, that it was made with a ruler.</summary>
    public static string Quality(QualityGrade? grade) =>
        grade is { } seen ? ReadingWords.Grade(seen) : ReadingWords.WithRuler;

    /// <summary>"yes", "no" or, for null, "not known".</summary>
    public static string YesNo(bool? answer) =>
        answer switch
        {
            true => "yes",
            false => "no",
            null => "not known",
        };
}

/// <summary>Kinds of evidence as words.</summary>
public sealed class EvidenceConverter() : WordConverter<EvidenceKind>(DocumentWords.InWords);

/// <summary>Shapes of sections as words.</summary>
public sealed class ShapeConverter() : WordConverter<SectionShape>(DocumentWords.InWords);

/// <summary>How heartwood was found, as words.</summary>
public sealed class HeartwoodSourceConverter() : WordConverter<HeartwoodSource>(DocumentWords.InWords);

/// <summary>Types of evaluation as their letter.</summary>
public sealed class EvaluationConverter() : WordConverter<EvaluationType>(type => type.ToString());

/// <summary>A value that may not be known, as a word that says so.</summary>
/// <param name="inWords">The words of each value and of null.</param>
/// <param name="values">The values, null among them.</param>
public abstract class KnownOrNotConverter<T>(Func<T?, string> inWords, IReadOnlyList<T?> values) : JsonConverter<T?>
    where T : struct
{
    /// <inheritdoc/>
    public override bool HandleNull => true;

    /// <inheritdoc/>
    public override T? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.GetString();
        foreach (var value in values)
            if (inWords(value) == text)
                return value;
        throw new JsonException($"\"{text}\" is not one of {string.Join(", ", values.Select(inWords))}.");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T? value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(inWords(value));
    }
}

/// <summary>"yes", "no" and "not known".</summary>
public sealed class YesNoConverter() : KnownOrNotConverter<bool>(DocumentWords.YesNo, [true, false, null]);

/// <summary>Quality of the photograph, or that there is none.</summary>
public sealed class QualityConverter()
    : KnownOrNotConverter<QualityGrade>(DocumentWords.Quality, [.. Enum.GetValues<QualityGrade>(), null]);
