namespace Alburnum.Requirements;

/// <summary>A class or mark of one system, as it stands on treated timber or its papers.</summary>
/// <param name="Name">The mark, for instance "H4".</param>
/// <param name="System">The system that it belongs to.</param>
/// <param name="Means">What it says there.</param>
/// <param name="UseClass">The use class that it comes nearest to, roughly; null where it says none.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record TreatmentMark(string Name, string System, string Means, UseClass? UseClass, Provenance Provenance);

/// <summary>Words that name a system before a mark: "NTR" in "NTR AB", "use class" in "use class 4".</summary>
/// <param name="Before">The words, any of them.</param>
/// <param name="Begins">What the mark begins with in their place: "UC" for "use class 4"; empty where the mark is written out behind them.</param>
/// <param name="Systems">The systems that they name.</param>
/// <param name="Rulebooks">Names of the rulebooks whose classes are that system's; empty where no rulebook knows them.</param>
public sealed record SystemWords(
    IReadOnlyList<string> Before,
    string Begins,
    IReadOnlyList<string> Systems,
    IReadOnlyList<string> Rulebooks
);

/// <summary>All marks. One word may be a mark of several systems.</summary>
public sealed class MarkCatalogue
{
    private readonly NameIndex<TreatmentMark> _names;
    private readonly IReadOnlyList<SystemWords> _words;

    /// <summary>A catalogue of the given marks.</summary>
    /// <param name="all">The marks.</param>
    /// <param name="words">Words that name a system before them; may be empty.</param>
    public MarkCatalogue(IReadOnlyList<TreatmentMark> all, IReadOnlyList<SystemWords> words) =>
        (_names, _words) = (new(all, mark => [mark.Name]), words);

    /// <summary>Everything that the mark means, one entry a system; empty where no system here has it. Words before it that name a system leave that system's alone.</summary>
    public IReadOnlyList<TreatmentMark> Find(string name) =>
        Bare(name) is { Count: > 0 } bare ? bare : [.. WithSystem(name).Select(each => each.Mark).Distinct()];

    /// <summary>Marks that may have been meant, nearest first.</summary>
    public IReadOnlyList<string> Near(string name) => _names.Near(name);

    /// <summary>
    /// A class as the rows of rulebooks write it: "AB" for "NTR AB". As it was written where a rulebook asked names it so, where it is not known, and where it may be the class of more than one system.
    /// </summary>
    /// <param name="name">The class as it was written.</param>
    /// <param name="asked">The rulebooks that are asked; may be empty.</param>
    public string AsRulebooksWrite(string name, IReadOnlyList<Rulebook> asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        if (asked.Any(rulebook => rulebook.Names(name)))
            return name;
        if (Bare(name) is { Count: > 0 } bare)
            return One(bare) ?? name;
        var found = WithSystem(name);
        var own = found.Where(each =>
            asked.Any(rulebook => each.Words.Rulebooks.Contains(rulebook.Name, StringComparer.Ordinal))
        );
        if (One(own.Select(each => each.Mark)) is { } ofAsked)
            return ofAsked;
        return
            One(found.Select(each => each.Mark)) is { } one
            && found.All(each => each.Words.Rulebooks.Count > 0)
            && Knowing(one).All(book => found.Any(each => each.Words.Rulebooks.Contains(book, StringComparer.Ordinal)))
            ? one
            : name;
    }

    private static string? One(IEnumerable<TreatmentMark> marks) =>
        marks.Select(mark => mark.Name).Distinct(StringComparer.Ordinal).ToList() is [var one] ? one : null;

    private IReadOnlyList<TreatmentMark> Bare(string name) => [.. _names.Bearers(name).Select(bearer => bearer.Value)];

    // Rulebooks of every system that has the mark, whatever system was named.
    private IEnumerable<string> Knowing(string mark) =>
        Bare(mark)
            .SelectMany(each => _words.Where(words => words.Systems.Contains(each.System, StringComparer.Ordinal)))
            .SelectMany(words => words.Rulebooks);

    private IReadOnlyList<(SystemWords Words, TreatmentMark Mark)> WithSystem(string name)
    {
        var key = NameKey.Of(name);
        return
        [
            .. from words in _words
            from before in words.Before
            let start = NameKey.Of(before) + ' '
            where key.StartsWith(start, StringComparison.Ordinal)
            from mark in Bare(words.Begins + key[start.Length..])
            where words.Systems.Contains(mark.System, StringComparer.Ordinal)
            select (words, mark),
        ];
    }
}
