namespace Alburnum.Penetration;

/// <summary>Which depth stands for a zone where a rule asks for the whole of it. Always named beside the verdict.</summary>
public enum DepthReading
{
    /// <summary>The least depth of all positions read.</summary>
    Minimum,

    /// <summary>The depth that 95 % of the positions reach: forgives a speck, hides a narrow gap.</summary>
    FifthPercentile,
}
