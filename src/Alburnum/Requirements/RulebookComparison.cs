using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>One enquiry to which two rulebooks answer differently.</summary>
/// <param name="Index">Place of the enquiry in the list, from 0.</param>
/// <param name="Enquiry">The enquiry.</param>
/// <param name="Before">What the first rulebook says.</param>
/// <param name="After">What the second rulebook says.</param>
public sealed record ChangedAnswer(int Index, Enquiry Enquiry, Answer Before, Answer After)
{
    /// <summary>The use classes in which the two rulebooks put the component, where both have one and they differ; null otherwise.</summary>
    public (UseClassDemand Before, UseClassDemand After)? OtherUseClass => UseClasses(Before, After);

    /// <summary>True where one of the two says nothing of it: whether the code itself changes is then not known.</summary>
    public bool IsNotRead => OtherUseClass is null && IsSilentInOne;

    internal static (UseClassDemand Before, UseClassDemand After)? UseClasses(Answer before, Answer after) =>
        Coded(before) is { } one && Coded(after) is { } other && !one.Equals(other) ? (one, other) : null;

    private bool IsSilentInOne =>
        IsSilent(Before)
        || IsSilent(After)
        || (Before, After) is (Required { Requirement: var one }, Required { Requirement: var other })
            && one.Penetration.Equals(other.Penetration)
            && one.IsRecommended == other.IsRecommended
            && Nullable.Equals(one.MoistureMaxPercent, other.MoistureMaxPercent)
            && (IsSilent(one.RetentionOpen) || IsSilent(other.RetentionOpen));

    private static UseClassDemand? Coded(Answer answer) =>
        (answer.Trace.Step(Subject.UseClass)?.Finding as Settled)?.Demand as UseClassDemand;

    private static bool IsSilent(Answer answer) => answer is NotCovered { Reason: var reason } && IsSilent(reason);

    private static bool IsSilent(NotCoveredReason? reason) => reason is CellNotRead or NoRowHolds;
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
            if (first is NotCovered && second is NotCovered)
                answeredByNeither++;
            if (!SaysTheSame(first, second) || ChangedAnswer.UseClasses(first, second) is not null)
                changed.Add(new ChangedAnswer(index, enquiries[index], first, second));
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

    // The demand counts, not how it came about: standing, conditions and trace may differ.
    private static bool SaysTheSame(Answer a, Answer b) =>
        (a, b) switch
        {
            (Required { Requirement: var x }, Required { Requirement: var y }) => x.PenetrationName == y.PenetrationName
                && x.Penetration.Equals(y.Penetration)
                && x.IsRecommended == y.IsRecommended
                && Equals(x.Retention, y.Retention)
                && x.RequiredRetention == y.RequiredRetention
                && Nullable.Equals(x.MoistureMaxPercent, y.MoistureMaxPercent),
            (NotNeeded, NotNeeded) or (NotPermitted, NotPermitted) or (NotCovered, NotCovered) => true,
            _ => false,
        };
}
