using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Requirements;

/// <summary>What must be known before a demand is read: of a class of another system, of the sea, and of the preservative.</summary>
public static class RequirementWarnings
{
    /// <summary>The warnings, in the order in which they are said; empty where there are none.</summary>
    /// <param name="answer">What the rulebook says.</param>
    /// <param name="rulebook">The rulebook.</param>
    /// <param name="contract">What becomes of the class that the contract names; null where none is named.</param>
    /// <param name="facts">Marks of other systems.</param>
    public static IReadOnlyList<RequirementRemark> Of(
        Answer answer,
        Rulebook rulebook,
        ContractClass? contract,
        FactLibrary facts
    )
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(rulebook);
        ArgumentNullException.ThrowIfNull(facts);
        return [.. Every(answer, rulebook, contract, facts)];
    }

    private static IEnumerable<RequirementRemark> Every(
        Answer answer,
        Rulebook rulebook,
        ContractClass? contract,
        FactLibrary facts
    )
    {
        var enquiry = answer.Trace.Enquiry;
        if (ContractClass.OwnUseClasses(enquiry, rulebook) is { Count: > 0 } own)
            yield return new UseClassOfCode(enquiry.StatedClass!, own, rulebook, ContractClass.IsFor(own, answer));
        // A class that gives a demand beside the code's own is told there.
        else if (enquiry.StatedClass is { } stated && contract is not ContractDemand)
        {
            foreach (var remark in OfStated(stated, rulebook, facts))
                yield return remark;
        }
        if (
            answer.Trace.UseClasses.Contains(UseClass.Five)
            || (enquiry.Exposure.IsInSaltWater ?? enquiry.CalledAs?.Exposure.IsInSaltWater) == true
        )
            yield return new MarineBorersAttack();
        if (enquiry.PreservativeKind is { } preservative)
        {
            foreach (var finding in PreservativeFinding.Of(preservative, answer, rulebook))
                yield return new OfPreservative(finding);
        }
        foreach (var remark in OfInsects(answer, rulebook))
            yield return remark;
    }

    // Every insect that is stated is answered by a row, or is said not to be.
    private static IEnumerable<RequirementRemark> OfInsects(Answer answer, Rulebook rulebook)
    {
        var enquiry = answer.Trace.Enquiry;
        foreach (var insect in enquiry.Exposure.Insects ?? [])
        {
            if (enquiry.Insects.Harmless.Contains(insect))
                yield return new InsectNoThreat(insect, enquiry.Species!);
            else if (!IsAnswered(insect, answer))
                yield return new InsectNotAnswered(insect, rulebook);
        }
    }

    private static bool IsAnswered(Insect insect, Answer answer) =>
        answer is NotCovered { Reason: InsectsAtWork { Insects: var there } } && there.Contains(insect)
        || answer
            .Trace.Steps.SelectMany(step => step.Matched)
            .SelectMany(row => row.When)
            .OfType<OneOf>()
            .Any(asked =>
                asked.Field == Field.Insects && asked.Allowed.Contains(insect.Name, StringComparer.OrdinalIgnoreCase)
            );

    // A class that a row of the rulebook names needs no explaining.
    private static IEnumerable<RequirementRemark> OfStated(string stated, Rulebook rulebook, FactLibrary facts)
    {
        if (rulebook.Names(stated))
            return [];
        var marks = facts.Marks.Find(stated);
        return marks.Count > 0
            ? marks.Select(mark => new MarkOfOtherSystem(mark, rulebook))
            : [new MarkNotKnown(stated, facts.Marks.Near(stated), rulebook)];
    }
}
