namespace Alburnum.Penetration;

/// <summary>What may be said of a piece or a batch against its requirement.</summary>
public enum Verdict
{
    /// <summary>The requirement is met, beyond the guard band.</summary>
    Conforms,

    /// <summary>The requirement is missed, beyond the guard band.</summary>
    DoesNotConform,

    /// <summary>The evidence does not decide.</summary>
    Undecided,
}

/// <summary>How sure one must be before saying yes or no.</summary>
/// <remarks>The guard-band idea of JCGM 106:2012, clause 8: decide by the probability of conformity, not by the bare reading.</remarks>
public sealed record DecisionRule
{
    /// <summary>Checks both limits.</summary>
    /// <param name="conformsFrom">Least probability of conformity for "conforms", 0.5 to 1.</param>
    /// <param name="failsUpTo">Greatest probability of conformity for "does not conform", 0 to 0.5.</param>
    public DecisionRule(double conformsFrom, double failsUpTo)
    {
        ConformsFrom = Require.InRange(conformsFrom, 0.5, 1, "(probability)");
        FailsUpTo = Require.InRange(failsUpTo, 0, 0.5, "(probability)");
    }

    /// <summary>Conforms from 95 %, does not conform up to 5 %.</summary>
    public static DecisionRule Usual { get; } = new(0.95, 0.05);

    /// <summary>Least probability of conformity for "conforms".</summary>
    public double ConformsFrom { get; }

    /// <summary>Greatest probability of conformity for "does not conform".</summary>
    public double FailsUpTo { get; }

    /// <summary>The verdict that a probability of conformity calls for.</summary>
    /// <param name="probability">Probability that the requirement is met, 0 to 1.</param>
    public Verdict Decide(double probability)
    {
        Require.InRange(probability, 0, 1, "(probability)");
        if (probability >= ConformsFrom)
            return Verdict.Conforms;
        return probability <= FailsUpTo ? Verdict.DoesNotConform : Verdict.Undecided;
    }
}

/// <summary>A verdict with the probability that the requirement is met, and the reasons.</summary>
/// <param name="Verdict">What may be said.</param>
/// <param name="Probability">Probability that the requirement is met; null where nothing could be determined.</param>
/// <param name="Reasons">What the verdict rests on.</param>
public sealed record Judgement(Verdict Verdict, ProbabilityRange? Probability, IReadOnlyList<Reason> Reasons)
{
    /// <summary>How far the one depth that decides lies above what is required, mm; null where it does not turn on one depth.</summary>
    public Estimate? MarginMm { get; init; }
}
