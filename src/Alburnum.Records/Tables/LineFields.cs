using Alburnum.Facts;

namespace Alburnum.Records.Tables;

/// <summary>The fields that stand in one line of a table.</summary>
/// <param name="line">The line.</param>
internal sealed class LineFields(TableLine line) : IFields
{
    public string? Text(AskedField field) => line.Text(field.Column) is { Length: > 0 } text ? text : null;

    public void Refuse(AskedField field, string found, string expected) =>
        line.Refuse(field.Column, $"\"{found}\"", expected);
}
