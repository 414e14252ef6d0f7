using System.Reflection;
using Alburnum.Facts;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>The options of a command as fields: each that has the help of a field is that field.</summary>
/// <param name="settings">What was typed.</param>
/// <param name="problems">Gains what is wrong.</param>
internal sealed class OptionFields(CommandSettings settings, List<InputProblem> problems) : IFields
{
    private readonly Dictionary<string, string?> _options = settings
        .GetType()
        .GetProperties()
        .Where(property => property.IsDefined(typeof(HelpOfAttribute)))
        .ToDictionary(
            property => property.GetCustomAttribute<HelpOfAttribute>()!.Field.Option,
            property => property.GetValue(settings) as string,
            StringComparer.Ordinal
        );

    private readonly HashSet<string> _empty = new(StringComparer.Ordinal);

    public string? Text(AskedField field)
    {
        if (_options[field.Option] is not { } text || !string.IsNullOrWhiteSpace(text))
            return _options[field.Option];
        // Asked for more than once, refused once.
        if (_empty.Add(field.Option))
            Refuse(field, text, field.Expected);
        return null;
    }

    public void Refuse(AskedField field, string found, string expected) =>
        problems.Add(new InputProblem("command line", 0, "", field.Option, $"\"{found}\"", expected));
}
