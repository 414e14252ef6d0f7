namespace Alburnum.Acceptance;

/// <summary>What a sample is drawn from, which decides the distribution of its failures.</summary>
public abstract record Supply
{
    private protected Supply() { }

    /// <summary>Probability of exactly k failures in a sample of n.</summary>
    public abstract double Probability(int k, int n, double failingShare);

    /// <summary>Probability of at most k failures in a sample of n.</summary>
    public abstract double AtMost(int k, int n, double failingShare);
}

/// <summary>One lot of known size: the exact hypergeometric ("type A") characteristic.</summary>
/// <param name="Pieces">Pieces in the lot, 1 or more. A share is rounded to the nearest whole number of pieces.</param>
public sealed record FiniteLot(int Pieces) : Supply
{
    /// <inheritdoc/>
    public override double Probability(int k, int n, double failingShare) =>
        Hypergeometric.Probability(k, Pieces, Failing(failingShare), n);

    /// <inheritdoc/>
    public override double AtMost(int k, int n, double failingShare) =>
        Hypergeometric.AtMost(k, Pieces, Failing(failingShare), n);

    /// <summary>Failing pieces in the lot at a share.</summary>
    public int Failing(double failingShare) =>
        (int)Math.Round(Require.InRange(failingShare, 0, 1, "(share)") * Pieces, MidpointRounding.AwayFromZero);
}

/// <summary>A process that makes lot after lot: the binomial ("type B") characteristic.</summary>
public sealed record SteadyProcess : Supply
{
    /// <inheritdoc/>
    public override double Probability(int k, int n, double failingShare) => Binomial.Probability(k, n, failingShare);

    /// <inheritdoc/>
    public override double AtMost(int k, int n, double failingShare) => Binomial.AtMost(k, n, failingShare);
}

/// <summary>Defects counted, several of them possible on one piece: the Poisson characteristic.</summary>
/// <remarks>What the attribute tables mean above AQL 10: defects per hundred units, not per cent of pieces.</remarks>
public sealed record DefectsPerPiece : Supply
{
    /// <inheritdoc/>
    public override double Probability(int k, int n, double failingShare) =>
        Poisson.AtMost(k, n * failingShare) - Poisson.AtMost(k - 1, n * failingShare);

    /// <inheritdoc/>
    public override double AtMost(int k, int n, double failingShare) => Poisson.AtMost(k, n * failingShare);
}
