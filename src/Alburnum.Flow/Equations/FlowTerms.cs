namespace Alburnum.Flow.Equations;

/// <summary>What the balances of liquid and air are counted in.</summary>
internal static class FlowTerms
{
    /// <summary>Pressure at which air volumes are counted, Pa.</summary>
    public const double ReferencePa = 101325;
}
