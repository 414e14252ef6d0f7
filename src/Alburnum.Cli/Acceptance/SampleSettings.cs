using System.ComponentModel;
using System.Security.Cryptography;
using Alburnum.Records.Facts;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>What every plan may be asked with.</summary>
internal abstract class SampleSettings : JsonSettings
{
    [CommandOption("--lot <PIECES>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Lot))]
    public int? Lot { get; init; }

    [CommandOption("--seed <NUMBER>")]
    [Description("Seed of the random positions; if not given, a new one is drawn and printed")]
    public ulong? Seed { get; init; }

    [CommandOption("--chart <FILE>")]
    [Description("Also draw the operating characteristic into an SVG file")]
    public string? Chart { get; init; }

    /// <summary>Pieces in the lot; null where not stated.</summary>
    public int? Pieces => Options.OptionalWhole(AcceptanceFields.Lot, Lot);

    /// <summary>The seed given, or a new one.</summary>
    public ulong DrawnSeed => Seed ?? (ulong)RandomNumberGenerator.GetInt32(1, int.MaxValue);
}
