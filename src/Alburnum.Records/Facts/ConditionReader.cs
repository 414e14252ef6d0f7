using Alburnum.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads the <c>when</c> of a rulebook row.</summary>
internal sealed class ConditionReader(
    ComponentCatalogue components,
    IReadOnlyList<SpeciesGroup> groups,
    IReadOnlyList<int> lives,
    IReadOnlyList<Insect> insects
)
{
    private static readonly IReadOnlyList<string> YesNo = ["yes", "no"];

    public IReadOnlyList<Condition> Read(FactRow row)
    {
        var when = row.OptionalRow("when");
        if (when is null)
            return [];
        var conditions = new List<Condition>();
        foreach (var field in FieldWords.All)
        {
            if (when.Has(field.Key()))
                conditions.Add(field.IsNumeric() ? Range(when, field) : Words(when, field));
        }
        return conditions;
    }

    private OneOf Words(FactRow when, Field field)
    {
        var words = new List<string>();
        foreach (var word in when.Texts(field.Key()))
        {
            if (field == Field.UseClass && UseClassWords.Parse(word) is { Count: > 0 } classes)
                words.AddRange(classes.Select(each => each.Label()));
            else if (field == Field.Component && components.Named(word) is { } component)
                words.Add(component.Name);
            else if (Allowed(field) is { } allowed && !allowed.Contains(word, StringComparer.Ordinal))
                when.Refuse(field.Key(), word, string.Join(", ", allowed));
            else
                words.Add(word);
        }
        return new OneOf(field, words);
    }

    // The words that a field knows; null where any word will do.
    private IReadOnlyList<string>? Allowed(Field field) =>
        field switch
        {
            Field.Form => ["sawn", "round"],
            Field.UseClass => ["1", "2", "3", "3.1", "3.2", "4", "5"],
            Field.ExposedHeartwood or Field.Incised or Field.Coated or Field.GroundContact => YesNo,
            Field.SpeciesGroup => [.. groups.Select(group => group.Name)],
            Field.Component => ["a component of components.yaml"],
            Field.Insects => [.. insects.Select(insect => insect.Name)],
            _ => null,
        };

    private Between Range(FactRow when, Field field)
    {
        var key = field.Key();
        var allowed = field switch
        {
            Field.Life => Ranges.LifeYears,
            Field.SapwoodTreatability or Field.HeartwoodTreatability => NumberRange.Within(1, 4, ""),
            Field.Durability => NumberRange.Within(1, 5, ""),
            Field.Moisture => Ranges.MoisturePercent,
            _ => Ranges.SectionMm,
        };
        if (!when.IsText(key))
        {
            var range = when.OptionalRow(key);
            if (range is not null)
                return Ends(range, field, allowed);
        }
        var value = when.Number(key, allowed);
        if (field == Field.Life && lives.Count > 0 && !lives.Contains((int)value))
            when.Refuse(key, when.OptionalText(key), $"one of the lives of this rulebook, {string.Join(", ", lives)}");
        return new Between(field, value, true, value, true);
    }

    private static Between Ends(FactRow range, Field field, NumberRange allowed)
    {
        if (range.Has("from") && range.Has("above"))
            range.Refuse("above", "a second lower end", "either from or above");
        if (range.Has("upTo") && range.Has("below"))
            range.Refuse("below", "a second upper end", "either upTo or below");
        double? End(string end) => range.Has(end) ? range.Number(end, allowed) : null;
        var (from, above, upTo, below) = (End("from"), End("above"), End("upTo"), End("below"));
        var between = new Between(
            field,
            from ?? above ?? double.NegativeInfinity,
            above is null,
            upTo ?? below ?? double.PositiveInfinity,
            below is null
        );
        if (between.Low > between.High)
            range.Refuse(
                upTo is null ? "below" : "upTo",
                "an upper end below the lower end",
                "a range that is not empty"
            );
        return between;
    }
}
