using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>What a difference between two rulebooks says of their codes.</summary>
public enum ChangeKind
{
    /// <summary>The codes differ.</summary>
    Changed,

    /// <summary>One of the two says nothing there, or nothing without knowing more: whether the code itself changes is not known.</summary>
    NotRead,

    /// <summary>One of the two has no class of the name that is stated.</summary>
    NoSuchClass,
}

/// <summary>One enquiry to which two rulebooks answer differently.</summary>
/// <param name="Index">Place of the enquiry in the list, from 0.</param>
/// <param name="Enquiry">The enquiry.</param>
/// <param name="Before">What the first rulebook says.</param>
/// <param name="After">What the second rulebook says.</param>
public sealed record ChangedAnswer(int Index, Enquiry Enquiry, Answer Before, Answer After)
{
    /// <summary>The use classes in which the two rulebooks put the component, where both have one and they differ; null otherwise.</summary>
    public (UseClassDemand Before, UseClassDemand After)? OtherUseClass =>
        Coded(Before) is { } one && Coded(After) is { } other && !one.Equals(other) ? (one, other) : null;

    /// <summary>True where the first has no class of the name that is stated, and the second has.</summary>
    public bool LacksClassBefore { get; init; }

    /// <summary>True where the second has no class of the name that is stated, and the first has.</summary>
    public bool LacksClassAfter { get; init; }

    /// <summary>What the difference says of the codes.</summary>
    public ChangeKind Kind =>
        LacksClassBefore || LacksClassAfter ? ChangeKind.NoSuchClass
        : OtherUseClass is null && IsSilentInOne(Before, After) ? ChangeKind.NotRead
        : ChangeKind.Changed;

    // Where what is open is gone through, each branch is held against the same branch.
    private static bool IsSilentInOne(Answer before, Answer after) =>
        IsSilent(before)
        || IsSilent(after)
        || (before, after) switch
        {
            (Required { Requirement: var one }, Required { Requirement: var other }) => one.Penetration.Equals(
                other.Penetration
            )
                && one.IsRecommended == other.IsRecommended
                && Nullable.Equals(one.MoistureMaxPercent, other.MoistureMaxPercent)
                && (IsSilent(one.RetentionOpen) || IsSilent(other.RetentionOpen)),
            (NotCovered { Possible.Count: > 0 } one, NotCovered other) => HasSameBranches(one, other)
                && one.Possible.Zip(other.Possible)
                    .All(each =>
                        SaysTheSame(each.First.Answer, each.Second.Answer)
                        || IsSilentInOne(each.First.Answer, each.Second.Answer)
                    ),
            _ => false,
        };

    // The demand counts, not how it came about: standing, conditions and trace may differ.
    internal static bool SaysTheSame(Answer before, Answer after) =>
        (before, after) switch
        {
            (Required { Requirement: var x }, Required { Requirement: var y }) => x.PenetrationName == y.PenetrationName
                && x.Penetration.Equals(y.Penetration)
                && x.IsRecommended == y.IsRecommended
                && Equals(x.Retention, y.Retention)
                && x.RequiredRetention == y.RequiredRetention
                && Nullable.Equals(x.MoistureMaxPercent, y.MoistureMaxPercent),
            (NotNeeded, NotNeeded) or (NotPermitted, NotPermitted) => true,
            (NotCovered x, NotCovered y) => HasSameBranches(x, y)
                && x.Possible.Zip(y.Possible).All(each => SaysTheSame(each.First.Answer, each.Second.Answer)),
            _ => false,
        };

    private static bool HasSameBranches(NotCovered one, NotCovered other) =>
        one.Possible.Count == other.Possible.Count
        && one.Possible.Zip(other.Possible).All(each => each.First.Where.SequenceEqual(each.Second.Where));

    private static UseClassDemand? Coded(Answer answer) =>
        (answer.Trace.Step(Subject.UseClass)?.Finding as Settled)?.Demand as UseClassDemand;

    private static bool IsSilent(Answer answer) =>
        answer is NotCovered { Possible.Count: 0, Reason: var reason } && IsSilent(reason);

    // What it does say: that it is not written for such timber, or for so long a life.
    private static bool IsSilent(NotCoveredReason? reason) =>
        reason is not (null or TimberNotCovered or NotOneSpecies or LifeNotKnown);
}

/// <summary>What becomes of the same enquiries under two rulebooks.</summary>
/// <param name="Changes">Those answered differently, in the order given.</param>
/// <param name="AnsweredByNeither">How many neither of the two answers: whether the codes themselves differ there is not known.</param>
public sealed record ComparedAnswers(IReadOnlyList<ChangedAnswer> Changes, int AnsweredByNeither);

/// <summary>Which answers change between two rulebooks, usually two editions of one code.</summary>
public static class RulebookComparison
{
    /// <summary>Puts every enquiry to both.</summary>
    /// <param name="before">The first rulebook.</param>
    /// <param name="after">The second rulebook.</param>
    /// <param name="enquiries">Enquiries to ask of both.</param>
    /// <param name="stop">Signalled to stop early.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static ComparedAnswers Of(
        Rulebook before,
        Rulebook after,
        IReadOnlyList<Enquiry> enquiries,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(enquiries);
        var changed = new List<ChangedAnswer>();
        var answeredByNeither = 0;
        for (var index = 0; index < enquiries.Count; index++)
        {
            stop.ThrowIfCancellationRequested();
            var (first, second) = (before.Answer(enquiries[index]), after.Answer(enquiries[index]));
            var change = new ChangedAnswer(index, enquiries[index], first, second)
            {
                LacksClassBefore = Lacks(before, after, enquiries[index]),
                LacksClassAfter = Lacks(after, before, enquiries[index]),
            };
            if (change.Kind == ChangeKind.NoSuchClass)
            {
                changed.Add(change);
                continue;
            }
            if (first is NotCovered { Possible.Count: 0 } && second is NotCovered { Possible.Count: 0 })
                answeredByNeither++;
            if (!ChangedAnswer.SaysTheSame(first, second) || change.OtherUseClass is not null)
                changed.Add(change);
        }
        return new(changed, answeredByNeither);
    }

    /// <summary>Common enquiries for comparing two rulebooks without an archive: every component, life and form, in a pine and a spruce.</summary>
    /// <param name="components">Components to ask about.</param>
    /// <param name="species">Species to ask about.</param>
    /// <param name="lives">Service lives, years.</param>
    public static IReadOnlyList<Enquiry> UsualEnquiries(
        IEnumerable<Component> components,
        IReadOnlyList<Species> species,
        IReadOnlyList<int> lives
    ) =>
        [
            .. from component in components
            from wood in species
            from years in lives
            from form in Enum.GetValues<TimberForm>()
            select new Enquiry
            {
                Component = component,
                Species = wood,
                Life = new DesiredServiceLife(years),
                Form = form,
                HasExposedHeartwood = form == TimberForm.Sawn,
                Exposure = new() { IsCoated = false },
            },
        ];

    /// <summary>
    /// Enquiries for comparing what two rulebooks ask for by the classes that a contract names: every class, species and form; a class that only one of the two has in the
    /// first species alone, since there is nothing to compare it with.
    /// </summary>
    /// <param name="before">The first rulebook.</param>
    /// <param name="after">The second rulebook.</param>
    /// <param name="species">Species to ask about.</param>
    public static IReadOnlyList<Enquiry> EnquiriesByClass(
        Rulebook before,
        Rulebook after,
        IReadOnlyList<Species> species
    )
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return
        [
            .. from name in before
                .WordsOf(Field.StatedClass)
                .Union(after.WordsOf(Field.StatedClass), StringComparer.OrdinalIgnoreCase)
            from wood in before.Names(name) && after.Names(name) ? species : species.Take(1)
            from form in Enum.GetValues<TimberForm>()
            select new Enquiry
            {
                StatedClass = name,
                Species = wood,
                Form = form,
                HasExposedHeartwood = form == TimberForm.Sawn,
            },
        ];
    }

    private static bool Lacks(Rulebook one, Rulebook other, Enquiry enquiry) =>
        enquiry.StatedClass is { } name && other.Names(name) && !one.Names(name);
}
