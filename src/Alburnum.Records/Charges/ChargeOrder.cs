using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Sorbing;
using Alburnum.Timber;

namespace Alburnum.Records.Charges;

/// <summary>One size of piece in a charge.</summary>
/// <param name="Section">Size.</param>
/// <param name="LengthMm">Length, mm.</param>
/// <param name="Count">How many.</param>
public sealed record ChargePieces(Section Section, double LengthMm, int Count)
{
    /// <summary>Volume of all of them, m³.</summary>
    public double VolumeM3 => Section.AreaMm2 * 1e-6 * TogetherM;

    /// <summary>Lateral surface of all of them, m².</summary>
    public double SurfaceM2 => Section.PerimeterMm / 1000 * TogetherM;

    private double TogetherM => LengthMm / 1000 * Count;
}

/// <summary>A charge as a treater writes it down.</summary>
public sealed record ChargeOrder
{
    /// <summary>What the charge is.</summary>
    public required string Name { get; init; }

    /// <summary>The timber and how it is to be treated.</summary>
    public required TreatmentOrder Treatment { get; init; }

    /// <summary>What is on the bogie; one row or more.</summary>
    public required IReadOnlyList<ChargePieces> Pieces { get; init; }

    /// <summary>Moisture content allowed before treatment, %; null where none is set.</summary>
    public double? MoistureLimitPercent { get; init; }

    /// <summary>Temperature of the air in which the timber would dry, °C.</summary>
    public required double DryingCelsius { get; init; }

    /// <summary>Relative humidity of that air, 0 to 1.</summary>
    public required double DryingHumidity { get; init; }

    /// <summary>Product required in the zone, kg/m³.</summary>
    public required double RetentionKgPerM3 { get; init; }

    /// <summary>Density of the working solution, kg/m³.</summary>
    public required double SolutionDensityKgPerM3 { get; init; }

    /// <summary>Greatest strength that the label allows, % of product by mass; null where nobody said.</summary>
    public double? StrengthMostPercent { get; init; }

    /// <summary>What the walls of the timber take up; null where nobody knows.</summary>
    public Sorption? Sorption { get; init; }

    /// <summary>Solution in the tank before the charge, L; null where nobody said.</summary>
    public double? TankL { get; init; }

    /// <summary>What was read at the vessel; null before the charge is run.</summary>
    public ChargeReadings? Readings { get; init; }

    /// <summary>Volume of the timber, m³.</summary>
    public double VolumeM3 => Pieces.Sum(each => each.VolumeM3);

    /// <summary>Lateral surface of the timber, m².</summary>
    public double SurfaceM2 => Pieces.Sum(each => each.SurfaceM2);
}
