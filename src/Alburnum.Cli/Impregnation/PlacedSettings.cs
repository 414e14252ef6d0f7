using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Impregnation;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>A question about one piece: where it lay in the log.</summary>
internal class PlacedSettings : TreatingSettings
{
    [CommandOption("--heartwood-radius <MM>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.HeartwoodRadius))]
    public double? HeartwoodRadiusMm { get; init; }

    [CommandOption("--pith <X,Y>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Pith))]
    public string? Pith { get; init; }

    [CommandOption("--position <WHERE>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Position))]
    public string? Position { get; init; }

    [CommandOption("--all <ZONE>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.All))]
    public string? All { get; init; }

    public override TreatingRequest Request(FactLibrary facts) =>
        base.Request(facts) with
        {
            HeartwoodRadiusMm = HeartwoodRadiusMm,
            Pith = TreatingOptions.Pith(Pith),
            Position = TreatingOptions.Position(Position),
            All = TreatingOptions.All(All),
        };
}
