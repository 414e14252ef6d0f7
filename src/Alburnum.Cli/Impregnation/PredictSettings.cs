using System.ComponentModel;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Impregnation;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>What a prediction is asked about: a piece, incised or not, and its analytical zone.</summary>
internal class PredictSettings : PlacedSettings
{
    [CommandOption("--incising <NAME>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Incising), Note = "alburnum incise finds the lightest")]
    public string? Incising { get; init; }

    [CommandOption("--zone-depth <MM>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.ZoneDepth))]
    public double? ZoneDepthMm { get; init; }

    [CommandOption("--pieces <N>")]
    [Description("Pieces to draw")]
    [DefaultValue(Draws.Pieces)]
    public int Pieces { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder for drawings and results")]
    public string? Out { get; init; }

    public override TreatingRequest Request(FactLibrary facts) =>
        base.Request(facts) with
        {
            Incising = Incising,
            ZoneDepthMm = ZoneDepthMm,
        };
}
