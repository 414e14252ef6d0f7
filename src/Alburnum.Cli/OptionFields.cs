using Alburnum.Facts;

namespace Alburnum.Cli;

/// <summary>The options of a command as fields.</summary>
/// <param name="options">What was typed behind each option; null where it was not.</param>
/// <param name="problems">Gains what is wrong.</param>
internal sealed class OptionFields(IReadOnlyDictionary<string, string?> options, List<InputProblem> problems) : IFields
{
    public string? Text(AskedField field) => options[field.Option];

    public void Refuse(AskedField field, string found, string expected) =>
        problems.Add(new InputProblem("command line", 0, "", field.Option, $"\"{found}\"", expected));
}
