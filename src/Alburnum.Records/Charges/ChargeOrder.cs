using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
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
    /// <summary>The file that it is written in, for messages.</summary>
    public required string File { get; init; }

    /// <summary>What the charge is.</summary>
    public required string Name { get; init; }

    /// <summary>The timber.</summary>
    public required Species Species { get; init; }

    /// <summary>What is on the bogie; one row or more.</summary>
    public required IReadOnlyList<ChargePieces> Pieces { get; init; }

    /// <summary>Radius of the heartwood, mm; null where not said.</summary>
    public double? HeartRadiusMm { get; init; }

    /// <summary>Width of the sapwood, mm; null where not said.</summary>
    public double? SapwoodMm { get; init; }

    /// <summary>Where in the log the pieces were sawn; null where not said.</summary>
    public SawingPosition? Position { get; init; }

    /// <summary>Wood of one kind throughout; null where the log decides.</summary>
    public WoodThroughout? All { get; init; }

    /// <summary>Moisture content now, %.</summary>
    public required double MoisturePercent { get; init; }

    /// <summary>Moisture content allowed before treatment, %; null where none is set.</summary>
    public double? MoistureLimitPercent { get; init; }

    /// <summary>Temperature of the air in which the timber would dry, °C.</summary>
    public required double DryingCelsius { get; init; }

    /// <summary>Relative humidity of that air, 0 to 1.</summary>
    public required double DryingHumidity { get; init; }

    /// <summary>Name of the schedule.</summary>
    public required string Schedule { get; init; }

    /// <summary>Name of the incising pattern; null where the timber is plain.</summary>
    public string? Incising { get; init; }

    /// <summary>Required depth, mm.</summary>
    public required double DepthMm { get; init; }

    /// <summary>Depth of the analytical zone, mm; null to take the required depth.</summary>
    public double? ZoneMm { get; init; }

    /// <summary>Product required in the zone, kg/m³.</summary>
    public required double RetentionKgPerM3 { get; init; }

    /// <summary>Density of the working solution, kg/m³.</summary>
    public required double SolutionDensityKgPerM3 { get; init; }

    /// <summary>What was read at the vessel; null before the charge is run.</summary>
    public ChargeReadings? Readings { get; init; }

    /// <summary>Volume of the timber, m³.</summary>
    public double VolumeM3 => Pieces.Sum(each => each.VolumeM3);

    /// <summary>Lateral surface of the timber, m².</summary>
    public double SurfaceM2 => Pieces.Sum(each => each.SurfaceM2);
}
