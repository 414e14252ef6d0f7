using Alburnum.Letters;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>letters.yaml</c>: the commonest letters and their answers.</summary>
internal static class LetterFile
{
    /// <summary>All of them, in the order of the file.</summary>
    internal static IReadOnlyList<Letter> Read(FactRow root)
    {
        var all = new List<Letter>();
        foreach (var row in root.Rows("letters"))
        {
            var letter = new Letter(
                row.Text("key"),
                row.Text("asks"),
                Sentences(row, "answer"),
                [.. row.Rows("points").Select(point => new Fact<string>(point.Text("says"), point.Provenance()))],
                Sentences(row, "settles"),
                Sentences(row, "cautions")
            );
            if (all.Exists(each => each.Key == letter.Key))
                row.Refuse("key", letter.Key, "a unique key");
            all.Add(letter);
        }
        return all;
    }

    private static IReadOnlyList<string> Sentences(FactRow row, string field)
    {
        var sentences = row.Texts(field);
        if (sentences.Count == 0)
            row.Refuse(field, "nothing", "one sentence or more");
        return sentences;
    }
}
