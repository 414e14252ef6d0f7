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

    /// <summary>The kinds of cell that the code's tables hold; empty where it does not say, and is taken to have tables by use class.</summary>
    public IReadOnlyList<CellKind> Cells { get; init; } = [];

    /// <summary>What a reader should know of the whole rulebook.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Name of the rulebook that ships on which it is based; null where it stands alone.</summary>
    public string? BasedOn { get; init; }

    /// <summary>The name by which facts outside the rows know it: that of the rulebook on which it is based, otherwise its own.</summary>
    internal string NameInFacts => BasedOn ?? Name;

    /// <summary>True where it is one of those codes, for instance "british" for british-2014.</summary>
    internal bool IsOf(IReadOnlyList<string> codes) => IsOneOf(codes, NameInFacts);

    /// <summary>True where a rulebook of that name is one of those codes.</summary>
    internal static bool IsOneOf(IReadOnlyList<string> codes, string name) =>
        codes.Any(code => name.StartsWith(code + "-", StringComparison.Ordinal));

    /// <summary>The user's file that it was read from; null for a rulebook that ships.</summary>
    public RulebookCopy? Copy { get; init; }

    /// <summary>What it is called, with document and edition.</summary>
    public string FullTitle => $"{Title} ({Citation})";

    /// <summary>Document and edition: "BS 8417:2024", or "Own table, as printed" where the edition is no number.</summary>
    public string Citation =>
        Edition.Length > 0 && char.IsDigit(Edition[0]) ? $"{Document}:{Edition}" : $"{Document}, {Edition}";

    /// <summary>What the code demands of the piece, or why there is no answer; always with the reasons.</summary>
    public Answer Answer(Enquiry enquiry)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        var answer = Conclusion.From(Follow(enquiry), Lives);
        return answer is NotCovered { Reason: DependsOn { Fields: var fields } } open
            ? open with
            {
                Possible = [.. Possible(enquiry, fields, open.Trace.Step(Subject.Penetration)!.Open)],
            }
            : answer;
    }

    // Only what is said by yes or no, or by a preservative that rows name, can be gone through; what is then still open is gone through likewise.
    private IEnumerable<PossibleAnswer> Possible(Enquiry enquiry, IReadOnlyList<Field> fields, IReadOnlyList<Miss> open)
    {
        var each = fields
            .Select(field => enquiry.Branches(field, open))
            .FirstOrDefault(branches => branches.Count > 0, [])
            .Select(branch => (branch.Taken, Answer: Answer(branch.Enquiry)))
            .ToList();
        return each.TrueForAll(branch => branch.Answer is NotCovered { Possible.Count: 0 })
            ? []
            : each.SelectMany(branch =>
                branch.Answer is NotCovered { Possible: { Count: > 0 } further }
                    ? further.Select(then => then with { Where = [branch.Taken, .. then.Where] })
                    : [new([branch.Taken], branch.Answer)]
            );
    }

    /// <summary>What the code's own class of that name demands, whatever the piece; null where it has none, or takes it as a standard defines it.</summary>
    /// <param name="className">The class.</param>
    /// <param name="enquiry">The piece.</param>
    internal Required? ByOwnClass(string className, Enquiry enquiry)
    {
        if (
            RowsOf(Subject.Penetration)
                .FirstOrDefault(row =>
                    row.Demand is PenetrationDemand { DefinedBy: null } own
                    && string.Equals(own.Name, className, StringComparison.OrdinalIgnoreCase)
                )
            is not { } row
        )
            return null;
        var trace = Follow(enquiry);
        List<TraceStep> steps =
        [
            .. trace.Steps.Select(step =>
                step.Subject == Subject.Penetration
                    ? new TraceStep(Subject.Penetration, new Settled(row.Demand), [row], [], [], [])
                    : step
            ),
        ];
        return Conclusion.From(trace with { Steps = steps, FactsUsed = FactsUsed(enquiry, steps) }, []) as Required;
    }

    /// <summary>True where a row asks for that class by name, so that the rulebook answers by it.</summary>
    /// <param name="statedClass">Class that a contract names.</param>
    public bool Names(string statedClass) =>
        WordsOf(Field.StatedClass).Contains(statedClass, StringComparer.OrdinalIgnoreCase);

    /// <summary>True where its rows ask for use classes, or put components into them, so that the classes of EN 335 are its own.</summary>
    public bool GoesByUseClass =>
        Rows.Any(row =>
            row.When.Any(condition => condition.Field == Field.UseClass)
            || (row.Subject == Subject.UseClass && row.When.All(condition => condition.Field != Field.StatedClass))
        );

    /// <summary>The rows of one subject, in the order of the document.</summary>
    public IReadOnlyList<Row> RowsOf(Subject subject) => _bySubject[(int)subject];

    /// <summary>The words of a field that its rows name, each once.</summary>
    public IEnumerable<string> WordsOf(Field field) =>
        Rows.SelectMany(row => row.When)
            .OfType<OneOf>()
            .Where(condition => condition.Field == field)
            .SelectMany(condition => condition.Allowed)
            .Distinct(StringComparer.Ordinal);

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
        steps.Add(Use(enquiry, situation));
        steps.Add(Life(enquiry, situation, steps[0]));
        foreach (
            var subject in (ReadOnlySpan<Subject>)
                [Subject.Penetration, Subject.Retention, Subject.Moisture, Subject.Advice]
        )
            steps.Add(Choice.Among(subject, RowsOf(subject), situation));
        // Most codes say nothing of it, and that is not worth a line.
        if (RowsOf(Subject.Acceptance) is { Count: > 0 } acceptance)
            steps.Insert(steps.Count - 1, Choice.Among(Subject.Acceptance, acceptance, situation));

        return new Trace(Name, FullTitle, enquiry, steps, FactsUsed(enquiry, steps)) { Copy = Copy };
    }

    // What was said goes first, then what the contract's class is for, the code's class for the component, and what the component's name settles.
    private TraceStep Use(Enquiry enquiry, Situation situation)
    {
        var step = Choice.Among(Subject.UseClass, RowsOf(Subject.UseClass), situation);
        var found = (step.Finding as Settled)?.Demand as UseClassDemand;
        var contract = step.Matched.Any(TurnsOnStatedClass) ? found : null;
        var code = contract is null ? found : ClassWithoutContract(enquiry);
        if (enquiry.UseClasses.Count > 0)
        {
            var stated = enquiry.StatedUse;
            situation.SetUse(stated.Classes, enquiry.Exposure.IsCoated);
            return step with
            {
                Finding = new GivenUseClass(stated, code) { OfContract = contract },
                Matched = [],
            };
        }
        var exposed = Exposed(enquiry, step, found);
        if (exposed.SaysWhere)
        {
            var answer = exposed.UseClass();
            situation.SetUse(answer.Classes, enquiry.Exposure.IsCoated);
            return step with
            {
                Finding = new UseClassOfExposure(answer, code) { OfContract = contract },
                Matched = [],
            };
        }
        if (found is not null)
            situation.SetUse(found.Classes, enquiry.Exposure.IsCoated ?? found.IsCoated);
        return contract is null
            ? step
            : step with
            {
                Finding = new UseClassOfContract(enquiry.StatedClass!, contract, code) { OfContract = contract },
            };
    }

    private static bool TurnsOnStatedClass(Row row) => row.When.Any(condition => condition.Field == Field.StatedClass);

    // A class that the contract names does not move the component: where it belongs is asked as if none had been named.
    private UseClassDemand? ClassWithoutContract(Enquiry enquiry)
    {
        var situation = new Situation(
            enquiry with
            {
                StatedClass = null,
            },
            enquiry.Species is { } species ? GroupsOf(species) : null
        );
        var step = Choice.Among(Subject.UseClass, RowsOf(Subject.UseClass), situation);
        return (step.Finding as Settled)?.Demand as UseClassDemand;
    }

    // The exposure that decides in place of the code's row: where there is none, where what was said settles the class or leaves only wetter ones, and where the name itself settles a wetter one
    // ("sole plate on the ground") than the code has for the component in general. Otherwise one that says nothing.
    private static Exposure Exposed(Enquiry enquiry, TraceStep step, UseClassDemand? code)
    {
        var named = enquiry.CalledAs;
        if (step.Finding is Silent)
            return enquiry.Exposure.Or(named?.Exposure);
        if (code is null)
            return enquiry.Exposure;
        var said = enquiry.Exposure.UseClass();
        if (said.NextQuestion is null)
            return enquiry.Exposure;
        if (said.Classes[0] > code.Classes.Max())
            return enquiry.Exposure.Or(named?.Exposure);
        var both = enquiry.Exposure.Or(named?.Exposure).UseClass();
        return
            both.NextQuestion is null && named!.Name != enquiry.Component?.Name && both.Classes[0] > code.Classes.Max()
            ? enquiry.Exposure.Or(named.Exposure)
            : new Exposure();
    }

    private static bool IsTakenOutside(Enquiry enquiry, TraceStep use)
    {
        var usual = (use.Finding as Given)?.Code?.Classes ?? enquiry.CalledAs?.Exposure.UseClass().Classes;
        return enquiry.UseClasses.Count > 0
            && enquiry.UseClasses.Min() > UseClass.Two
            && usual is { Count: > 0 }
            && usual.Max() <= UseClass.Two;
    }

    private TraceStep Life(Enquiry enquiry, Situation situation, TraceStep use)
    {
        var step = Choice.Among(Subject.Life, RowsOf(Subject.Life), situation);
        var usual = (step.Finding as Settled)?.Demand as LifeDemand;
        // What lasts under a roof says nothing of the weather or the ground.
        if (enquiry.Life is null && IsTakenOutside(enquiry, use))
            return step with { Finding = new Silent(), Matched = [] };
        if (enquiry.Life is { } asked)
            return step with { Finding = new GivenLife(asked, usual), Matched = [] };
        if (usual is not null)
            situation.SetLife(usual.Life);
        else if (step.Finding is Silent && enquiry.CalledAs is { Life: { } life } name)
        {
            situation.SetLife(life.Value);
            return step with { Finding = new UsualLifeOfName(life.Value, name) };
        }
        return step;
    }

    // What a depth is beside its row: the class that it is named by, and the zone that its retention is assayed in.
    private static IEnumerable<FactUsed> OfDepth(IEnumerable<TraceStep> steps)
    {
        foreach (
            var depth in steps
                .SelectMany(step => step.Matched)
                .Select(row => row.Demand)
                .OfType<PenetrationDemand>()
                .Distinct()
        )
        {
            if (depth.DefinedBy is { } definition)
                yield return new PenetrationClassUsed(depth.Name, definition);
            if (depth.Zone is { } zone)
                yield return new AnalyticalZoneUsed(depth.Name, zone);
        }
    }

    // What the component's name settled; facts of the species, and the group that it was put into, wherever a row that counts asked for them.
    private List<FactUsed> FactsUsed(Enquiry enquiry, List<TraceStep> steps)
    {
        var facts = new List<FactUsed>();
        if (enquiry.CalledAs is { } name)
        {
            if (steps[0].Finding is UseClassOfExposure && name.Exposure.SaysWhere)
                facts.Add(new ExposureOfNameUsed(name));
            if (steps[1].Finding is UsualLifeOfName && name.Life is { } life)
                facts.Add(new LifeOfNameUsed(name, life));
        }
        facts.AddRange(OfDepth(steps));
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
public sealed record RulebookCopy(string File, string Sha256);
