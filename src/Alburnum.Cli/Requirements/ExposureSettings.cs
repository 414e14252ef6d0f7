using Alburnum.Records.Facts;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Requirements;

/// <summary>The options that say where a piece of wood stands.</summary>
internal abstract class ExposureSettings : JsonSettings
{
    [CommandOption("--salt-water <YES|NO>")]
    [HelpOf(typeof(ExposureFields), nameof(ExposureFields.SaltWater))]
    public string? SaltWater { get; init; }

    [CommandOption("--ground-contact <YES|NO>")]
    [HelpOf(typeof(ExposureFields), nameof(ExposureFields.GroundContact))]
    public string? GroundContact { get; init; }

    [CommandOption("--weather <YES|NO>")]
    [HelpOf(typeof(ExposureFields), nameof(ExposureFields.Weather))]
    public string? Weather { get; init; }

    [CommandOption("--water-stays <YES|NO>")]
    [HelpOf(typeof(ExposureFields), nameof(ExposureFields.WaterStays))]
    public string? WaterStays { get; init; }

    [CommandOption("--damp <YES|NO>")]
    [HelpOf(typeof(ExposureFields), nameof(ExposureFields.Damp))]
    public string? Damp { get; init; }

    [CommandOption("--coated <YES|NO>")]
    [HelpOf(typeof(ExposureFields), nameof(ExposureFields.Coated))]
    public string? Coated { get; init; }

    [CommandOption("--insects <NAMES>")]
    [HelpOf(typeof(ExposureFields), nameof(ExposureFields.Insects))]
    public string? Insects { get; init; }
}
