using System.ComponentModel;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>A question about one piece: where it lay in the log.</summary>
internal class PlacedSettings : TreatingSettings
{
    [CommandOption("--heart-radius <MM>")]
    [Description("Radius of the heartwood around the pith, mm")]
    public double? HeartRadiusMm { get; init; }

    [CommandOption("--pith <X,Y>")]
    [Description("Pith from the middle of the section, mm to the right and up")]
    public string? Pith { get; init; }

    [CommandOption("--position <WHERE>")]
    [Description("Where in the log it was sawn: boxed (pith in the middle), halved, quartered or side")]
    public string? Position { get; init; }

    [CommandOption("--all <ZONE>")]
    [Description("sapwood or heartwood throughout")]
    public string? All { get; init; }

    public override PredictRequest Request() =>
        base.Request() with
        {
            HeartRadiusMm = HeartRadiusMm,
            Pith = Pith,
            Position = Position,
            All = All,
        };
}
