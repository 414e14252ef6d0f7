using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>Two facts of an enquiry that do not go together, or hardly. It decides nothing: a person clears it up.</summary>
public abstract record Discrepancy
{
    private protected Discrepancy() { }
}

/// <summary>Two use classes are given for the piece, and it cannot be in both.</summary>
/// <param name="Answering">That for which the answer is.</param>
/// <param name="Against">The other.</param>
public sealed record UseClassesDiffer(UseClassGiven Answering, UseClassGiven Against) : Discrepancy
{
    /// <summary>The one that the contract's class is for; null where neither is.</summary>
    public UseClassByContract? Contract => Answering as UseClassByContract ?? Against as UseClassByContract;

    /// <summary>The one that is said last: the other than the contract's where one is, otherwise that against which the answering one stands.</summary>
    public UseClassGiven Other => Answering is UseClassByContract || Contract is null ? Against : Answering;

    /// <summary>True where the piece is in a harsher use than that which the contract's class is for.</summary>
    public bool IsContractTooWeak => Contract is { } contract && Other.Classes.Min() > contract.Classes.Max();

    /// <summary>True where the code answers by such a class of the contract: what the harsher use asks for is then in no demand.</summary>
    public bool IsUseLeftOut => IsContractTooWeak && Contract!.IsOfCode;

    /// <summary>True where nothing can be ordered until it is cleared up: the contract's class is too weak, or the answer is for its use and not for that of the component.</summary>
    public bool HoldsUpOrder => Answering is UseClassByContract || IsUseLeftOut;
}

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

    private static IEnumerable<UseClassesDiffer> OfClass(Trace trace, IEnumerable<Rulebook> others) =>
        trace.UseClassGiven is { } answering
            ? Beside(answering, trace, others)
                .Where(answering.Excludes)
                .Select(against => new UseClassesDiffer(answering, against))
            : [];

    // Whatever else gives the piece a use class than what the answer is for.
    private static IEnumerable<UseClassGiven> Beside(UseClassGiven answering, Trace trace, IEnumerable<Rulebook> others)
    {
        var enquiry = trace.Enquiry;
        if (answering is not UseClassByContract && ForContract(trace, others) is { } contract)
            yield return contract;
        if (
            answering is not (UseClassByPlace or UseClassByName)
            && enquiry.Exposure.SaysWhere
            && new UseClassByPlace(enquiry.Exposure.UseClass().Classes) is var place
            && !(answering is UseClassByCode && IsWhereItUsuallyStands(enquiry.CalledAs, place))
        )
            yield return place;
        if (answering is UseClassByCode)
            yield break;
        var code = enquiry.Component is null
            ? null
            : trace.UseClassOfComponent ?? (answering is UseClassByName ? null : OfOthers(answering, enquiry, others));
        if (code is not null)
            yield return code;
        if (answering is not UseClassByName && OfName(enquiry.CalledAs, code) is { } name)
            yield return name;
    }

    // A code may put a part in a wetter class than its place: that it stands where such parts stand is no contradiction.
    private static bool IsWhereItUsuallyStands(ComponentName? name, UseClassByPlace place) =>
        name?.Exposure.UseClass().Classes is { Count: > 0 } usual && usual.All(place.Classes.Contains);

    private static UseClassByContract? ForContract(Trace trace, IEnumerable<Rulebook> others)
    {
        var ofCode = (trace.Step(Subject.UseClass)?.Finding as Given)?.OfContract;
        return (ofCode ?? ContractClass.UseOf(trace.Enquiry, others)) is { } use
            ? new(trace.Enquiry.StatedClass!, use, IsOfCode: ofCode is not null)
            : null;
    }

    // Codes differ: where the governing one is silent, only what all that speak agree on is worth a remark.
    private static UseClassByCode? OfOthers(UseClassGiven answering, Enquiry enquiry, IEnumerable<Rulebook> others)
    {
        List<UseClassByCode> speaking =
        [
            .. others.Select(other => other.Answer(enquiry).Trace.UseClassOfComponent).OfType<UseClassByCode>(),
        ];
        return speaking.Find(code => !answering.Excludes(code)) ?? speaking.FirstOrDefault();
    }

    // A name that settles where it stands speaks where no code does, and where it is a wetter place than the code has for the component in general.
    private static UseClassByName? OfName(ComponentName? name, UseClassByCode? code) =>
        name?.Exposure.UseClass() is { NextQuestion: null, Classes: var usual }
        && (code is null || (name.Name != code.Component && usual.Min() > code.Classes.Max()))
            ? new(name.Name, usual)
            : null;

    private static IEnumerable<Discrepancy> OfUse(Trace trace)
    {
        var enquiry = trace.Enquiry;
        if (
            enquiry is { Component: { } component, IsCoatedByClass: null, Exposure.IsCoated: { } said }
            && trace.UseClassOfComponent is { Code: var code }
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
