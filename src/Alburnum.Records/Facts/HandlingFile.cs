using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>handling.yaml</c>: questions that come with treated timber, and what is known of them.</summary>
internal static class HandlingFile
{
    internal static HandlingBook Read(FactRow root, PreservativeCatalogue preservatives)
    {
        var subjects = root.Rows("subjects")
            .Select(row => new HandlingSubject(row.Text("key"), row.Text("asks")))
            .ToList();
        var words = subjects.Select(subject => (subject.Key, subject.Key)).ToList();
        if (words.Count == 0)
        {
            root.Refuse("subjects", "none", "at least one question");
            return new([], [], []);
        }
        return new(
            subjects,
            [
                .. root.Rows("rows")
                    .Select(row => new HandlingAdvice(row.Word("about", words), row.Text("says"), row.Provenance())
                    {
                        Preservatives = ReagentFile.Keys(row, preservatives),
                        ExceptPreservatives = ReagentFile.Keys(row, preservatives, "exceptPreservatives"),
                        Elements = row.Texts("elements"),
                        UseClasses = row.Has("useClasses") ? UseClassFile.UseClasses(row) : [],
                        Places = row.Texts("where"),
                        ExceptPlaces = row.Texts("exceptWhere"),
                    }),
            ],
            [.. root.Rows("places").Select(row => new HandlingPlace(row.Text("place"), row.OptionalText("within")))]
        );
    }
}
