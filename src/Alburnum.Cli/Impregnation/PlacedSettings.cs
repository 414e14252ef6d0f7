using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Impregnation;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>A question about one piece: where it lay in the log.</summary>
internal class PlacedSettings : TreatingSettings
{
    [CommandOption("--heart-radius <MM>")]
    [Description("Radius of the heartwood around the pith, mm")]
    public double? HeartRadiusMm { get; init; }

    [CommandOption("--pith <X,Y>")]
    [Description("Position of the pith from the middle of the section, mm to the right and up")]
    public string? Pith { get; init; }

    [CommandOption("--position <WHERE>")]
    [Description("Where in the log it was sawn: boxed (pith in the middle), halved, quartered or side")]
    public string? Position { get; init; }

    [CommandOption("--all <ZONE>")]
    [Description("Wood of one kind throughout: sapwood or heartwood")]
    public string? All { get; init; }

    public override TreatingRequest Request(FactLibrary facts) =>
        base.Request(facts) with
        {
            HeartRadiusMm = HeartRadiusMm,
            Pith = TreatingOptions.Pith(Pith),
            Position = TreatingOptions.Position(Position),
            All = TreatingOptions.All(All),
        };
}
