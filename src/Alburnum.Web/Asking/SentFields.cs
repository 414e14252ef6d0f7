using Alburnum.Facts;

namespace Alburnum.Web.Pages;

/// <summary>What a form sent in the address as fields; an empty one was left out.</summary>
/// <param name="said">What was sent, by the fields' keys.</param>
/// <param name="problems">Gains what is wrong.</param>
internal sealed class QueryFields(IReadOnlyDictionary<string, string?> said, List<InputProblem> problems) : IFields
{
    public string? Text(AskedField field) =>
        said.GetValueOrDefault(field.Key) is { } text && text.Trim() is { Length: > 0 } given ? given : null;

    public void Refuse(AskedField field, string found, string expected) =>
        problems.Add(new InputProblem("address", 0, "", field.Key, $"\"{found}\"", expected));
}
