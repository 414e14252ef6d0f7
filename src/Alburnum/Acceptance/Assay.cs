using Alburnum.Assaying;
using Alburnum.Facts;

namespace Alburnum.Acceptance;

/// <summary>One analysis of preservative in the analytical zone, kg/m³.</summary>
public abstract record Assay
{
    private protected Assay(string sample) => Sample = sample;

    /// <summary>Number of the sample or composite on the laboratory's paper; empty where none is given.</summary>
    public string Sample { get; }

    /// <summary>The laboratory; empty where none is named. Assays of one laboratory share its calibration.</summary>
    public string Laboratory { get; init; } = "";

    /// <summary>Number of its report; empty where none is given.</summary>
    public string Report { get; init; } = "";

    /// <summary>Method of the analysis; empty where none is named.</summary>
    public string Method { get; init; } = "";

    /// <summary>Analyses that the result is the mean of, 1 or more.</summary>
    public int SubSamples { get; init; } = 1;

    /// <summary>Degrees of freedom of the uncertainty that the result has by itself, 1 or more; infinite where the laboratory states it.</summary>
    public double DegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>Parts of the product that do not stand to each other as its formula says; empty where they do, or where no product is counted.</summary>
    public IReadOnlyList<PartOffFormula> PartsOffFormula { get; init; } = [];

    /// <summary>Parts of the product that were not analysed, taken to be there as its formula has them; empty where all were, or where no product is counted.</summary>
    public IReadOnlyList<Compound> PartsNotAnalysed { get; init; } = [];

    /// <summary>The figures as the laboratory wrote them; empty where they were in kg/m³ of what is required.</summary>
    public string AsReported { get; init; } = "";

    /// <summary>The zone that was cut and analysed; null where nobody says.</summary>
    public AssayedZone? Zone { get; init; }

    /// <summary>Standard uncertainty that all assays of the case have alike, of whatever laboratory: that of the density of the zone, kg/m³. Part of the result's own.</summary>
    public double SharedKgPerM3 { get; init; }
}

/// <summary>The part of a section that was cut out for an analysis.</summary>
/// <param name="DepthMm">How deep it is, mm. Above 0; null for all the sapwood.</param>
public sealed record AssayedZone(double? DepthMm);

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
