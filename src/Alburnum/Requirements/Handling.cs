namespace Alburnum.Requirements;

/// <summary>A question that comes with treated timber beside its treatment.</summary>
/// <param name="Key">Short name, such as "fixings".</param>
/// <param name="Asks">The question.</param>
public sealed record HandlingSubject(string Key, string Asks);

/// <summary>What is asked about handling treated timber.</summary>
/// <param name="Subject">The question.</param>
/// <param name="Preservative">What the timber is treated with; null where it is not known.</param>
/// <param name="UseClasses">Where it stands; empty where it is not known.</param>
/// <param name="Place">Whose law governs; empty where it is not known.</param>
public sealed record HandlingQuestion(
    HandlingSubject Subject,
    Preservative? Preservative,
    IReadOnlyList<UseClass> UseClasses,
    string Place
)
{
    /// <summary>The wider place whose law governs there too, such as the European Union; empty where none is known.</summary>
    public string WiderPlace { get; init; } = "";
}

/// <summary>A place that may be asked for beside those that statements are of.</summary>
/// <param name="Name">The place.</param>
/// <param name="Within">The wider one whose law governs there too; empty where there is none.</param>
public sealed record HandlingPlace(string Name, string Within);

/// <summary>One statement about handling treated timber.</summary>
/// <param name="Subject">Key of the question that it answers.</param>
/// <param name="Says">The statement, which names its own conditions.</param>
/// <param name="Provenance">Where it comes from.</param>
public sealed record HandlingAdvice(string Subject, string Says, Provenance Provenance)
{
    /// <summary>Keys of the preservatives that it goes for.</summary>
    public required IReadOnlyList<string> Preservatives { get; init; }

    /// <summary>Keys of the preservatives that it does not go for, though it goes for all others.</summary>
    public required IReadOnlyList<string> ExceptPreservatives { get; init; }

    /// <summary>Elements, one of which the preservatives hold that it goes for as well.</summary>
    public required IReadOnlyList<string> Elements { get; init; }

    /// <summary>Use classes that it goes for; empty where it goes for all.</summary>
    public required IReadOnlyList<UseClass> UseClasses { get; init; }

    /// <summary>Places whose law or practice it is; empty where it goes for all.</summary>
    public required IReadOnlyList<string> Places { get; init; }

    /// <summary>Places for which it does not hold, since a rule of the place says otherwise.</summary>
    public required IReadOnlyList<string> ExceptPlaces { get; init; }

    /// <summary>Whether nothing that was said rules it out.</summary>
    public bool Answers(HandlingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Subject == question.Subject.Key
            && (question.Preservative is not { } preservative || GoesFor(preservative))
            && (
                UseClasses.Count == 0
                || question.UseClasses.Count == 0
                || UseClasses.Intersect(question.UseClasses).Any()
            )
            && (Places.Count == 0 || question.Place.Length == 0 || IsOf(question.Place) || IsOf(question.WiderPlace))
            && !ExceptPlaces.Contains(question.Place, StringComparer.OrdinalIgnoreCase)
            && !ExceptPlaces.Contains(question.WiderPlace, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>Whether it is the law or practice of that place.</summary>
    internal bool IsOf(string place) => Places.Contains(place, StringComparer.OrdinalIgnoreCase);

    private bool GoesFor(Preservative preservative) =>
        !ExceptPreservatives.Contains(preservative.Key, StringComparer.Ordinal)
        && ((Preservatives.Count == 0 && Elements.Count == 0) || Names(preservative));

    /// <summary>Whether it names the preservative, or an element of it.</summary>
    internal bool Names(Preservative preservative) =>
        Preservatives.Contains(preservative.Key, StringComparer.Ordinal)
        || Elements.Intersect(preservative.ActiveElements, StringComparer.Ordinal).Any();
}

/// <summary>All that is known of handling treated timber.</summary>
/// <param name="Subjects">The questions.</param>
/// <param name="Rows">The statements, in the order in which they are given.</param>
/// <param name="Narrower">Places that may be asked for besides.</param>
public sealed record HandlingBook(
    IReadOnlyList<HandlingSubject> Subjects,
    IReadOnlyList<HandlingAdvice> Rows,
    IReadOnlyList<HandlingPlace> Narrower
)
{
    /// <summary>Places that may be asked for, in the order of the alphabet: those that statements are of, and those within them.</summary>
    public IReadOnlyList<string> Places =>
        [
            .. Rows.SelectMany(row => row.Places)
                .Concat(Narrower.Select(place => place.Name))
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Whether rules of some place are known on what is asked, and none of them is the place's own and answers it.</summary>
    /// <param name="question">The question.</param>
    public bool LacksRulesOf(HandlingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return question.Place.Length > 0
            && Rows.Any(row => row.Subject == question.Subject.Key && row.Places.Count > 0)
            && !Rows.Any(row => row.Answers(question) && row.IsOf(question.Place));
    }

    /// <summary>Whether some place has a rule on the preservative in particular, and neither the place that is asked for nor the wider one has.</summary>
    /// <param name="question">The question.</param>
    public bool LacksRulesOnPreservative(HandlingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var particular = Rows.Where(row =>
                row.Subject == question.Subject.Key
                && row.Places.Count > 0
                // What the trade does there is no rule.
                && row.Provenance.Standing == Standing.Published
                && question.Preservative is { } preservative
                && row.Names(preservative)
            )
            .ToList();
        return question.Place.Length > 0
            && particular.Count > 0
            && !particular.Exists(row => row.IsOf(question.Place) || row.IsOf(question.WiderPlace));
    }

    /// <summary>The wider place that a place lies in; empty where none is known.</summary>
    public string Around(string place) => Narrower.FirstOrDefault(each => each.Name == place)?.Within ?? "";
}
