using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>Two facts of an enquiry that do not go together, or hardly. It decides nothing: a person clears it up.</summary>
public abstract record Discrepancy
{
    private protected Discrepancy() { }
}

/// <summary>The component belongs in another use class than the one stated.</summary>
/// <param name="Component">The component.</param>
/// <param name="Stated">Use class as stated, or those possible.</param>
/// <param name="Code">Where the code puts the component.</param>
/// <param name="RulebookTitle">Which code: the one that governs, or another where that one is silent.</param>
public sealed record ComponentInOtherClass(
    Component Component,
    IReadOnlyList<UseClass> Stated,
    UseClassDemand Code,
    string RulebookTitle
) : Discrepancy;

/// <summary>What goes by this name stands elsewhere than the use class stated: no code puts it in a class.</summary>
/// <param name="Name">The name.</param>
/// <param name="Stated">Use class as stated, or those possible.</param>
/// <param name="Usual">The class of where it usually stands.</param>
public sealed record NameInOtherClass(ComponentName Name, IReadOnlyList<UseClass> Stated, IReadOnlyList<UseClass> Usual)
    : Discrepancy;

/// <summary>The contract names a class that is for another use than that of the component.</summary>
/// <param name="StatedClass">The class, as the contract names it.</param>
/// <param name="For">The use class that it is for.</param>
/// <param name="Use">The use class of the component, or those possible.</param>
/// <param name="By">Who puts it there, and what "it" is; null where the enquiry itself says where it stands.</param>
public sealed record ContractForOtherUse(
    string StatedClass,
    UseClassDemand For,
    IReadOnlyList<UseClass> Use,
    PutInClass? By
) : Discrepancy
{
    /// <summary>True where the component is in a harsher use than that which the class is for.</summary>
    public bool IsTooWeak => Use.Min() > For.Classes.Max();

    /// <summary>True where nothing can be ordered until it is cleared up: the class is too weak, or the answer is for its use and not for that of the component.</summary>
    public bool HoldsUpOrder => By is not null || IsTooWeak;
}

/// <summary>What is put in a use class, and by which code.</summary>
/// <param name="Name">The component, or the name that it goes by.</param>
/// <param name="RulebookTitle">The code; null where the name alone settles it.</param>
public sealed record PutInClass(string Name, string? RulebookTitle);

/// <summary>The use class as written speaks of coated timber, and the coating is denied; or the other way round.</summary>
/// <param name="IsCoated">Whether a coating is kept up, as stated.</param>
public sealed record CoatingAgainstClass(bool IsCoated) : Discrepancy;

/// <summary>The code's class for the component speaks of coated timber, and the coating is denied; or the other way round.</summary>
/// <param name="Component">The component.</param>
/// <param name="Code">Where the code puts it.</param>
/// <param name="IsCoated">Whether a coating is kept up, as stated.</param>
public sealed record CoatingAgainstCode(Component Component, UseClassDemand Code, bool IsCoated) : Discrepancy;

/// <summary>A longer life is asked for than the code takes as usual for the component.</summary>
/// <param name="Component">The component.</param>
/// <param name="Asked">The life asked for.</param>
/// <param name="Usual">The code's usual life.</param>
public sealed record LifeBeyondUsual(Component Component, DesiredServiceLife Asked, DesiredServiceLife Usual)
    : Discrepancy;

/// <summary>A longer life is asked for than is usual for what goes by the name, and the code that governs knows no lives for it.</summary>
/// <param name="Name">What goes by which name.</param>
/// <param name="Asked">The life asked for.</param>
/// <param name="Usual">The longest life that is usual for it elsewhere.</param>
/// <param name="UsualBy">The code that takes it as usual; null where it goes by the name alone.</param>
/// <param name="RulebookTitle">The code that governs.</param>
public sealed record LifeNotOfCode(
    string Name,
    DesiredServiceLife Asked,
    DesiredServiceLife Usual,
    string? UsualBy,
    string RulebookTitle
) : Discrepancy;

/// <summary>The timber was wetter before treatment than the code allows.</summary>
/// <param name="StatedPercent">Moisture content as stated, %.</param>
/// <param name="MostPercent">Most that the code allows, %.</param>
public sealed record TooMoist(double StatedPercent, double MostPercent) : Discrepancy;

/// <summary>A round piece is said to show heartwood at a face: its sapwood runs all the way round.</summary>
/// <param name="Section">The section; null where only the form is stated.</param>
public sealed record HeartwoodOnRound(Section? Section) : Discrepancy;

/// <summary>Finds what does not go together in an enquiry.</summary>
public static class Discrepancies
{
    /// <summary>What does not go together, each once; empty where nothing is amiss.</summary>
    /// <param name="answer">A rulebook's answer, with the enquiry that it was given.</param>
    /// <param name="others">Other rulebooks, asked where that one puts the component in no class.</param>
    public static IReadOnlyList<Discrepancy> Of(Answer answer, IEnumerable<Rulebook> others)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(others);
        return
        [
            .. OfClass(answer.Trace, others),
            .. OfUse(answer.Trace),
            .. OfLife(answer.Trace, others),
            .. OfPiece(answer.Trace),
        ];
    }

    private static UseClassDemand? CodesClass(Trace trace) =>
        trace.Step(Subject.UseClass)?.Finding switch
        {
            Given given => given.Code,
            Settled { Demand: UseClassDemand demand } => demand,
            _ => null,
        };

    private static IEnumerable<Discrepancy> OfClass(Trace trace, IEnumerable<Rulebook> others)
    {
        var (enquiry, given) = (trace.Enquiry, trace.Step(Subject.UseClass)?.Finding as Given);
        if (enquiry.UseClasses is { Count: > 0 } stated && PutElsewhere(trace, stated, others) is { } elsewhere)
            yield return elsewhere switch
            {
                { Code: { } code, RulebookTitle: { } title } => new ComponentInOtherClass(
                    enquiry.Component!,
                    stated,
                    code,
                    title
                ),
                _ => new NameInOtherClass(enquiry.CalledAs!, stated, elsewhere.Classes),
            };
        if (given is not { OfContract: { } contract } || enquiry.StatedClass is not { } named)
            yield break;
        if (given is not UseClassOfContract)
        {
            // Where the piece stands was said, or settled by its name: no code need be asked.
            if (trace.UseClasses is { Count: > 0 } use && !use.Intersect(contract.Classes).Any())
                yield return new ContractForOtherUse(named, contract, use, By: null);
        }
        else if (PutElsewhere(trace, contract.Classes, others) is { } put)
            yield return new ContractForOtherUse(named, contract, put.Classes, new(put.Name, put.RulebookTitle));
    }

    private sealed record Placed(
        string Name,
        IReadOnlyList<UseClass> Classes,
        UseClassDemand? Code,
        string? RulebookTitle
    );

    /// <summary>Where the component belongs, or what goes by its name; null where that is among the classes, or nobody knows it.</summary>
    private static Placed? PutElsewhere(Trace trace, IReadOnlyList<UseClass> classes, IEnumerable<Rulebook> others)
    {
        var enquiry = trace.Enquiry;
        // Codes differ: where the governing one is silent, only what all that speak agree on is worth a remark.
        List<Trace> speaking = CodesClass(trace) is not null
            ? [trace]
            : [.. others.Select(other => other.Answer(enquiry).Trace).Where(other => CodesClass(other) is not null)];
        if (speaking.Exists(code => CodesClass(code)!.Classes.Intersect(classes).Any()))
            return null;
        if (enquiry.Component is { } component && speaking is [var first, ..])
            return new(component.Name, CodesClass(first)!.Classes, CodesClass(first), first.RulebookTitle);
        return
            enquiry.CalledAs is { } name
            && name.Exposure.UseClass() is { NextQuestion: null, Classes: var usual }
            && !usual.Intersect(classes).Any()
            ? new(name.Name, usual, null, null)
            : null;
    }

    private static IEnumerable<Discrepancy> OfUse(Trace trace)
    {
        var enquiry = trace.Enquiry;
        if (
            enquiry is { Component: { } component, IsCoatedByClass: null, Exposure.IsCoated: { } said }
            && CodesClass(trace) is { } code
            && code.IsCoated == !said
            && (enquiry.UseClasses.Count == 0 || code.Classes.Intersect(enquiry.UseClasses).Any())
        )
            yield return new CoatingAgainstCode(component, code, said);
        if (enquiry.Exposure.IsCoated is { } isCoated && enquiry.IsCoatedByClass == !isCoated)
            yield return new CoatingAgainstClass(isCoated);
        if (
            enquiry.Component is { } lasting
            && trace.Step(Subject.Life)?.Finding is GivenLife { Life: var asked, Usual.Life: var usual }
            && asked.Years > usual.Years
        )
            yield return new LifeBeyondUsual(lasting, asked, usual);
    }

    // Where the governing code has no usual life, and demands the same for any, others' and that of the name show what is long.
    private static IEnumerable<Discrepancy> OfLife(Trace trace, IEnumerable<Rulebook> others)
    {
        if (trace.Step(Subject.Life)?.Finding is not GivenLife { Life: var asked, Usual: null } || TurnsOnLife(trace))
            yield break;
        var enquiry = trace.Enquiry;
        var longest = others
            .Select(other => other.Answer(enquiry).Trace)
            .Select(other =>
                (Life: (other.Step(Subject.Life)?.Finding as GivenLife)?.Usual?.Life, By: (string?)other.RulebookTitle)
            )
            .Append((Life: enquiry.CalledAs?.Life?.Value, By: (string?)null))
            .Where(each => each.Life is not null)
            .OrderByDescending(each => each.Life!.Value.Years)
            .FirstOrDefault();
        if (
            longest is { Life: { } usual, By: var by }
            && asked.Years > usual.Years
            && (enquiry.CalledAs?.Name ?? enquiry.Component?.Name) is { } name
        )
            yield return new LifeNotOfCode(name, asked, usual, by, trace.RulebookTitle);
    }

    // A row that asks for a life holds because of the one asked for, or fails on it alone.
    private static bool TurnsOnLife(Trace trace) =>
        trace.Steps.Any(step =>
            step.Matched.Any(row => row.When.Any(condition => condition.Field == Field.Life))
            || step.NearMisses.Any(miss => miss.Field == Field.Life)
        );

    private static IEnumerable<Discrepancy> OfPiece(Trace trace)
    {
        var enquiry = trace.Enquiry;
        if (
            trace.Step(Subject.Moisture)?.Finding is Settled { Demand: MoistureLimit { MaxPercent: var most } }
            && enquiry.MoisturePercent is { } moisture
            && moisture > most
        )
            yield return new TooMoist(moisture, most);
        if (enquiry is { FormOrFromSection: TimberForm.Round, HasExposedHeartwood: true })
            yield return new HeartwoodOnRound(enquiry.Section);
    }
}
