using System.ComponentModel;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Impregnation;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>The wood, the schedule and the depth that every question about treating names.</summary>
internal class TreatingSettings : JsonSettings
{
    [CommandArgument(0, "<SPECIES>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Species))]
    public required string Species { get; init; }

    [CommandArgument(1, "<SECTION>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Section))]
    public required string Section { get; init; }

    [CommandOption("--sapwood <MM>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Sapwood))]
    public double? SapwoodMm { get; init; }

    [CommandOption("--log-diameter <MM>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.LogDiameter))]
    public double? LogDiameterMm { get; init; }

    [CommandOption("--moisture <PERCENT>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Moisture))]
    [DefaultValue(TreatingRequest.UsualMoisturePercent)]
    public double MoisturePercent { get; init; }

    [CommandOption("--density <KG_PER_M3>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Density))]
    public double? DensityKgPerM3 { get; init; }

    [CommandOption("--schedule <NAME>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Schedule))]
    public string Schedule { get; init; } = TreatmentFields.Schedule.Default;

    [CommandOption("--schedules <FILE>")]
    [Description("The plant's own schedules, in the form of data/impregnation/schedules.yaml")]
    public string? SchedulesFile { get; init; }

    [CommandOption("--pressure <KPA>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Pressure))]
    public double? PeakKPa { get; init; }

    [CommandOption("--minutes <MIN>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Minutes))]
    public double? PressureMinutes { get; init; }

    [CommandOption("--temperature <C>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Temperature))]
    public double Celsius { get; init; } = TreatmentFields.Temperature.DefaultNumber;

    [CommandOption("--wood-temperature <C>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.WoodTemperature))]
    public double WoodCelsius { get; init; } = TreatmentFields.WoodTemperature.DefaultNumber;

    [CommandOption("--depth <MM>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Depth))]
    public double? DepthMm { get; init; }

    [CommandOption("--in <ZONE>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Zone))]
    public string Zone { get; init; } = TreatmentFields.Zone.Default;

    [CommandOption("--whole-sapwood")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.WholeSapwood))]
    public bool WholeSapwood { get; init; }

    [CommandOption("--seed <N>")]
    [Description("Seed of the draws")]
    [DefaultValue(Draws.Seed)]
    public int Seed { get; init; }

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
            OwnSchedules = SchedulesFile is { } file ? facts.ReadSchedules(file) : null,
            PeakKPa = PeakKPa,
            PressureMinutes = PressureMinutes,
            Celsius = Celsius,
            WoodCelsius = WoodCelsius,
            DepthMm = DepthMm,
            Zone = TreatingOptions.Zone(Zone),
            IsWholeSapwood = WholeSapwood,
        };
}
