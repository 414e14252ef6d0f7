namespace Alburnum.Requirements;

/// <summary>What the rows of one subject came to.</summary>
public abstract record Finding
{
    private protected Finding() { }
}

/// <summary>One demand holds.</summary>
/// <param name="Demand">The demand.</param>
public sealed record Settled(Demand Demand) : Finding;

/// <summary>The enquiry itself said so; the rows are shown for comparison.</summary>
/// <param name="Code">The class in which the rulebook puts the component, where that is what was said; null where it settles none.</param>
public abstract record Given(UseClassDemand? Code) : Finding
{
    /// <summary>The use class that a row has for the class which the contract names; null where none is named, or no row has one.</summary>
    public UseClassDemand? OfContract { get; init; }
}

/// <summary>The enquiry named the use class.</summary>
/// <param name="Use">The class.</param>
/// <param name="Code">The class in which the rulebook puts the component; null where it settles none.</param>
public sealed record GivenUseClass(UseClassStated Use, UseClassDemand? Code) : Given(Code);

/// <summary>The use class follows from where the piece stands.</summary>
/// <param name="Answer">The class, or those still possible, what decided it and what to ask next.</param>
/// <param name="Code">The class in which the rulebook puts the component; null where it settles none.</param>
public sealed record UseClassOfExposure(UseClassAnswer Answer, UseClassDemand? Code) : Given(Code);

/// <summary>The contract names a class, and the rulebook says what use that class is for: not in which the component belongs.</summary>
/// <param name="StatedClass">The class that the contract names.</param>
/// <param name="Demand">The use class that it is for.</param>
/// <param name="Code">The class in which the rulebook puts the component, asked without the contract's; null where it settles none.</param>
public sealed record UseClassOfContract(string StatedClass, UseClassDemand Demand, UseClassDemand? Code) : Given(Code);

/// <summary>The enquiry named the desired service life.</summary>
/// <param name="Life">The life.</param>
/// <param name="Usual">The life that the rulebook takes as usual for the component; null where it settles none.</param>
public sealed record GivenLife(DesiredServiceLife Life, LifeDemand? Usual) : Given((UseClassDemand?)null);

/// <summary>The code has no usual life for the component; what goes by its name usually serves so long.</summary>
/// <param name="Life">The life.</param>
/// <param name="Name">The name.</param>
public sealed record UsualLifeOfName(DesiredServiceLife Life, ComponentName Name) : Finding;

/// <summary>No row holds.</summary>
public sealed record Silent : Finding;

/// <summary>Rows hold that demand different things, and none is marked as an exception to the other.</summary>
public sealed record Contradicted : Finding;

/// <summary>Which row holds depends on something that is not known.</summary>
/// <param name="Fields">What must be known to decide.</param>
public sealed record Depends(IReadOnlyList<Field> Fields) : Finding;

/// <summary>How one subject was decided.</summary>
/// <param name="Subject">The subject.</param>
/// <param name="Finding">What it came to.</param>
/// <param name="Matched">Rows that hold and count.</param>
/// <param name="SetAside">Rows that hold but yield to an exception.</param>
/// <param name="Open">Rows that could hold, each with a field that is not known.</param>
/// <param name="NearMisses">Rows that failed on exactly one field.</param>
public sealed record TraceStep(
    Subject Subject,
    Finding Finding,
    IReadOnlyList<Row> Matched,
    IReadOnlyList<Row> SetAside,
    IReadOnlyList<Miss> Open,
    IReadOnlyList<Miss> NearMisses
);

/// <summary>A fact outside the rows that an answer leans on.</summary>
/// <param name="Provenance">Source and standing.</param>
public abstract record FactUsed(Provenance Provenance);

/// <summary>The treatability of the sapwood.</summary>
/// <param name="Species">The species.</param>
/// <param name="Treatability">Its class, or the range of its classes.</param>
public sealed record SapwoodTreatabilityUsed(Timber.Species Species, Fact<Timber.ClassRange> Treatability)
    : FactUsed(Treatability.Provenance);

/// <summary>The treatability of the heartwood.</summary>
/// <param name="Species">The species.</param>
/// <param name="Treatability">Its class, or the range of its classes.</param>
public sealed record HeartwoodTreatabilityUsed(Timber.Species Species, Fact<Timber.ClassRange> Treatability)
    : FactUsed(Treatability.Provenance);

/// <summary>The natural durability of the heartwood.</summary>
/// <param name="Species">The species.</param>
/// <param name="Durability">Its class, or the range of its classes.</param>
public sealed record DurabilityUsed(Timber.Species Species, Fact<Timber.ClassRange> Durability)
    : FactUsed(Durability.Provenance);

/// <summary>The group in which the rulebook puts the species.</summary>
/// <param name="Species">The species.</param>
/// <param name="Group">The group.</param>
public sealed record SpeciesGroupUsed(Timber.Species Species, SpeciesGroup Group) : FactUsed(Group.Provenance);

/// <summary>What a component's name settles of its exposure.</summary>
/// <param name="Name">The name.</param>
public sealed record ExposureOfNameUsed(ComponentName Name) : FactUsed(Name.Provenance);

/// <summary>How long what goes by a component's name usually serves.</summary>
/// <param name="Name">The name.</param>
/// <param name="Life">Its usual life.</param>
public sealed record LifeOfNameUsed(ComponentName Name, Fact<DesiredServiceLife> Life) : FactUsed(Life.Provenance);

/// <summary>What defines a penetration class that a row asks for by name.</summary>
/// <param name="Name">The class, for instance "NP3".</param>
/// <param name="Provenance">Source and standing of its depth.</param>
public sealed record PenetrationClassUsed(string Name, Provenance Provenance) : FactUsed(Provenance);

/// <summary>The analytical zone that goes with a depth.</summary>
/// <param name="Name">The code's name of the depth, for instance "NP3".</param>
/// <param name="Zone">The zone.</param>
public sealed record AnalyticalZoneUsed(string Name, Fact<AnalyticalZone> Zone) : FactUsed(Zone.Provenance);

/// <summary>Why an answer is what it is: rows that matched, rows that just failed, and on which field.</summary>
/// <param name="RulebookName">Name of the rulebook, for instance "british-2014".</param>
/// <param name="RulebookTitle">Document and edition.</param>
/// <param name="Enquiry">The enquiry, as it was asked.</param>
/// <param name="Steps">One step a subject, in the order in which they were decided.</param>
/// <param name="FactsUsed">Facts outside the rows.</param>
public sealed record Trace(
    string RulebookName,
    string RulebookTitle,
    Enquiry Enquiry,
    IReadOnlyList<TraceStep> Steps,
    IReadOnlyList<FactUsed> FactsUsed
)
{
    /// <summary>The user's own file of the rulebook; null for one that ships.</summary>
    public RulebookCopy? Copy { get; init; }

    /// <summary>The weakest standing among all rows and facts that the answer rests on.</summary>
    public Standing WeakestStanding =>
        Provenance.Weakest(
            Steps
                .SelectMany(step => step.Matched)
                .Select(row => row.Provenance.Standing)
                .Concat(FactsUsed.Select(fact => fact.Provenance.Standing))
        );

    /// <summary>Weakest standing of what the depth rests on: its row, what defines the row's class, and what is used of the timber. The analytical zone is no part of it.</summary>
    public Standing PenetrationStanding =>
        Provenance.Weakest(
            Matched(Subject.Penetration)
                .Concat(FactsUsed.Where(IsOfDepth).Select(fact => fact.Provenance))
                .Select(provenance => provenance.Standing)
        );

    /// <summary>Standing of the analytical zone; null where none is known.</summary>
    public Standing? ZoneStanding =>
        FactsUsed.OfType<AnalyticalZoneUsed>().Max(used => (Standing?)used.Provenance.Standing);

    /// <summary>Weakest standing of the rows that settle a subject; null where none does.</summary>
    public Standing? StandingOf(Subject subject) => Matched(subject).Max(provenance => (Standing?)provenance.Standing);

    private IEnumerable<Provenance> Matched(Subject subject) =>
        (Step(subject)?.Matched ?? []).Select(row => row.Provenance);

    // What settles the use or the life, or advice beside the depth, settles no depth.
    private bool IsOfDepth(FactUsed fact) =>
        fact switch
        {
            SapwoodTreatabilityUsed => AsksForDepth(Field.SapwoodTreatability),
            HeartwoodTreatabilityUsed => AsksForDepth(Field.HeartwoodTreatability),
            DurabilityUsed => AsksForDepth(Field.Durability),
            SpeciesGroupUsed => AsksForDepth(Field.SpeciesGroup),
            ExposureOfNameUsed or LifeOfNameUsed or AnalyticalZoneUsed => false,
            _ => true,
        };

    private bool AsksForDepth(Field field) =>
        Step(Subject.Penetration)?.Matched.Any(row => row.When.Any(condition => condition.Field == field)) == true;

    /// <summary>The use class that the answer was found with, or those possible; empty where nothing is known of it.</summary>
    public IReadOnlyList<UseClass> UseClasses => UseClassGiven?.Classes ?? [];

    /// <summary>The same as it is named by whoever or whatever gave it; null where nothing is known of it.</summary>
    public UseClassGiven? UseClassGiven =>
        Step(Subject.UseClass)?.Finding switch
        {
            GivenUseClass given => given.Use,
            UseClassOfExposure { Answer.Classes: var classes } => Enquiry.CalledAs is { } name
            && !Enquiry.Exposure.SaysWhere
                ? new UseClassByName(name.Name, classes)
                : new UseClassByPlace(classes),
            UseClassOfContract contract => new UseClassByContract(
                contract.StatedClass,
                contract.Demand,
                IsOfCode: true
            ),
            Settled { Demand: UseClassDemand code } => ByCode(code),
            _ => null,
        };

    /// <summary>The class in which the code puts the component, whatever was said; null where it settles none.</summary>
    internal UseClassByCode? UseClassOfComponent =>
        Step(Subject.UseClass)?.Finding switch
        {
            Given { Code: { } code } => ByCode(code),
            Settled { Demand: UseClassDemand code } => ByCode(code),
            _ => null,
        };

    private UseClassByCode ByCode(UseClassDemand code) => new(Enquiry.Component?.Name, code, RulebookTitle);

    /// <summary>Retention that the rows settle, whatever they settle of the depth: fixed, or the factor times the critical value given; null where neither is known.</summary>
    public PreservativeAmount? RequiredRetention =>
        (Step(Subject.Retention)?.Finding as Settled)?.Demand switch
        {
            FixedRetention settled => settled.Amount,
            RetentionFactor multiple when Enquiry.CriticalValue is { } critical => new(
                multiple.Factor * critical.Value,
                critical.Unit
            ),
            _ => null,
        };

    /// <summary>The service life that the answer was found with; null where none is known.</summary>
    public DesiredServiceLife? Life =>
        Step(Subject.Life)?.Finding switch
        {
            GivenLife given => given.Life,
            UsualLifeOfName usual => usual.Life,
            Settled { Demand: LifeDemand code } => code.Life,
            _ => null,
        };

    /// <summary>The question that narrows the use class down; null where one class is settled.</summary>
    public ExposureQuestion? NextQuestion =>
        Step(Subject.UseClass)?.Finding switch
        {
            UseClassOfExposure exposed => exposed.Answer.NextQuestion,
            // Only class 3 has two parts.
            GivenUseClass { Use.Classes.Count: > 1 } => ExposureQuestion.WaterStays,
            Silent or Depends => Enquiry.Exposure.Or(Enquiry.CalledAs?.Exposure).UseClass().NextQuestion,
            _ => null,
        };

    /// <summary>The enquiry with the use class and the life that the answer was found with, which may be the code's own for the component.</summary>
    public Enquiry AsAnswered
    {
        get
        {
            var found = Step(Subject.UseClass)?.Finding;
            var code = (found as UseClassOfContract)?.Demand ?? (found as Settled)?.Demand as UseClassDemand;
            return Enquiry with
            {
                UseClasses = UseClasses,
                UseClassAsWritten = UseClassGiven?.Label,
                Exposure = Enquiry.Exposure with { IsCoated = Enquiry.Exposure.IsCoated ?? code?.IsCoated },
                Life = Life,
            };
        }
    }

    /// <summary>The trace without what is asked of a treatment, for where none is needed: retention, moisture before it, how many pieces may fail.</summary>
    public Trace WithoutTreatment =>
        this with
        {
            Steps =
            [
                .. Steps
                    .Where(step => step.Subject is not (Subject.Retention or Subject.Moisture or Subject.Acceptance))
                    .Select(WithoutInsects),
            ],
        };

    // Left open by insects alone, which are asked for beside it: what holds meanwhile is that none is needed.
    private static TraceStep WithoutInsects(TraceStep step) =>
        step is { Subject: Subject.Penetration, Finding: Depends, Matched: [{ Demand: NoTreatment none }, ..] }
            ? step with
            {
                Finding = new Settled(none),
            }
            : step;

    /// <summary>The step that decided a subject; null where it was not reached.</summary>
    public TraceStep? Step(Subject subject) => Steps.FirstOrDefault(step => step.Subject == subject);

    /// <summary>The AQL for penetration that the code has for the piece; null where it has none, or where that depends on something not known.</summary>
    public Fact<double>? AqlPercent =>
        Step(Subject.Acceptance) is { Finding: Settled { Demand: AcceptableQuality quality }, Matched: var rows }
            ? new(quality.AqlPercent, rows[0].Provenance)
            : null;
}
