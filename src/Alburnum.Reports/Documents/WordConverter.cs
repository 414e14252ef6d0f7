using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Alburnum.Acceptance;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Requirements;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Documents;

/// <summary>
/// Writes a value of an enumeration as a plain word or two, and reads it from them. They are part of the format: the same whatever language people are spoken to in.
/// </summary>
/// <param name="name">The name of each value.</param>
public abstract class WordConverter<T>(Func<T, string> name) : JsonConverter<T>
    where T : struct, Enum
{
    /// <summary>Values under their own names: "not covered" for NotCovered.</summary>
    protected WordConverter()
        : this(value => DocumentNames.Of(value)) { }

    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.GetString();
        foreach (var value in Enum.GetValues<T>())
            if (name(value) == text)
                return value;
        throw new JsonException($"\"{text}\" is not one of {string.Join(", ", Enum.GetValues<T>().Select(name))}.");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(name(value));
    }
}

/// <summary>What values are called in documents.</summary>
internal static class DocumentNames
{
    /// <summary>normal, log-normal.</summary>
    public static string Of(Population population) => population == Population.LogNormal ? "log-normal" : "normal";

    /// <summary>met, not met, undecided.</summary>
    public static string OfRule(Verdict verdict) =>
        verdict switch
        {
            Verdict.Conforms => "met",
            Verdict.DoesNotConform => "not met",
            _ => Of(verdict),
        };

    /// <summary>A value's own name, in small letters with a space between words.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum
    {
        StringBuilder name = new();
        foreach (var letter in value.ToString())
        {
            if (char.IsUpper(letter) && name.Length > 0)
                name.Append(' ');
            name.Append(char.ToLowerInvariant(letter));
        }
        return name.ToString();
    }
}

/// <summary>conforms, does not conform, undecided.</summary>
public sealed class VerdictConverter() : WordConverter<Verdict>(VerdictKeys.Key);

/// <summary>met, not met, undecided. Reports kept before version 3 say it of a rule as of a piece: conforms, does not conform.</summary>
public sealed class RuleConverter() : WordConverter<Verdict>(DocumentNames.OfRule)
{
    /// <inheritdoc/>
    public override Verdict Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.GetString();
        foreach (var verdict in Enum.GetValues<Verdict>())
            if (verdict.Key() == text)
                return verdict;
        return base.Read(ref reader, typeToConvert, options);
    }
}

/// <summary>code, contract, neither, not comparable.</summary>
public sealed class StricterDemandConverter : WordConverter<StricterDemand>;

/// <summary>must pass, aql, asked.</summary>
public sealed class WantedByConverter : WordConverter<WantedBy>;

/// <summary>published, common practice, from memory.</summary>
public sealed class StandingConverter() : WordConverter<Standing>(StandingKeys.Key);

/// <summary>normal, log-normal.</summary>
public sealed class PopulationConverter() : WordConverter<Population>(DocumentNames.Of);

/// <summary>depth, retention, uptake, strength.</summary>
public sealed class MeasureKindConverter : WordConverter<MeasureKind>;

/// <summary>pieces, cores, mean depth, least depth, uptake, zone.</summary>
public sealed class SweepMeasureConverter : WordConverter<SweepMeasure>;

/// <summary>applies, gives way, open, fails.</summary>
public sealed class TraceOutcomeConverter : WordConverter<TraceOutcome>;

/// <summary>S-1 to S-4, I, II, III.</summary>
public sealed class LevelConverter() : WordConverter<InspectionLevel>(InspectionKeys.Key);

/// <summary>normal, tightened, reduced.</summary>
public sealed class SeverityConverter() : WordConverter<Severity>(InspectionKeys.Key);

/// <summary>accepted, accepted in the gap, not accepted.</summary>
public sealed class LotOutcomeConverter()
    : WordConverter<LotOutcome>(value =>
        value switch
        {
            LotOutcome.AcceptedInGap => "accepted in the gap",
            LotOutcome.Rejected => "not accepted",
            _ => DocumentNames.Of(value),
        }
    );

/// <summary>normal, tightened, reduced, stopped.</summary>
public sealed class NextInspectionConverter : WordConverter<NextInspection>;

/// <summary>species, glued, board, modified, mixture.</summary>
public sealed class TimberKindConverter : WordConverter<Timber.TimberKind>;

/// <summary>sawn, round.</summary>
public sealed class FormConverter : WordConverter<TimberForm>;

/// <summary>required, recommended, not required, not needed, not permitted, open, not covered.</summary>
public sealed class AnswerOutcomeConverter : WordConverter<AnswerOutcome>;

/// <summary>use class, service life, penetration, retention, moisture, conditions.</summary>
public sealed class SubjectConverter()
    : WordConverter<Subject>(value =>
        value switch
        {
            Subject.Life => "service life",
            Subject.Advice => "conditions",
            _ => DocumentNames.Of(value),
        }
    );

/// <summary>What is known of a piece: component, form, use class and so on.</summary>
public sealed class FieldConverter()
    : WordConverter<Field>(value =>
        value switch
        {
            Field.Life => "service life",
            _ => DocumentNames.Of(value),
        }
    );

/// <summary>Several of them.</summary>
public sealed class FieldsConverter : JsonConverter<IReadOnlyList<Field>>
{
    private static readonly FieldConverter Each = new();

    /// <inheritdoc/>
    public override IReadOnlyList<Field> Read(
        ref Utf8JsonReader reader,
        Type typeToConvert,
        JsonSerializerOptions options
    )
    {
        List<Field> fields = [];
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
            fields.Add(Each.Read(ref reader, typeof(Field), options));
        return fields;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, IReadOnlyList<Field> value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartArray();
        foreach (var field in value)
            Each.Write(writer, field, options);
        writer.WriteEndArray();
    }
}

/// <summary>sapwood, exposed heartwood, lateral.</summary>
public sealed class WoodZoneConverter : WordConverter<WoodZone>;

/// <summary>incise, dry, round timber, other species, durable heartwood, shorter life, lower use class, codes class.</summary>
public sealed class RouteKindConverter()
    : WordConverter<RouteKind>(value => value == RouteKind.UseRound ? "round timber" : DocumentNames.Of(value));

/// <summary>usually reached, not known whether reached, usually not reached.</summary>
public sealed class ReachConverter()
    : WordConverter<ReachVerdict>(value =>
        value switch
        {
            ReachVerdict.Likely => "usually reached",
            ReachVerdict.NotKnown => "not known whether reached",
            ReachVerdict.Unlikely => "usually not reached",
            _ => DocumentNames.Of(value),
        }
    );

/// <summary>contradiction, asks for less, unreachable row, gap, not covered, overlap, not checked.</summary>
public sealed class FindingKindConverter()
    : WordConverter<RulebookFindingKind>(value =>
        value switch
        {
            RulebookFindingKind.AsksLess => "asks for less",
            RulebookFindingKind.Unreachable => "unreachable row",
            RulebookFindingKind.Silent => "not covered",
            RulebookFindingKind.TooLarge => "not checked",
            _ => DocumentNames.Of(value),
        }
    );
