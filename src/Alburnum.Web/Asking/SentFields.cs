using Alburnum.Facts;

namespace Alburnum.Web.Asking;

/// <summary>What was sent in an address, a form or a JSON object as fields; an empty one was left out.</summary>
/// <param name="said">What was sent, by the fields' keys.</param>
/// <param name="problems">Gains what is wrong.</param>
internal sealed class SentFields(IReadOnlyDictionary<string, string?> said, List<InputProblem> problems) : IFields
{
    /// <summary>Where such a field stands, for messages.</summary>
    public const string Place = "request";

    public string? Text(AskedField field) =>
        said.GetValueOrDefault(field.Key) is { } text && text.Trim() is { Length: > 0 } given ? given : null;

    public void Refuse(AskedField field, string found, string expected) =>
        problems.Add(Problem(field.Key, $"\"{found}\"", expected));

    /// <summary>Something wrong with a field that was sent.</summary>
    /// <param name="field">Its key; empty where all that was sent is meant.</param>
    /// <param name="found">What stands there.</param>
    /// <param name="expected">What should stand there.</param>
    public static InputProblem Problem(string field, string found, string expected) =>
        new(Place, 0, "", field, found, expected);
}
