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
        List<Rulebook> books = [.. known.Where(book => book.Names(name))];
        return books switch
        {
            [] => new ContractClassNotKnown(name),
            [var book] => book.Answer(enquiry) switch
            {
                Required required => new ContractDemand(name, required, Order(code, required.Requirement.Penetration)),
                var silent => new ContractClassNotAnswered(name, silent),
            },
            _ => new ContractClassOfSeveral(name, [.. books.Select(book => $"{book.Title} ({book.Citation})")]),
        };
    }

    private static StricterDemand? Order(Answer code, DepthRule contract) =>
        code is not Required { Requirement.Penetration: var depth }
            ? null
            : (DepthOrder.Implies(contract, depth), DepthOrder.Implies(depth, contract)) switch
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
/// <param name="Stricter">Which of the two asks for more; null where no demand of the code is known: it asks for nothing, forbids it, or is silent.</param>
public sealed record ContractDemand(string Name, Required Answer, StricterDemand? Stricter) : ContractClass(Name)
{
    /// <summary>How deep the class wants the preservative.</summary>
    public DepthRule Penetration => Answer.Requirement.Penetration;

    /// <summary>Weakest standing of what that depth rests on: its row, and what defines the row's class. The analytical zone, the retention and the rest are no part of it.</summary>
    public Standing PenetrationStanding =>
        Provenance.Weakest(
            (Answer.Trace.Step(Subject.Penetration)?.Matched ?? [])
                .SelectMany(row => new[] { row.Provenance, (row.Demand as PenetrationDemand)?.DefinedBy })
                .OfType<Provenance>()
                .Concat(Answer.Trace.FactsUsed.Where(IsOfTimber).Select(fact => fact.Provenance))
                .Select(provenance => provenance.Standing)
        );

    // What settles the use or the life settles no depth of a class that is named.
    private static bool IsOfTimber(FactUsed fact) => fact is not (ExposureOfNameUsed or LifeOfNameUsed);
}

/// <summary>No rulebook defines the class.</summary>
/// <param name="Name">The class.</param>
public sealed record ContractClassNotKnown(string Name) : ContractClass(Name);

/// <summary>More than one system has a class of that name, and which is meant is not said.</summary>
/// <param name="Name">The class.</param>
/// <param name="Rulebooks">Title and edition of each, two or more.</param>
public sealed record ContractClassOfSeveral(string Name, IReadOnlyList<string> Rulebooks) : ContractClass(Name);

/// <summary>The rulebook that defines the class does not demand anything of such a piece.</summary>
/// <param name="Name">The class.</param>
/// <param name="Answer">What it answers.</param>
public sealed record ContractClassNotAnswered(string Name, Answer Answer) : ContractClass(Name);
