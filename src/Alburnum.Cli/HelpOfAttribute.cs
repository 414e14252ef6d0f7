using System.ComponentModel;
using Alburnum.Facts;

namespace Alburnum.Cli;

/// <summary>The help of an option that is a field: it stands with the field, not beside the option.</summary>
/// <param name="fields">The class with the field.</param>
/// <param name="name">Name of the property that is the field.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class HelpOfAttribute(Type fields, string name) : DescriptionAttribute
{
    /// <summary>The field.</summary>
    public AskedField Field => (AskedField)fields.GetProperty(name)!.GetValue(null)!;

    /// <summary>What the command has to add, in place of what stays open where the option is left out; a default is said all the same. Null where it adds nothing.</summary>
    public string? Note { get; init; }

    /// <inheritdoc/>
    public override string Description =>
        string.Join(
            "; ",
            new[]
            {
                Field.InOneLine,
                Note ?? "",
                Note is null || Field.Default.Length > 0 ? Field.LeftOutInWords : "",
            }.Where(part => part.Length > 0)
        );
}
