using Alburnum.Impregnation;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Charges;

/// <summary>Timber and how it is to be treated, as a treater writes it down in a charge file or in a case.</summary>
public sealed record TreatmentOrder
{
    /// <summary>The file that it is written in, for messages.</summary>
    public required string File { get; init; }

    /// <summary>Line of the block that it is written in, for messages; 0 where the whole file is meant.</summary>
    public int Line { get; init; }

    /// <summary>The timber.</summary>
    public required Species Species { get; init; }

    /// <summary>Radius of the heartwood, mm; null where not said.</summary>
    public double? HeartwoodRadiusMm { get; init; }

    /// <summary>Width of the sapwood, mm; null where not said.</summary>
    public double? SapwoodMm { get; init; }

    /// <summary>Where in the log the pieces were sawn; null where not said.</summary>
    public SawingPosition? Position { get; init; }

    /// <summary>Wood of one kind throughout; null where the log decides.</summary>
    public WoodThroughout? All { get; init; }

    /// <summary>Density at 12 % moisture, kg/m³; null to take the species' own.</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>Moisture content now, %.</summary>
    public required double MoisturePercent { get; init; }

    /// <summary>Name of the schedule.</summary>
    public required string Schedule { get; init; }

    /// <summary>Name of the incising pattern; null where the timber is plain.</summary>
    public string? Incising { get; init; }

    /// <summary>What the code of practice demands of a case's timber; null where it demands no depth, or there is no case.</summary>
    public DepthRule? Demand { get; init; }

    /// <summary>Required depth, mm; null where the code's demand stands in its place, or nothing says.</summary>
    public double? DepthMm { get; init; }

    /// <summary>Depth of the analytical zone, mm; null to take the required depth.</summary>
    public double? ZoneDepthMm { get; init; }
}
