using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Sheets;

/// <summary>What stands beside the drawing of a section, on the printed report and on the page.</summary>
public static class SectionRows
{
    private static SheetWords Words => SheetWords.Current;

    /// <summary>The measures of a section as name and rounded value.</summary>
    public static IEnumerable<(string Name, string Value)> Measures(ReadingDocument reading) =>
        Measures(reading, Words.Treated);

    /// <summary>The measures of a section now and as they were kept, by name; a dash for one that was not kept.</summary>
    public static IEnumerable<(string Name, string Now, string Kept)> Compared(
        ReadingDocument now,
        ReadingDocument kept
    )
    {
        var before = Measures(kept, Words.TreatedShare)
            .ToDictionary(measure => measure.Name, measure => measure.Value, StringComparer.Ordinal);
        return Measures(now, Words.TreatedShare)
            .Select(measure => (measure.Name, measure.Value, before.GetValueOrDefault(measure.Name, "–")));
    }

    /// <summary>What is to be said of a piece beside its measures, one sentence each.</summary>
    public static IEnumerable<string> Notes(PieceDocument piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece
            .Verdict.Reasons.Append(MarksMapping.InWords(piece.Reading.Marks))
            .Concat(Notes(piece.Reading))
            .Where(note => note.Length > 0)
            .Distinct(StringComparer.Ordinal);
    }

    /// <summary>What the reading says of itself, and how the heartwood was detected where it was.</summary>
    public static IEnumerable<string> Notes(ReadingDocument reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Heartwood is { BorderUMm: not null } detected
            ? [detected.InWords, .. reading.Notes]
            : reading.Notes;
    }

    /// <summary>What the depths look like and what would confirm it, one line each.</summary>
    public static IEnumerable<string> Patterns(ReadingDocument reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Patterns.Select(pattern => $"{pattern.LooksLike} {pattern.WouldConfirm}");
    }

    private static IEnumerable<(string Name, string Value)> Measures(
        ReadingDocument reading,
        Func<double, (string, string)> treated
    )
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Depth is not { } depth)
        {
            yield return Words.NoDepth;
            yield break;
        }
        yield return Words.Least(depth.MinMm, depth.MinUMm);
        yield return Words.FifthPercentile(depth.P5Mm, depth.P5UMm);
        yield return Words.Mean(depth.MeanMm, depth.MeanUMm);
        yield return Words.Greatest(depth.MaxMm, depth.MaxUMm);
        if (reading.TreatedShare is { } share)
            yield return treated(share);
        if (reading.SapwoodTreatedShare is { } sapwood)
            yield return Words.SapwoodTreated(sapwood);
        if (reading.ScaleBasis is { } basis)
            yield return Words.Scale(basis);
        yield return Words.Quality(ReadingWords.Quality(reading.Quality));
    }
}
