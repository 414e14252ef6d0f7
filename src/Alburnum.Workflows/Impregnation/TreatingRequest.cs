using Alburnum.Acceptance;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Sorbing;
using Alburnum.Records.Charges;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

/// <summary>Where the pith lies as seen from a piece.</summary>
/// <param name="XMm">To the right of the section's middle, mm.</param>
/// <param name="YMm">Above the section's middle, mm.</param>
public sealed record PithPlace(double XMm, double YMm);

/// <summary>The wood, the schedule and the depth that a question about treating names: <see cref="TreatingQuestion"/> checks it and puts it together.</summary>
public sealed record TreatingRequest
{
    /// <summary>Moisture content that is taken where an option names none, %: below fibre saturation, as timber should be treated.</summary>
    public const double UsualMoisturePercent = 25;

    /// <summary>Name of the incising pattern that is taken where timber is said to be incised, and no more.</summary>
    public const string UsualIncising = "usual";

    /// <summary>Charge file that the request was written in, for refusals; null where it came from options.</summary>
    public string? File { get; init; }

    /// <summary>The timber.</summary>
    public required Species Species { get; init; }

    /// <summary>Size of the pieces.</summary>
    public required Section Section { get; init; }

    /// <summary>Wood of one kind throughout; null where the log decides.</summary>
    public WoodThroughout? All { get; init; }

    /// <summary>Radius of the heartwood around the pith, mm; null where nobody measured.</summary>
    public double? HeartwoodRadiusMm { get; init; }

    /// <summary>The pith, only with the radius of the heartwood; null for the middle of a round or sawn piece.</summary>
    public PithPlace? Pith { get; init; }

    /// <summary>Where in the log the piece was sawn; null where nobody said.</summary>
    public SawingPosition? Position { get; init; }

    /// <summary>Width of the sapwood, mm; null where nobody measured.</summary>
    public double? SapwoodMm { get; init; }

    /// <summary>Diameter of the log under bark, mm; null where nobody said.</summary>
    public double? LogDiameterMm { get; init; }

    /// <summary>Moisture content before treatment, %.</summary>
    public double MoisturePercent { get; init; } = UsualMoisturePercent;

    /// <summary>Density at 12 % moisture, kg/m³; null to take the species' own.</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>Name of the schedule.</summary>
    public string Schedule { get; init; } = TreatmentFields.Schedule.Default;

    /// <summary>The plant's own schedules, in place of the program's; null to take those.</summary>
    public IReadOnlyList<Fact<Schedule>>? OwnSchedules { get; init; }

    /// <summary>Peak pressure in place of the schedule's, kPa absolute; null to keep it.</summary>
    public double? PeakKPa { get; init; }

    /// <summary>Minutes at peak pressure in place of the schedule's; null to keep them.</summary>
    public double? PressureMinutes { get; init; }

    /// <summary>Temperature of the solution, °C.</summary>
    public double Celsius { get; init; } = TreatmentFields.Temperature.DefaultNumber;

    /// <summary>Temperature of the wood before treatment, °C.</summary>
    public double WoodCelsius { get; init; } = TreatmentFields.WoodTemperature.DefaultNumber;

    /// <summary>Name of the incising pattern; null where the timber is not incised.</summary>
    public string? Incising { get; init; }

    /// <summary>Required depth, mm; null where none is.</summary>
    public double? DepthMm { get; init; }

    /// <summary>What a code of practice demands, in place of a depth; null where there is no code.</summary>
    public DepthRule? Demand { get; init; }

    /// <summary>Where the depth counts.</summary>
    public WoodZone Zone { get; init; } = WoodZone.Lateral;

    /// <summary>True where all the sapwood must be penetrated, in place of a depth.</summary>
    public bool IsWholeSapwood { get; init; }

    /// <summary>Depth of the analytical zone, mm; null to take the required depth.</summary>
    public double? ZoneDepthMm { get; init; }

    /// <summary>Strength of the solution, % of product by mass; null where not given.</summary>
    public double? StrengthPercent { get; init; }

    /// <summary>What the walls of the timber take up; null where nobody knows.</summary>
    public Sorption? Sorption { get; init; }

    /// <summary>Sampling plan; null where none was given.</summary>
    public SingleSamplingPlan? Plan { get; init; }

    /// <summary>The request of a treatment as it was written in a file.</summary>
    /// <param name="order">The treatment.</param>
    /// <param name="section">Size of the pieces.</param>
    internal static TreatingRequest Of(TreatmentOrder order, Section section) =>
        new()
        {
            File = order.File,
            Species = order.Species,
            Section = section,
            HeartwoodRadiusMm = order.HeartwoodRadiusMm,
            SapwoodMm = order.SapwoodMm,
            Position = order.Position,
            All = order.All,
            DensityKgPerM3 = order.DensityKgPerM3,
            MoisturePercent = order.MoisturePercent,
            Schedule = order.Schedule,
            Incising = order.Incising,
            Demand = order.Demand,
            DepthMm = order.DepthMm,
            ZoneDepthMm = order.ZoneDepthMm,
        };
}
