namespace Alburnum.Requirements;

/// <summary>A class or mark of one system, as it stands on treated timber or its papers.</summary>
/// <param name="Name">The mark, for instance "H4".</param>
/// <param name="System">The system that it belongs to.</param>
/// <param name="Means">What it says there.</param>
/// <param name="UseClass">The use class that it comes nearest to, roughly; null where it says none.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record TreatmentMark(string Name, string System, string Means, UseClass? UseClass, Provenance Provenance)
{
    /// <summary>Whether it is that use class itself, by a name that EN 335 gives it, and not only near it.</summary>
    public bool IsUseClassItself { get; init; }
}

/// <summary>Words that name a system before a mark: "NTR" in "NTR AB", "use class" in "use class 4".</summary>
/// <param name="Before">The words, any of them. They may stand behind a mark that is written out, as in "AB NTR".</param>
/// <param name="Begins">What the mark begins with in their place: "UC" for "use class 4"; empty where the mark is written out behind them.</param>
/// <param name="Systems">The systems that they name.</param>
/// <param name="Rulebooks">Names of the rulebooks whose classes are that system's; empty where no rulebook knows them.</param>
public sealed record SystemWords(
    IReadOnlyList<string> Before,
    string Begins,
    IReadOnlyList<string> Systems,
    IReadOnlyList<string> Rulebooks
);

/// <summary>What a class that was stated means beside its name as it was written.</summary>
/// <param name="UseClasses">The use classes of EN 335 that it names; empty where it names none.</param>
/// <param name="IsCoated">Whether it speaks of coated timber, as the British 3c does, or of uncoated; null where of neither.</param>
/// <param name="Bare">The class without the words that name its system; null where no such words stand before it.</param>
/// <param name="Rulebooks">Names of the rulebooks whose classes are that system's.</param>
/// <param name="WrittenOut">How it is written so that it is the class of one rulebook's system: "AS 1604 H4" for "H4". One for each rulebook that knows it.</param>
public sealed record ClassMeant(
    IReadOnlyList<UseClass> UseClasses,
    bool? IsCoated,
    string? Bare,
    IReadOnlyList<string> Rulebooks,
    IReadOnlyList<string> WrittenOut
);

/// <summary>All marks. One word may be a mark of several systems.</summary>
public sealed class MarkCatalogue
{
    private readonly NameIndex<TreatmentMark> _names;
    private readonly IReadOnlyList<SystemWords> _words;
    private readonly IReadOnlyList<string> _useClasses;

    /// <summary>A catalogue of the given marks.</summary>
    /// <param name="all">The marks.</param>
    /// <param name="words">Words that name a system before them; may be empty.</param>
    /// <param name="useClasses">Systems whose classes are the use classes of EN 335, by whatever name.</param>
    public MarkCatalogue(
        IReadOnlyList<TreatmentMark> all,
        IReadOnlyList<SystemWords> words,
        params IReadOnlyList<string> useClasses
    ) => (_names, _words, _useClasses) = (new(all, mark => [mark.Name]), words, useClasses);

    /// <summary>What a class that was stated means; null where no system here has it.</summary>
    /// <param name="name">The class as it was written.</param>
    public ClassMeant? Meant(string name)
    {
        var marks = Find(name);
        if (marks.Count == 0)
            return null;
        var own = marks.FirstOrDefault(mark => _useClasses.Contains(mark.System, StringComparer.Ordinal));
        var named = WithSystem(name);
        return new(
            own is null ? [] : UseClassesOf(own),
            own?.Name[^1] switch
            {
                'c' => true,
                'u' => false,
                _ => null,
            },
            One(named.Select(each => each.Mark)),
            [.. named.SelectMany(each => each.Words.Rulebooks).Distinct(StringComparer.Ordinal)],
            [.. marks.SelectMany(WrittenOut).Distinct(StringComparer.Ordinal)]
        );
    }

    private static IReadOnlyList<UseClass> UseClassesOf(TreatmentMark mark) =>
        mark.UseClass is { } one
            ? [one]
            : UseClassWords.Parse(new string([.. mark.Name.Where(sign => char.IsDigit(sign) || sign == '.')]));

    private IEnumerable<string> WrittenOut(TreatmentMark mark) =>
        _words
            .Where(words =>
                words is { Begins.Length: 0, Rulebooks.Count: > 0 }
                && words.Systems.Contains(mark.System, StringComparer.Ordinal)
            )
            .Select(words => $"{words.Before[0]} {mark.Name}");

    /// <summary>Everything that the mark means, one entry a system; empty where no system here has it. Words before or behind it that name a system leave that system's alone.</summary>
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
            asked.Any(rulebook => each.Words.Rulebooks.Contains(rulebook.NameInFacts, StringComparer.Ordinal))
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
            from before in words.Before.Select(NameKey.Of)
            from rest in Without(before, key, mayStandBehind: words.Begins.Length == 0)
            from mark in Bare(words.Begins + rest)
            where words.Systems.Contains(mark.System, StringComparer.Ordinal)
            select (words, mark),
        ];
    }

    private static IEnumerable<string> Without(string words, string key, bool mayStandBehind)
    {
        if (key.StartsWith(words + ' ', StringComparison.Ordinal))
            yield return key[(words.Length + 1)..];
        if (mayStandBehind && key.EndsWith(' ' + words, StringComparison.Ordinal))
            yield return key[..^(words.Length + 1)];
    }
}
