namespace Alburnum.Requirements;

/// <summary>How an enquiry sits against one condition, or against all conditions of a row.</summary>
public enum Fit
{
    /// <summary>It does not hold.</summary>
    No,

    /// <summary>It holds or not, depending on something that is not known.</summary>
    Unsure,

    /// <summary>It holds.</summary>
    Yes,
}

/// <summary>One condition of a rulebook row, on one field.</summary>
/// <param name="Field">The field it asks about.</param>
public abstract record Condition(Field Field)
{
    internal abstract Fit Of(in Known known);

    /// <summary>True where one value satisfies both.</summary>
    /// <param name="other">A condition on the same field.</param>
    internal abstract bool MayHoldWith(Condition other);
}

/// <summary>The field has one of some values.</summary>
/// <param name="Field">A field of words.</param>
/// <param name="Allowed">Values that satisfy the condition, as written in the rulebook. Never empty.</param>
public sealed record OneOf(Field Field, IReadOnlyList<string> Allowed) : Condition(Field)
{
    /// <inheritdoc/>
    public bool Equals(OneOf? other) =>
        other is not null && Field == other.Field && Allowed.SequenceEqual(other.Allowed, StringComparer.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => Allowed.Aggregate((int)Field, HashCode.Combine);

    internal override Fit Of(in Known known)
    {
        if (known.Words is not { } words)
            return Fit.Unsure;
        var hits = 0;
        // By index: this is the innermost loop of an answer, and an enumerator would be allocated each time.
        for (var i = 0; i < words.Count; i++)
        {
            if (Allows(words[i]))
                hits++;
        }
        if (hits == 0)
            return Fit.No;
        return known.AnyWillDo || hits == words.Count ? Fit.Yes : Fit.Unsure;
    }

    internal override bool MayHoldWith(Condition other) => other is OneOf words && words.Allowed.Any(Allows);

    private bool Allows(string word)
    {
        for (var i = 0; i < Allowed.Count; i++)
        {
            if (string.Equals(Allowed[i], word, StringComparison.OrdinalIgnoreCase))
                return true;
        }
        return false;
    }
}

/// <summary>The field is a number within a range. Both ends are finite or infinite; each is inside or outside.</summary>
/// <param name="Field">A field of numbers.</param>
/// <param name="Low">Lower end; negative infinity where open.</param>
/// <param name="IncludesLow">True where the lower end itself satisfies the condition.</param>
/// <param name="High">Upper end; positive infinity where open.</param>
/// <param name="IncludesHigh">True where the upper end itself satisfies the condition.</param>
public sealed record Between(Field Field, double Low, bool IncludesLow, double High, bool IncludesHigh)
    : Condition(Field)
{
    /// <summary>True where no number satisfies the condition.</summary>
    public bool IsEmpty => Low > High || (Low.Equals(High) && !(IncludesLow && IncludesHigh));

    /// <summary>True where the number satisfies the condition.</summary>
    public bool Contains(double value) =>
        (IncludesLow ? value >= Low : value > Low) && (IncludesHigh ? value <= High : value < High);

    internal override Fit Of(in Known known)
    {
        if (!known.IsKnown)
            return Fit.Unsure;
        var hasLow = Contains(known.Low);
        var hasHigh = Contains(known.High);
        if (hasLow && hasHigh)
            return Fit.Yes;
        var liesApart = known.High < Low || known.Low > High || (known.Low.Equals(known.High) && !hasLow);
        return liesApart || (!hasLow && !hasHigh && !Straddles(known)) ? Fit.No : Fit.Unsure;
    }

    internal override bool MayHoldWith(Condition other) =>
        other is Between range
        && !new Between(
            Field,
            Math.Max(Low, range.Low),
            (IncludesLow || Low < range.Low) && (range.IncludesLow || range.Low < Low),
            Math.Min(High, range.High),
            (IncludesHigh || High > range.High) && (range.IncludesHigh || range.High > High)
        ).IsEmpty;

    private bool Straddles(in Known known) =>
        known.Low <= Low && known.High >= High && known.Low < known.High && !IsEmpty;
}
