namespace Alburnum;

/// <summary>A measured or predicted value with its standard uncertainty, in the unit that the holder's name ends in.</summary>
/// <remarks>Terms as in JCGM 100 (GUM): the standard uncertainty is one standard deviation of what the value could be.</remarks>
public readonly record struct Estimate
{
    /// <summary>Keeps a finite value with a finite uncertainty of 0 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or a negative uncertainty.</exception>
    public Estimate(double value, double standardUncertainty)
    {
        Value = Require.InRange(value, double.MinValue, double.MaxValue, "");
        StandardUncertainty = Require.InRange(standardUncertainty, 0, double.MaxValue, "");
    }

    /// <summary>The value.</summary>
    public double Value { get; }

    /// <summary>One standard deviation of what the value could be.</summary>
    public double StandardUncertainty { get; }
}
