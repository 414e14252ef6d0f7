using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance;

/// <summary>The Bayesian reading of a sample: what to believe of the pieces that were not cut.</summary>
/// <remarks>
/// A beta belief about the failing share, updated by the pieces cut; the failures among the rest of a lot then follow a
/// beta-binomial. The default belief before cutting is Jeffreys' (½, ½), which leans neither way.
/// </remarks>
public sealed record BetaBinomial
{
    private readonly double _failing;
    private readonly double _conforming;

    /// <summary>The belief after cutting.</summary>
    /// <param name="failures">Failures among the pieces cut, 0 to the pieces cut.</param>
    /// <param name="cut">Pieces cut, 0 or more.</param>
    /// <param name="priorFailing">Weight of failing pieces in the belief before cutting, above 0.</param>
    /// <param name="priorConforming">Weight of conforming pieces in the belief before cutting, above 0.</param>
    public BetaBinomial(int failures, int cut, double priorFailing = 0.5, double priorConforming = 0.5)
    {
        Require.InRange(cut, 0, int.MaxValue, "pieces");
        Failures = Require.InRange(failures, 0, cut, "pieces");
        Cut = cut;
        _failing = Require.Positive(priorFailing, "pieces") + failures;
        _conforming = Require.Positive(priorConforming, "pieces") + cut - failures;
    }

    /// <summary>Failures among the pieces cut.</summary>
    public int Failures { get; }

    /// <summary>Pieces cut.</summary>
    public int Cut { get; }

    /// <summary>Conforming share of the supply that is exceeded with a given probability.</summary>
    /// <param name="probability">Above 0, below 1.</param>
    public double ConformingShareExceeded(double probability) =>
        Beta.InvCDF(_conforming, _failing, 1 - Require.InRange(probability, 1e-12, 1 - 1e-12, "(probability)"));

    /// <summary>Probability that at least a share of the supply conforms.</summary>
    /// <param name="conformingShare">Required share, 0 to 1.</param>
    public double SupplyConforms(double conformingShare) =>
        1 - Beta.CDF(_conforming, _failing, Require.InRange(conformingShare, 0, 1, "(share)"));

    /// <summary>Probability of exactly k failures among pieces not yet cut.</summary>
    /// <param name="k">Failures.</param>
    /// <param name="uncut">Pieces not cut, 0 or more.</param>
    public double Probability(int k, int uncut)
    {
        Require.InRange(uncut, 0, int.MaxValue, "pieces");
        if (k < 0 || k > uncut)
            return 0;
        var choose =
            SpecialFunctions.GammaLn(uncut + 1.0)
            - SpecialFunctions.GammaLn(k + 1.0)
            - SpecialFunctions.GammaLn(uncut - k + 1.0);
        return Math.Exp(
            choose
                + SpecialFunctions.BetaLn(k + _failing, uncut - k + _conforming)
                - SpecialFunctions.BetaLn(_failing, _conforming)
        );
    }

    /// <summary>Probability that at least a share of the whole lot conforms, the pieces cut counted in.</summary>
    /// <param name="conformingShare">Required share, 0 to 1.</param>
    /// <param name="lotSize">Pieces in the lot, at least those cut.</param>
    public double LotConforms(double conformingShare, int lotSize)
    {
        Require.InRange(lotSize, Cut, int.MaxValue, "pieces");
        Require.InRange(conformingShare, 0, 1, "(share)");
        var mayFail = (int)Math.Floor((1 - conformingShare) * lotSize + 1e-9) - Failures;
        return Math.Min(
            1,
            Enumerable
                .Range(0, Math.Max(0, Math.Min(mayFail, lotSize - Cut) + 1))
                .Sum(k => Probability(k, lotSize - Cut))
        );
    }
}
