namespace Alburnum.Requirements;

/// <summary>One edition of one code of practice, as rows.</summary>
public sealed class Rulebook
{
    private readonly Row[][] _bySubject;
    private readonly Dictionary<Timber.Species, IReadOnlyList<string>> _groupsOf = new(
        ReferenceEqualityComparer.Instance
    );

    // Guards the memory of groups: one rulebook is asked from many threads.
    private readonly Lock _groupsLock = new();

    /// <summary>A rulebook of the given rows.</summary>
    /// <param name="rows">All rows, in the order of the document.</param>
    /// <exception cref="ArgumentException">Two rows share a key, or an exception names no row or goes round in a circle.</exception>
    public Rulebook(IReadOnlyList<Row> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (Exceptions.Faults(rows).FirstOrDefault() is { } fault)
            throw new ArgumentException($"Row \"{fault.Row.Key}\": {fault.GetType().Name}.", nameof(rows));
        Rows = rows;
        _bySubject =
        [
            .. Enum.GetValues<Subject>().Select(subject => rows.Where(row => row.Subject == subject).ToArray()),
        ];
    }

    /// <summary>Short name, for instance "british-2014".</summary>
    public required string Name { get; init; }

    /// <summary>What it is, for people.</summary>
    public required string Title { get; init; }

    /// <summary>Document, for instance "BS 8417".</summary>
    public required string Document { get; init; }

    /// <summary>Edition, for instance "2011+A1:2014".</summary>
    public required string Edition { get; init; }

    /// <summary>Desired service lives that the code knows, years, rising; empty where it knows none.</summary>
    public IReadOnlyList<int> Lives { get; init; } = [];

    /// <summary>Groups of species used in the rows.</summary>
    public IReadOnlyList<SpeciesGroup> Groups { get; init; } = [];

    /// <summary>All rows, in the order of the document.</summary>
    public IReadOnlyList<Row> Rows { get; }

    /// <summary>Fields over which the rulebook claims to be complete; empty where it claims nothing.</summary>
    public IReadOnlyList<Field> CompleteOver { get; init; } = [];

    /// <summary>What a reader should know of the whole rulebook.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>The user's file that it was read from; null for a rulebook that ships.</summary>
    public RulebookCopy? Copy { get; init; }

    /// <summary>Document and edition: "BS 8417:2024", or "Own table, as printed" where the edition is no number.</summary>
    public string Citation =>
        Edition.Length > 0 && char.IsDigit(Edition[0]) ? $"{Document}:{Edition}" : $"{Document}, {Edition}";

    /// <summary>What the code demands of the piece, or why there is no answer; always with the reasons.</summary>
    public Answer Answer(Enquiry enquiry)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        return Conclusion.From(Follow(enquiry), Lives);
    }

    /// <summary>The rows of one subject, in the order of the document.</summary>
    public IReadOnlyList<Row> RowsOf(Subject subject) => _bySubject[(int)subject];

    /// <summary>Names of the groups that a species belongs to.</summary>
    public IReadOnlyList<string> GroupsOf(Timber.Species species)
    {
        ArgumentNullException.ThrowIfNull(species);
        lock (_groupsLock)
        {
            if (!_groupsOf.TryGetValue(species, out var names))
            {
                names = [.. Groups.Where(group => group.Contains(species)).Select(group => group.Name)];
                _groupsOf[species] = names;
            }
            return names;
        }
    }

    private Trace Follow(Enquiry enquiry)
    {
        var situation = new Situation(enquiry, enquiry.Species is { } species ? GroupsOf(species) : null);
        var steps = new List<TraceStep>(6);
        var use = Choice.Among(Subject.UseClass, RowsOf(Subject.UseClass), situation);
        var code = (use.Finding as Settled)?.Demand as UseClassDemand;
        if (enquiry.UseClasses.Count > 0)
            use = use with { Finding = new GivenUseClass(enquiry.UseClasses, code), Matched = [] };
        else if (code is not null)
            situation.SetUse(code.Classes, enquiry.IsCoated ?? code.IsCoated);
        steps.Add(use);

        var life = Choice.Among(Subject.Life, RowsOf(Subject.Life), situation);
        if (enquiry.Life is { } asked)
            life = life with { Finding = new GivenLife(asked), Matched = [] };
        else if (life.Finding is Settled { Demand: LifeDemand usual })
            situation.SetLife(usual.Life);
        steps.Add(life);

        foreach (
            var subject in (ReadOnlySpan<Subject>)
                [Subject.Penetration, Subject.Retention, Subject.Moisture, Subject.Advice]
        )
            steps.Add(Choice.Among(subject, RowsOf(subject), situation));
        // Most codes say nothing of it, and that is not worth a line.
        if (RowsOf(Subject.Acceptance) is { Count: > 0 } acceptance)
            steps.Insert(steps.Count - 1, Choice.Among(Subject.Acceptance, acceptance, situation));

        return new Trace(Name, $"{Title} ({Citation})" + Copy?.Ending, enquiry, steps, FactsUsed(enquiry, steps));
    }

    // Facts of the species, and the group that it was put into, wherever a row that counts asked for them.
    private List<FactUsed> FactsUsed(Enquiry enquiry, List<TraceStep> steps)
    {
        var facts = new List<FactUsed>();
        if (enquiry.Species is not { } species)
            return facts;
        var conditions = steps.SelectMany(step => step.Matched).SelectMany(row => row.When).ToList();
        bool Asks(Field field) => conditions.Exists(condition => condition.Field == field);
        if (Asks(Field.SapwoodTreatability) && species.SapwoodTreatability is { } sapwood)
            facts.Add(new SapwoodTreatabilityUsed(species, sapwood));
        if (Asks(Field.HeartwoodTreatability) && species.HeartwoodTreatability is { } heartwood)
            facts.Add(new HeartwoodTreatabilityUsed(species, heartwood));
        if (Asks(Field.Durability) && species.Durability is { } durability)
            facts.Add(new DurabilityUsed(species, durability));
        foreach (var group in Groups)
        {
            var isAsked = conditions.Exists(condition =>
                condition is OneOf { Field: Field.SpeciesGroup } asked
                && asked.Allowed.Contains(group.Name, StringComparer.OrdinalIgnoreCase)
            );
            if (isAsked && group.Contains(species))
                facts.Add(new SpeciesGroupUsed(species, group));
        }
        return facts;
    }
}

/// <summary>A user's own file of a rulebook.</summary>
/// <param name="File">Its path, as it was given.</param>
/// <param name="Sha256">SHA-256 of its bytes, in hexadecimal digits.</param>
public sealed record RulebookCopy(string File, string Sha256)
{
    // Behind a rulebook's title, so that an answer can be traced to the very file.
    internal string Ending => $"; {File}, SHA-256 {Sha256}";
}
