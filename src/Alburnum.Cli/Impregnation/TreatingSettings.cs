using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Impregnation;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>The wood, the schedule and the depth that every question about treating names.</summary>
internal class TreatingSettings : CommandSettings
{
    [CommandArgument(0, "<SPECIES>")]
    [Description("Species, by any of its names")]
    public required string Species { get; init; }

    [CommandArgument(1, "<SECTION>")]
    [Description("Size, such as \"100x100\" or \"round 120\"")]
    public required string Section { get; init; }

    [CommandOption("--sapwood <MM>")]
    [Description("Width of the sapwood, mm; default: the middle of the species' usual range")]
    public double? SapwoodMm { get; init; }

    [CommandOption("--log-diameter <MM>")]
    [Description("Diameter of the log under bark, mm; where optional, default: the smallest that holds the piece")]
    public double? LogDiameterMm { get; init; }

    [CommandOption("--moisture <PERCENT>")]
    [Description("Moisture content before treatment, %")]
    [DefaultValue(25.0)]
    public double MoisturePercent { get; init; }

    [CommandOption("--density <KGM3>")]
    [Description("Density at 12 % moisture, kg/m³; default: the species' own")]
    public double? DensityKgPerM3 { get; init; }

    [CommandOption("--schedule <NAME>")]
    [Description("Name of the schedule")]
    [DefaultValue("full cell")]
    public string Schedule { get; init; } = "full cell";

    [CommandOption("--schedules <FILE>")]
    [Description("The plant's own schedules, in the form of data/impregnation/schedules.yaml")]
    public string? SchedulesFile { get; init; }

    [CommandOption("--pressure <KPA>")]
    [Description("Peak pressure instead of the schedule's, kPa absolute")]
    public double? PeakKPa { get; init; }

    [CommandOption("--minutes <MIN>")]
    [Description("Minutes at peak pressure instead of the schedule's")]
    public double? PressureMinutes { get; init; }

    [CommandOption("--temperature <C>")]
    [Description("Temperature of the solution, °C")]
    [DefaultValue(20.0)]
    public double Celsius { get; init; }

    [CommandOption("--depth <MM>")]
    [Description("Required depth, mm")]
    public double? DepthMm { get; init; }

    [CommandOption("--in <ZONE>")]
    [Description("Where the depth is required: lateral, sapwood or heartwood")]
    [DefaultValue("lateral")]
    public string Zone { get; init; } = "lateral";

    [CommandOption("--whole-sapwood")]
    [Description("Require all the sapwood to be penetrated")]
    public bool WholeSapwood { get; init; }

    [CommandOption("--pieces <N>")]
    [Description("Pieces to draw; default: 10000, or 2000 for each pattern that incise tries")]
    public int? Pieces { get; init; }

    [CommandOption("--seed <N>")]
    [Description("Seed of the draws")]
    [DefaultValue(1)]
    public int Seed { get; init; }

    [CommandOption("--json")]
    [Description("Print the answer as JSON and nothing else")]
    public bool Json { get; init; }

    /// <summary>The request that the options make.</summary>
    public virtual TreatingRequest Request(FactLibrary facts) =>
        new()
        {
            Species = facts.Species.Get(Species),
            Section = TreatingOptions.Section(Section),
            SapwoodMm = SapwoodMm,
            LogDiameterMm = LogDiameterMm,
            MoisturePercent = MoisturePercent,
            DensityKgPerM3 = DensityKgPerM3,
            Schedule = Schedule,
            OwnSchedules = SchedulesFile is { } file ? ImpregnationLibrary.ReadSchedules(file) : null,
            PeakKPa = PeakKPa,
            PressureMinutes = PressureMinutes,
            Celsius = Celsius,
            DepthMm = DepthMm,
            Zone = TreatingOptions.Zone(Zone),
            IsWholeSapwood = WholeSapwood,
        };
}
