using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>The fields of a YAML row.</summary>
/// <param name="row">The row.</param>
/// <param name="mustBeThere">Fields that may not be left out.</param>
internal sealed class RowFields(FactRow row, params IReadOnlyList<AskedField> mustBeThere) : IFields
{
    private readonly Dictionary<AskedField, string?> _read = [];

    public string? Text(AskedField field)
    {
        // Read once: an empty text would be refused again each time.
        if (_read.TryGetValue(field, out var known))
            return known;
        var text = row.Has(field.Key) ? row.Text(field.Key) : "";
        if (mustBeThere.Contains(field) && !row.Has(field.Key))
            row.Refuse(field.Key, "nothing", field.Range is null ? "a text" : field.Expected);
        return _read[field] = text.Length > 0 ? text : null;
    }

    public void Refuse(AskedField field, string found, string expected) => row.Refuse(field.Key, found, expected);
}
