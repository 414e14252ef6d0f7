namespace Alburnum.Impregnation.Prediction;

/// <summary>One way from a face inwards to where the fronts meet.</summary>
/// <param name="Scaled">κ = k/(φL²), in SI units. Above 0.</param>
/// <param name="Narrowing">Share of its breadth that the way has lost at its end, 0 to 1.</param>
/// <param name="Mm">Its length L, mm.</param>
public readonly record struct SingleWay(double Scaled, double Narrowing, double Mm)
{
    /// <summary>Length of a way that answers for those of every length, mm.</summary>
    public const double AnyMm = 50;
}
