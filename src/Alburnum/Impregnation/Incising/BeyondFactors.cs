namespace Alburnum.Impregnation.Incising;

/// <summary>Why a design code's factors do not hold for a pattern: strength must then be shown by test, or by the section less the cuts.</summary>
public abstract record BeyondFactors
{
    private protected BeyondFactors() { }
}

/// <summary>The cuts are deeper than the factors hold for.</summary>
/// <param name="Mm">Depth of the cuts, mm.</param>
/// <param name="GreatestMm">Depth that the factors hold up to, mm.</param>
public sealed record CutsTooDeep(double Mm, double GreatestMm) : BeyondFactors;

/// <summary>The cuts are longer than the factors hold for.</summary>
/// <param name="Mm">Length of the cuts, mm.</param>
/// <param name="GreatestMm">Length that the factors hold up to, mm.</param>
public sealed record CutsTooLong(double Mm, double GreatestMm) : BeyondFactors;

/// <summary>There are more cuts than the factors hold for.</summary>
/// <param name="PerM2">Cuts to the m² of face.</param>
/// <param name="GreatestPerM2">Cuts to the m² that the factors hold up to.</param>
public sealed record CutsTooDense(double PerM2, double GreatestPerM2) : BeyondFactors;
