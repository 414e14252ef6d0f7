namespace Alburnum.Penetration;

/// <summary>Between which bounds a probability lies, as far as the evidence tells.</summary>
/// <remarks>
/// The bounds lie apart where reading errors may be independent or common to all readings, and where something was not read or not
/// stated that could be either way.
/// </remarks>
public readonly record struct ProbabilityRange
{
    /// <summary>Checks both bounds.</summary>
    /// <param name="low">Least probability that the evidence allows, 0 to <paramref name="high"/>.</param>
    /// <param name="high">Greatest probability that the evidence allows, at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bound outside 0 to 1, or the lower above the upper.</exception>
    public ProbabilityRange(double low, double high)
    {
        High = Require.InRange(high, 0, 1, "(probability)");
        Low = Require.InRange(low, 0, high, "(probability)");
        Middle = (low + high) / 2;
    }

    /// <summary>Least probability that the evidence allows, 0 to 1.</summary>
    public double Low { get; }

    /// <summary>Greatest probability that the evidence allows, 0 to 1.</summary>
    public double High { get; }

    /// <summary>The one figure that stands for the range where only one is shown: half way, unless the maker knows better.</summary>
    public double Middle
    {
        get;
        init => field = Require.InRange(value, 0, 1, "(probability)");
    }

    /// <summary>A probability that is known.</summary>
    /// <param name="probability">0 to 1.</param>
    public static ProbabilityRange Exactly(double probability) => new(probability, probability);

    /// <summary>The range between two probabilities, in either order.</summary>
    public static ProbabilityRange Between(double one, double other) => new(Math.Min(one, other), Math.Max(one, other));

    /// <summary>Both of two things whose errors are independent.</summary>
    public ProbabilityRange And(ProbabilityRange other) =>
        new(Low * other.Low, High * other.High) { Middle = Middle * other.Middle };
}
