using System.ComponentModel;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>What a prediction is asked about.</summary>
internal class PredictSettings : CommandSettings
{
    [CommandArgument(0, "<SPECIES>")]
    [Description("Species, by any of its names")]
    public required string Species { get; init; }

    [CommandArgument(1, "<SECTION>")]
    [Description("Size, such as \"100x100\" or \"round 120\"")]
    public required string Section { get; init; }

    [CommandOption("--heart-radius <MM>")]
    [Description("Radius of the heartwood around the pith, mm")]
    public double? HeartRadiusMm { get; init; }

    [CommandOption("--pith <X,Y>")]
    [Description("Pith from the middle of the section, mm to the right and up")]
    public string? Pith { get; init; }

    [CommandOption("--sapwood <MM>")]
    [Description("Width of the sapwood, mm; else the middle of the species' usual width")]
    public double? SapwoodMm { get; init; }

    [CommandOption("--position <WHERE>")]
    [Description("Where in the log it was sawn: boxed (pith in the middle), halved, quartered or side")]
    public string? Position { get; init; }

    [CommandOption("--log-diameter <MM>")]
    [Description("Diameter of the log under bark, mm; else the smallest that holds the piece")]
    public double? LogDiameterMm { get; init; }

    [CommandOption("--all <ZONE>")]
    [Description("sapwood or heartwood throughout")]
    public string? All { get; init; }

    [CommandOption("--moisture <PERCENT>")]
    [Description("Moisture content before treatment, %")]
    [DefaultValue(25.0)]
    public double MoisturePercent { get; init; }

    [CommandOption("--density <KGM3>")]
    [Description("Density at 12 % moisture; else the species' own")]
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

    [CommandOption("--incise <NAME>")]
    [Description("Incising pattern by name, or \"design\" for the lightest that will do (see also alburnum incise)")]
    public string? Incise { get; init; }

    [CommandOption("--share <PERCENT>")]
    [Description("Share of cores that a designed pattern must bring to the depth, %")]
    [DefaultValue(90.0)]
    public double SharePercent { get; init; }

    [CommandOption("--depth <MM>")]
    [Description("Depth asked for, mm")]
    public double? DepthMm { get; init; }

    [CommandOption("--in <ZONE>")]
    [Description("Where the depth counts: lateral, sapwood or heartwood")]
    [DefaultValue("lateral")]
    public string Zone { get; init; } = "lateral";

    [CommandOption("--whole-sapwood")]
    [Description("All the sapwood is asked for")]
    public bool WholeSapwood { get; init; }

    [CommandOption("--zone-depth <MM>")]
    [Description("Depth of the analytical zone, mm; else the depth asked for")]
    public double? ZoneMm { get; init; }

    [CommandOption("--strength <PERCENT>")]
    [Description("Strength of the solution, % of product by mass")]
    public double? StrengthPercent { get; init; }

    [CommandOption("--plan <N,C>")]
    [Description("Sampling plan: cores and acceptance number")]
    public string? Plan { get; init; }

    [CommandOption("--cells <N>")]
    [Description("Cells across the section for the flow solver; 0 leaves it out")]
    [DefaultValue(60)]
    public int Cells { get; init; }

    [CommandOption("--pieces <N>")]
    [Description("Pieces to draw")]
    [DefaultValue(10_000)]
    public int Pieces { get; init; }

    [CommandOption("--seed <N>")]
    [Description("Seed of the draws")]
    [DefaultValue(1)]
    public int Seed { get; init; }

    [CommandOption("--fit <FILE>")]
    [Description("Depths from the plant's own charges (CSV); narrows the permeability before predicting")]
    public string? Fit { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for section.svg, uptake.svg and prediction.json")]
    public string? Out { get; init; }

    [CommandOption("--json")]
    [Description("Print the prediction as JSON")]
    public bool Json { get; init; }

    public PredictRequest Request() =>
        new()
        {
            Species = Species,
            Section = Section,
            HeartRadiusMm = HeartRadiusMm,
            Pith = Pith,
            SapwoodMm = SapwoodMm,
            Position = Position,
            LogDiameterMm = LogDiameterMm,
            All = All,
            MoisturePercent = MoisturePercent,
            DensityKgPerM3 = DensityKgPerM3,
            Schedule = Schedule,
            SchedulesFile = SchedulesFile,
            PeakKPa = PeakKPa,
            PressureMinutes = PressureMinutes,
            Celsius = Celsius,
            Incise = Incise,
            DepthMm = DepthMm,
            Zone = Zone,
            WholeSapwood = WholeSapwood,
            ZoneMm = ZoneMm,
            StrengthPercent = StrengthPercent,
            Plan = Plan,
        };
}
