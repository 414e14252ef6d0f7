using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>Sources as plain lines.</summary>
public static class SourceText
{
    /// <summary>Each source in two or three lines: what it is, who published it and how it was read, and what to know of it.</summary>
    public static IEnumerable<string> Lines(IEnumerable<SourceDocument> sources)
    {
        ArgumentNullException.ThrowIfNull(sources);
        foreach (var source in sources)
        {
            yield return $"{source.Id}: {Joined(source.Document, source.Edition, source.Place)}";
            yield return "  "
                + Said(
                    "sources.published",
                    ("publisher", source.Publisher ?? Said("sources.publisher-not-known")),
                    ("year", source.Year ?? Said("sources.year-not-known")),
                    ("read", Joined(source.HowRead, source.DateRead, source.Address))
                );
            if (source.Note is { } note)
                yield return $"  {note}";
        }
    }

    private static string Joined(params IEnumerable<string?> parts) =>
        string.Join(", ", parts.Where(part => part is not null));
}
