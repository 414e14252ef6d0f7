namespace Alburnum.Impregnation.Sorbing;

/// <summary>How much product the walls of wood take up from a solution, by its strength (Langmuir 1918).</summary>
/// <remarks>
/// q = K·c/(1 + K·c/Q): at small strength K times the strength, never more than Q. Without a limit it is a plain distribution coefficient; without a
/// coefficient the walls fill on contact and give nothing back.
/// </remarks>
public sealed record Sorption
{
    /// <summary>Checks that at least one of the two is known.</summary>
    /// <param name="litresPerKg">K: solution whose product a kilogram of oven-dry wood takes up at small strength, L/kg. Above 0; null where the walls fill on contact.</param>
    /// <param name="mostGPerKg">Q: most product that the walls take up, g/kg of oven-dry wood. Above 0; null where no limit is known.</param>
    /// <exception cref="ArgumentException">Neither is given.</exception>
    public Sorption(double? litresPerKg, double? mostGPerKg)
    {
        if (litresPerKg is null && mostGPerKg is null)
            throw new ArgumentException("A coefficient, a limit or both.", nameof(litresPerKg));
        LitresPerKg = litresPerKg is { } k ? Require.Positive(k, "L/kg") : null;
        MostGPerKg = mostGPerKg is { } q ? Require.Positive(q, "g/kg") : null;
    }

    /// <summary>What is known of it; null where nothing is.</summary>
    /// <param name="litresPerKg">K, L/kg; null where nobody said.</param>
    /// <param name="mostGPerKg">Q, g/kg; null likewise.</param>
    public static Sorption? Known(double? litresPerKg, double? mostGPerKg) =>
        litresPerKg is null && mostGPerKg is null ? null : new(litresPerKg, mostGPerKg);

    /// <summary>Solution whose product a kilogram of oven-dry wood takes up at small strength, L/kg; null where the walls fill on contact.</summary>
    public double? LitresPerKg { get; }

    /// <summary>Most product that the walls take up, g/kg of oven-dry wood; null where no limit is known.</summary>
    public double? MostGPerKg { get; }

    /// <summary>The same beside the cavities of one wood and at the strength of one solution.</summary>
    /// <param name="strengthKgPerM3">Product in the solution, kg/m³. Above 0.</param>
    /// <param name="woodKgPerM3">Oven-dry wood in the volume, kg/m³. Above 0.</param>
    /// <param name="voidFraction">Share of the volume that is cavity, above 0, at most 1.</param>
    public WallShare In(double strengthKgPerM3, double woodKgPerM3, double voidFraction)
    {
        Require.Positive(strengthKgPerM3, "kg/m³");
        Require.Positive(woodKgPerM3, "kg/m³");
        Require.InRange(voidFraction, 1e-3, 1, "(share)");
        var woodToVoids = woodKgPerM3 / voidFraction / 1000;
        if (MostGPerKg is not { } most)
            return new(LitresPerKg!.Value * woodToVoids, 0);
        if (LitresPerKg is not { } litres)
            return new(most * woodToVoids / strengthKgPerM3, double.PositiveInfinity);
        var bend = litres * strengthKgPerM3 / most;
        return new(litres * woodToVoids / (1 + bend), bend);
    }
}

/// <summary>Product in the walls that are in balance with solution at a strength, as a share of what voids full of the solution that came in hold.</summary>
/// <param name="AtFull">That share at full strength. 0 or more.</param>
/// <param name="Bend">Full strength over the strength that fills half of the walls: 0 for a plain distribution coefficient, infinite where the walls fill on contact.</param>
public readonly record struct WallShare(double AtFull, double Bend)
{
    // As good as on contact: the walls keep all but 3e-5 of what they took.
    private const double OnContact = 1e9;

    private double Bent => Math.Min(Bend, OnContact);

    /// <summary>Product in the walls at a strength.</summary>
    /// <param name="strength">Share of full strength, 0 to 1.</param>
    public double At(double strength) => AtFull * (1 + Bent) * strength / (1 + Bent * strength);

    /// <summary>How it rises with the strength there.</summary>
    /// <param name="strength">Share of full strength, 0 to 1.</param>
    public double SlopeAt(double strength) => AtFull * (1 + Bent) / Math.Pow(1 + Bent * strength, 2);

    /// <summary>The strength at which it rises so; 1 where it rises less everywhere, 0 where more.</summary>
    /// <param name="slope">The slope, 0 or more.</param>
    public double StrengthAtSlope(double slope)
    {
        if (slope <= SlopeAt(1))
            return 1;
        return slope >= SlopeAt(0) ? 0 : Math.Clamp((Math.Sqrt(SlopeAt(0) / slope) - 1) / Bent, 0, 1);
    }
}
