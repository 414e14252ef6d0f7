using MathNet.Numerics.Distributions;

namespace Alburnum.Measures;

/// <summary>A standard uncertainty, and how well it is known itself.</summary>
/// <param name="U">Standard uncertainty, in the result's unit. 0 or more.</param>
/// <param name="DegreesOfFreedom">Its degrees of freedom, above 0; infinite where it is taken as known (JCGM 100:2008, G.4.2 and G.4.3).</param>
public readonly record struct EvaluatedUncertainty(double U, double DegreesOfFreedom)
{
    /// <summary>Whether it is as good as known.</summary>
    public bool IsKnown => AsGoodAsKnown(DegreesOfFreedom);

    /// <summary>One that is taken as known.</summary>
    /// <param name="u">Standard uncertainty. 0 or more.</param>
    public static EvaluatedUncertainty Known(double u) => new(u, double.PositiveInfinity);

    /// <summary>That of the mean of some values, by their scatter: s/√n with n − 1 degrees of freedom (JCGM 100:2008, 4.2.3); 0 for one value, whose scatter is not known.</summary>
    /// <param name="values">The values. At least one.</param>
    public static EvaluatedUncertainty OfMean(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        Require.Positive(values.Count, "values");
        if (values.Count == 1)
            return Known(0);
        var (mean, freedom) = (values.Average(), values.Count - 1);
        return new(Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / freedom / values.Count), freedom);
    }

    /// <summary>What several independent causes bring about together, with the effective degrees of freedom of Welch and Satterthwaite (JCGM 100:2008, G.4.1).</summary>
    public static EvaluatedUncertainty Combine(params ReadOnlySpan<EvaluatedUncertainty> causes)
    {
        var (squares, fourths) = (0.0, 0.0);
        foreach (var (u, degreesOfFreedom) in causes)
        {
            squares += u * u;
            fourths += u * u * u * u / degreesOfFreedom;
        }
        return new(Math.Sqrt(squares), fourths > 0 ? squares * squares / fourths : double.PositiveInfinity);
    }

    /// <summary>Whether there are so many degrees of freedom that Student's distribution is the normal one to within 0.002 %.</summary>
    internal static bool AsGoodAsKnown(double degreesOfFreedom) => degreesOfFreedom > 1e4;

    /// <summary>Probability that the true value lies above a limit, by Student's distribution; by the normal one where the uncertainty is known.</summary>
    /// <param name="margin">The result less the limit, in the result's unit.</param>
    public double ProbabilityAbove(double margin) =>
        U > 0
            ? IsKnown
                ? Normal.CDF(0, 1, margin / U)
                : StudentT.CDF(0, 1, DegreesOfFreedom, margin / U)
            : margin >= 0
                ? 1
                : 0;
}
