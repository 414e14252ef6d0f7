namespace Alburnum.Requirements;

/// <summary>Which of two demands on the penetration asks for more.</summary>
public enum StricterDemand
{
    /// <summary>Whatever meets the code's demand meets the contract's, not the other way round.</summary>
    Code,

    /// <summary>Whatever meets the contract's demand meets the code's, not the other way round.</summary>
    Contract,

    /// <summary>Whatever meets one meets the other.</summary>
    Neither,

    /// <summary>Neither is sure to meet the other: both must be met.</summary>
    NotComparable,
}

/// <summary>What becomes of a class that a contract names, where the code of practice that governs does not know it.</summary>
/// <param name="Name">The class, as the contract names it.</param>
public abstract record ContractClass(string Name)
{
    /// <summary>
    /// Looks the class up in the rulebook that defines it. Null where no class is stated, or where the code that governs knows it itself and answers by it.
    /// </summary>
    /// <param name="code">What the code that governs answers.</param>
    /// <param name="governing">The code that governs.</param>
    /// <param name="known">All rulebooks that may define the class; read only where one is sought.</param>
    public static ContractClass? Of(Answer code, Rulebook governing, IEnumerable<Rulebook> known)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentNullException.ThrowIfNull(governing);
        ArgumentNullException.ThrowIfNull(known);
        var enquiry = code.Trace.Enquiry;
        if (enquiry.StatedClass is not { } name || governing.Names(name))
            return null;
        if (OwnUseClasses(enquiry, governing) is { Count: > 0 } own)
            return IsFor(own, code) ? null : Of(name, code, governing.Answer(InClasses(enquiry, own)));
        var (meant, isSystemNamed, books) = DefinedIn(enquiry, known);
        // A code may have a class of its own by that name.
        if (!isSystemNamed && governing.ByOwnClass(name, enquiry) is { } byCode)
        {
            var demand = new ContractDemand(name, byCode, Order(code, byCode.Requirement.Penetration));
            return
                books is [var standard]
                && standard.Answer(enquiry) is Required byStandard
                && !IsSame(Here(byStandard.Requirement.Penetration, enquiry), Here(demand.Penetration, enquiry))
                ? demand with
                {
                    OfStandard = byStandard,
                }
                : demand;
        }
        return books switch
        {
            [] => new ContractClassNotKnown(name),
            [var book] => Of(name, code, book.Answer(enquiry with { StatedClass = meant })),
            _ => new ContractClassOfSeveral(
                name,
                [.. books.Select(book => $"{book.Title} ({book.Citation})")],
                enquiry.StatedClassMeans?.WrittenOut ?? []
            ),
        };
    }

    /// <summary>
    /// The depth that decides: the stricter of code and contract, both where neither is. Where the code has no demand, the contract's; where its answer is open, the least
    /// that it demands in any event stands for it. Null where there is none, or where the code does not permit it.
    /// </summary>
    /// <param name="code">What the code that governs answers.</param>
    /// <param name="contract">What becomes of the class that the contract names; null where none is named, or where the code answers by it.</param>
    public static DepthRule? Deciding(Answer code, ContractClass? contract) =>
        code is NotPermitted
            ? null
            : (code.InAnyEvent?.Requirement.Penetration, contract) switch
            {
                (null, ContractDemand alone) => alone.Penetration,
                ({ }, ContractDemand { Stricter: StricterDemand.Contract } stricter) => stricter.Penetration,
                ({ } depth, ContractDemand { Stricter: StricterDemand.NotComparable } beside) => new AllOf([
                    depth,
                    beside.Penetration,
                ]),
                var (depth, _) => depth,
            };

    /// <summary>The use classes that a stated class names, where the code that governs goes by these; empty otherwise.</summary>
    /// <param name="enquiry">The enquiry.</param>
    /// <param name="governing">The code that governs.</param>
    public static IReadOnlyList<UseClass> OwnUseClasses(Enquiry enquiry, Rulebook governing)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        ArgumentNullException.ThrowIfNull(governing);
        return enquiry.StatedClassMeans is { UseClasses: { Count: > 0 } classes } && governing.GoesByUseClass
            ? classes
            : [];
    }

    /// <summary>True where an answer is for no other use class than these.</summary>
    /// <param name="classes">The classes.</param>
    /// <param name="answer">The answer.</param>
    public static bool IsFor(IReadOnlyList<UseClass> classes, Answer answer) =>
        answer.Trace.UseClasses is { Count: > 0 } found && found.All(classes.Contains);

    /// <summary>The use that the class is for, as the one rulebook has it that defines the class; null where none does, where several do, and where it has the class for any use.</summary>
    /// <param name="enquiry">The enquiry, with the class.</param>
    /// <param name="known">All rulebooks that may define the class.</param>
    internal static UseClassDemand? UseOf(Enquiry enquiry, IEnumerable<Rulebook> known) =>
        enquiry.StatedClass is not null && DefinedIn(enquiry, known) is (var meant, _, [var book])
            ? (
                book.Answer(enquiry with { StatedClass = meant }).Trace.Step(Subject.UseClass)?.Finding as Given
            )?.OfContract
            : null;

    // The class without the words that name its system, and the rulebooks of that system that know it; of any, where no system is named.
    private static (string Meant, bool IsSystemNamed, List<Rulebook> Books) DefinedIn(
        Enquiry enquiry,
        IEnumerable<Rulebook> known
    )
    {
        var (meant, of) = enquiry.StatedClassMeans is { Bare: { } bare, Rulebooks: { Count: > 0 } named }
            ? (bare, named)
            : (enquiry.StatedClass!, null);
        return (
            meant,
            of is not null,
            [.. known.Where(book => book.Names(meant) && of?.Contains(book.Name, StringComparer.Ordinal) != false)]
        );
    }

    private static Enquiry InClasses(Enquiry enquiry, IReadOnlyList<UseClass> classes) =>
        enquiry with
        {
            StatedClass = null,
            UseClasses = classes,
            Exposure = enquiry.Exposure with
            {
                IsCoated = enquiry.Exposure.IsCoated ?? enquiry.StatedClassMeans?.IsCoated,
            },
        };

    private static ContractClass Of(string name, Answer code, Answer ofClass) =>
        ofClass is Required required
            ? new ContractDemand(name, required, Order(code, required.Requirement.Penetration))
            : new ContractClassNotAnswered(name, ofClass);

    private static bool IsSame(DepthRule some, DepthRule other) =>
        DepthOrder.Implies(some, other) && DepthOrder.Implies(other, some);

    // Nothing is asked of heartwood that no face shows.
    private static DepthRule Here(DepthRule rule, Enquiry enquiry) =>
        enquiry.HeartwoodAtFace == false ? DepthOrder.WithoutHeartwoodAtFace(rule) : rule;

    private static StricterDemand? Order(Answer code, DepthRule contract) =>
        code.InAnyEvent is not { Requirement.Penetration: var depth }
            ? null
            : (
                code is Required
                    ? DepthOrder.Implies(Here(contract, code.Trace.Enquiry), Here(depth, code.Trace.Enquiry))
                    : code.IsMetBy(contract),
                DepthOrder.Implies(depth, Here(contract, code.Trace.Enquiry))
            ) switch
            {
                (true, true) => StricterDemand.Neither,
                (true, false) => StricterDemand.Contract,
                (false, true) => StricterDemand.Code,
                _ => StricterDemand.NotComparable,
            };
}

/// <summary>The class gives a demand of its own, beside the code's.</summary>
/// <param name="Name">The class.</param>
/// <param name="Answer">The demand, and the rulebook that defines the class.</param>
/// <param name="Stricter">Which of the two asks for more; null where no demand of the code is sure: it asks for nothing, forbids it, or is silent.</param>
public sealed record ContractDemand(string Name, Required Answer, StricterDemand? Stricter) : ContractClass(Name)
{
    /// <summary>How deep the class wants the preservative.</summary>
    public DepthRule Penetration => Answer.Requirement.Penetration;

    /// <summary>What the standard behind the code means by the class, where the code has one of its own by that name and asks for another depth; null otherwise.</summary>
    public Required? OfStandard { get; init; }

    /// <summary>True where it asks for no other depth than the code only because no heartwood reaches a face.</summary>
    public bool IsSameForWantOfHeartwood =>
        Stricter == StricterDemand.Neither
        && Answer.Trace.Enquiry.HeartwoodAtFace == false
        && DepthOrder.AsksOfHeartwoodAtFace(Penetration);
}

/// <summary>No rulebook defines the class.</summary>
/// <param name="Name">The class.</param>
public sealed record ContractClassNotKnown(string Name) : ContractClass(Name);

/// <summary>More than one system has a class of that name, and which is meant is not said.</summary>
/// <param name="Name">The class.</param>
/// <param name="Rulebooks">Title and edition of each, two or more.</param>
/// <param name="WrittenOut">How it is written with its system before it, one for each; may be empty.</param>
public sealed record ContractClassOfSeveral(
    string Name,
    IReadOnlyList<string> Rulebooks,
    IReadOnlyList<string> WrittenOut
) : ContractClass(Name);

/// <summary>The rulebook that defines the class does not demand anything of such a piece.</summary>
/// <param name="Name">The class.</param>
/// <param name="Answer">What it answers.</param>
public sealed record ContractClassNotAnswered(string Name, Answer Answer) : ContractClass(Name);
