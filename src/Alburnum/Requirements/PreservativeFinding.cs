namespace Alburnum.Requirements;

/// <summary>What speaks against a preservative where a piece stands, or restricts it.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="IsRuledOut">True where it will not do there, whatever the amount.</param>
public abstract record PreservativeFinding(Preservative Preservative, bool IsRuledOut)
{
    /// <summary>What speaks against a preservative, then what the law says of it.</summary>
    /// <param name="preservative">The preservative.</param>
    /// <param name="answer">What the code demands, and where the piece stands.</param>
    /// <param name="rulebook">The code, which tells whose law governs.</param>
    public static IReadOnlyList<PreservativeFinding> Of(Preservative preservative, Answer answer, Rulebook rulebook)
    {
        ArgumentNullException.ThrowIfNull(preservative);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(rulebook);
        var enquiry = answer.Trace.Enquiry;
        var laws = preservative.Restrictions;
        return
        [
            .. Against(preservative, answer),
            .. preservative
                .NotForParts.Where(parts => parts.IsAbout(enquiry))
                .Select(parts => new NotForPart(preservative, parts)),
            .. laws.Select(law => new RestrictedByLaw(
                preservative,
                law,
                law.ForbidsTreating && rulebook.IsOf(law.Where) && law.IsAbout(enquiry)
            )),
            .. laws.Any(law => law.Where.Count > 0) && !laws.Any(law => rulebook.IsOf(law.Where))
                ? (PreservativeFinding[])[new LawNotKnown(preservative, rulebook)]
                : [],
        ];
    }

    private static IEnumerable<PreservativeFinding> Against(Preservative preservative, Answer answer)
    {
        var classes = answer.Trace.UseClasses;
        bool Protects(Agent agent) => preservative.ProtectsAgainst.Contains(agent);
        // What is open about the use class must not hide what holds in every class that is possible, nor condemn for one that may not hold.
        bool All(Func<UseClass, bool> holds) => classes.Count > 0 && classes.All(holds);
        var isBeyond = preservative.UseClasses.Count > 0 && All(each => !preservative.UseClasses.Contains(each));
        var asksDepth = answer is Required { Requirement.Penetration: not NoDepth };

        if (preservative.ProtectsAgainst.Count == 0)
            yield return new ProtectsAgainstNothing(preservative);
        else if (!Protects(Agent.Decay) && All(each => each >= UseClass.Two))
            yield return new NoFungicide(preservative);
        if (preservative.IsRemedial && (isBeyond || asksDepth))
            yield return new OnlyForUpkeep(preservative);
        else if (isBeyond && !preservative.IsFixed && All(each => each >= UseClass.ThreeOne))
            yield return new WashesOut(preservative, classes);
        else if (isBeyond && All(each => each >= preservative.UseClasses.Max()))
            yield return new BeyondItsUse(preservative, classes);
        else if (Protects(Agent.Decay) && !Protects(Agent.SoftRot) && All(each => each >= UseClass.Four))
            yield return new NoGuardAgainstSoftRot(preservative, classes);
        if (preservative.NotIndoors is { } indoors && All(each => each <= UseClass.Two))
            yield return new NotForIndoors(preservative, indoors);
        if (All(each => each == UseClass.Five) && !Protects(Agent.MarineBorers))
            yield return new NoGuardAgainstBorers(preservative);
        if (preservative.IsForSurfaces && asksDepth)
            yield return new StaysOnSurface(preservative);
    }
}

/// <summary>It is no preservative.</summary>
/// <param name="Preservative">The preservative.</param>
public sealed record ProtectsAgainstNothing(Preservative Preservative) : PreservativeFinding(Preservative, true);

/// <summary>It does nothing against decay, in a class in which timber can decay.</summary>
/// <param name="Preservative">The preservative.</param>
public sealed record NoFungicide(Preservative Preservative) : PreservativeFinding(Preservative, true);

/// <summary>It is not fixed, and water leaches it out there.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="Classes">The use class, or those possible.</param>
public sealed record WashesOut(Preservative Preservative, IReadOnlyList<UseClass> Classes)
    : PreservativeFinding(Preservative, true);

/// <summary>It keeps up standing timber, and takes the place of no treatment.</summary>
/// <param name="Preservative">The preservative.</param>
public sealed record OnlyForUpkeep(Preservative Preservative) : PreservativeFinding(Preservative, true);

/// <summary>It protects against decay but not against soft rot, in the ground or in water.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="Classes">The use class, or those possible.</param>
public sealed record NoGuardAgainstSoftRot(Preservative Preservative, IReadOnlyList<UseClass> Classes)
    : PreservativeFinding(Preservative, true);

/// <summary>Wood treated with it is not used indoors.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="Restriction">Why, with its source.</param>
public sealed record NotForIndoors(Preservative Preservative, Restriction Restriction)
    : PreservativeFinding(Preservative, true);

/// <summary>Wood treated with it is not used for such a part.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="Restriction">Why, with its source.</param>
public sealed record NotForPart(Preservative Preservative, Restriction Restriction)
    : PreservativeFinding(Preservative, true);

/// <summary>The use class is beyond those that it is meant for.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="Classes">The use class, or those possible.</param>
public sealed record BeyondItsUse(Preservative Preservative, IReadOnlyList<UseClass> Classes)
    : PreservativeFinding(Preservative, true);

/// <summary>It does not protect against marine borers, in sea water.</summary>
/// <param name="Preservative">The preservative.</param>
public sealed record NoGuardAgainstBorers(Preservative Preservative) : PreservativeFinding(Preservative, true);

/// <summary>It is put on the surface, and the code asks for depth.</summary>
/// <param name="Preservative">The preservative.</param>
public sealed record StaysOnSurface(Preservative Preservative) : PreservativeFinding(Preservative, true);

/// <summary>The law restricts it.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="Restriction">What the law says.</param>
/// <param name="HoldsUpOrder">True where the piece may not be treated with it where the code is in force.</param>
public sealed record RestrictedByLaw(Preservative Preservative, Restriction Restriction, bool HoldsUpOrder)
    : PreservativeFinding(Preservative, false);

/// <summary>The law of other places restricts it, and that of the place where the code is in force is not known here.</summary>
/// <param name="Preservative">The preservative.</param>
/// <param name="Rulebook">The code.</param>
public sealed record LawNotKnown(Preservative Preservative, Rulebook Rulebook)
    : PreservativeFinding(Preservative, false);
