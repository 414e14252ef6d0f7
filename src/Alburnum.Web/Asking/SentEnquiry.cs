using System.Text.Json;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Workflows.Requirements;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Alburnum.Web.Asking;

/// <summary>An enquiry as it was sent: in an address, in a form with or without a rulebook file, or as a JSON object.</summary>
/// <param name="Said">What was sent, by the fields' keys.</param>
/// <param name="Rulebook">The rulebook that is asked.</param>
/// <param name="Problems">What cannot be read as an enquiry at all.</param>
internal sealed record SentEnquiry(
    IReadOnlyDictionary<string, string?> Said,
    SentRulebook Rulebook,
    IReadOnlyList<InputProblem> Problems
)
{
    private static IEnumerable<AskedField> Fields { get; } = [.. EnquiryFields.All, EnquiryFields.Rulebook];

    /// <summary>Nothing was sent.</summary>
    public static SentEnquiry Nothing { get; } =
        new(new Dictionary<string, string?>(StringComparer.Ordinal), new(null, null), []);

    /// <summary>The enquiry of an address.</summary>
    public static SentEnquiry Of(IQueryCollection query)
    {
        var problems = new List<InputProblem>();
        var said = Texts(query, problems);
        return new(said, new(said.GetValueOrDefault(EnquiryFields.Rulebook.Key), null), problems);
    }

    /// <summary>The enquiry of a form.</summary>
    public static async Task<SentEnquiry> OfAsync(IFormCollection form, CancellationToken stop)
    {
        var problems = new List<InputProblem>();
        // Names that begin so are the page's own: its token and the form's name.
        var said = Texts(form.Where(sent => !sent.Key.StartsWith('_')), problems);
        return new(said, await SentRulebook.OfAsync(form, problems, stop), problems);
    }

    /// <summary>The enquiry of a JSON object.</summary>
    public static async Task<SentEnquiry> OfAsync(Stream json, CancellationToken stop)
    {
        var problems = new List<InputProblem>();
        var said = await JsonTextsAsync(json, problems, stop);
        return new(said, new(said.GetValueOrDefault(EnquiryFields.Rulebook.Key), null), problems);
    }

    /// <summary>True where nothing was sent.</summary>
    public bool IsEmpty => Said.Count == 0 && Rulebook.File is null && Problems.Count == 0;

    /// <summary>What a field says; empty where it was left out.</summary>
    public string this[AskedField field] => Said.GetValueOrDefault(field.Key) ?? "";

    /// <summary>The enquiry as the query of an address, without its file.</summary>
    public string Query() => QueryString.Create(Said).ToString();

    /// <summary>Asks the rulebook, as the command does.</summary>
    /// <param name="facts">The facts that the answer rests on.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">Anything that was sent cannot be read; carries every problem found.</exception>
    public AnswerDocument Answer(FactLibrary facts, CancellationToken stop)
    {
        var problems = new List<InputProblem>(Problems);
        var book = Rulebook.Read(facts, problems);
        var enquiry = EnquiryReader.Read(new SentFields(Said, problems), facts, book is null ? [] : [book]);
        return problems.Count == 0
            ? AnswerMapping.From(FindRequirement.Run(enquiry, book!, facts, progress: null, stop))
            : throw new InputRefusedException(problems);
    }

    private static Dictionary<string, string?> Texts(
        IEnumerable<KeyValuePair<string, StringValues>> sent,
        List<InputProblem> problems
    )
    {
        var said = new Dictionary<string, string?>(StringComparer.Ordinal);
        foreach (var (key, values) in sent)
        {
            // An empty choice of a file comes as an empty text.
            var texts = values.Where(value => !string.IsNullOrWhiteSpace(value)).ToList();
            if (!IsKnown(key, problems))
                continue;
            if (texts.Count > 1)
                problems.Add(SentFields.Problem(key, $"\"{texts[0]}\" and \"{texts[1]}\"", "one value"));
            else if (texts.Count == 1)
                said[key] = texts[0]!.Trim();
        }
        return said;
    }

    private static async Task<Dictionary<string, string?>> JsonTextsAsync(
        Stream json,
        List<InputProblem> problems,
        CancellationToken stop
    )
    {
        var said = new Dictionary<string, string?>(StringComparer.Ordinal);
        try
        {
            using var tree = await JsonDocument.ParseAsync(json, cancellationToken: stop);
            if (tree.RootElement.ValueKind != JsonValueKind.Object)
                throw new JsonException();
            foreach (var field in tree.RootElement.EnumerateObject().Where(field => IsKnown(field.Name, problems)))
            {
                if (field.Value.ValueKind is JsonValueKind.Object or JsonValueKind.Array)
                    problems.Add(
                        SentFields.Problem(field.Name, "a list or an object", "a text, a number, true or false")
                    );
                else
                    said[field.Name] = field.Value.ValueKind switch
                    {
                        JsonValueKind.True => "yes",
                        JsonValueKind.False => "no",
                        JsonValueKind.Null => null,
                        _ => field.Value.ToString(),
                    };
            }
        }
        // Texts are made out of the bytes only when they are asked for; then it shows that some are not of UTF-8.
        catch (Exception broken) when (broken is JsonException or InvalidOperationException)
        {
            problems.Add(
                SentFields.Problem("", "what is no JSON object", "an object with the fields of an enquiry") with
                {
                    Line = (int)((broken as JsonException)?.LineNumber + 1 ?? 0),
                }
            );
        }
        return said;
    }

    // A name misspelt would otherwise be an answer to another question.
    private static bool IsKnown(string key, List<InputProblem> problems)
    {
        if (Fields.Any(field => field.Key == key))
            return true;
        problems.Add(SentFields.Problem(key, "a field", string.Join(", ", Fields.Select(field => field.Key))));
        return false;
    }
}
