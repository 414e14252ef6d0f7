using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Requirements;

/// <summary>The use class of a situation, with what the standard says of it.</summary>
/// <param name="Answer">The class, or those still possible, and what to ask next.</param>
/// <param name="Meaning">What EN 335 says of each class.</param>
/// <param name="Traps">What readers of these classes get wrong.</param>
/// <param name="Insects">The insects that are said to live there: any of them may count, since the timber is not known.</param>
/// <param name="NotRuledOut">Insects that may count where the timber is dry, and that nobody has ruled out; empty where it is wet in every class possible.</param>
public sealed record FoundUseClass(
    UseClassAnswer Answer,
    IReadOnlyList<UseClassFacts> Meaning,
    IReadOnlyList<UseClassTrap> Traps,
    InsectHazard Insects,
    IReadOnlyList<Insect> NotRuledOut
);

/// <summary>Finds the use class from where a piece stands.</summary>
public static class FindUseClass
{
    /// <summary>Finds it.</summary>
    /// <param name="exposure">Where the piece stands.</param>
    /// <param name="facts">What EN 335 says of each class, and the insects known.</param>
    public static FoundUseClass Run(Exposure exposure, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(exposure);
        ArgumentNullException.ThrowIfNull(facts);
        var answer = exposure.UseClass();
        var insects = InsectHazard.Of(exposure.Insects, species: null);
        return new(
            answer,
            [.. facts.UseClasses.Where(row => answer.Classes.Contains(row.UseClass))],
            [.. facts.UseClassTraps.Where(trap => trap.UseClasses.Intersect(answer.Classes).Any())],
            insects,
            answer.Classes.Min() <= UseClass.Two ? insects.NotRuledOut(facts.Insects) : []
        );
    }
}
