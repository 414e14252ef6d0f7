namespace Alburnum.Flow.Equations;

/// <summary>The pressure at which volumes of air are counted.</summary>
internal static class StandardAir
{
    /// <summary>One atmosphere, Pa.</summary>
    public const double Pa = 101325;
}
