using Alburnum.Facts;

namespace Alburnum.Acceptance;

/// <summary>One analysis of preservative in the analytical zone, kg/m³.</summary>
public abstract record Assay
{
    private protected Assay(string sample) => Sample = sample;

    /// <summary>Number of the sample or composite on the laboratory's paper; empty where none is given.</summary>
    public string Sample { get; }
}

/// <summary>A result with its standard uncertainty.</summary>
public sealed record MeasuredAssay : Assay
{
    /// <summary>Keeps a result of 0 to 1000 kg/m³.</summary>
    public MeasuredAssay(Estimate kgPerM3, string sample = "")
        : base(sample)
    {
        Require.Within(kgPerM3.Value, Ranges.MeasuredRetentionKgPerM3);
        KgPerM3 = kgPerM3;
    }

    /// <summary>Result, kg/m³.</summary>
    public Estimate KgPerM3 { get; }
}

/// <summary>Nothing was found down to the method's detection limit.</summary>
public sealed record BelowDetection : Assay
{
    /// <summary>Checks the limit.</summary>
    /// <param name="limitKgPerM3">Detection limit, kg/m³. Above 0.</param>
    /// <param name="sample">Number of the sample.</param>
    public BelowDetection(double limitKgPerM3, string sample = "")
        : base(sample) => LimitKgPerM3 = Require.Positive(limitKgPerM3, "kg/m³");

    /// <summary>Detection limit, kg/m³.</summary>
    public double LimitKgPerM3 { get; }
}
