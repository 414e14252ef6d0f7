using System.ComponentModel;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Charging;

/// <summary>A charge file and how to answer.</summary>
internal sealed class ChargeSettings : JsonSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("Charge file (docs/how-to/plan-a-charge.md)")]
    public required string File { get; init; }
}
