using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Impregnation;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>What a prediction is asked about: a piece, incised or not, a solution and a sampling plan.</summary>
internal class PredictSettings : PlacedSettings
{
    [CommandOption("--incise <NAME>")]
    [Description("Incising pattern by name; alburnum incise finds the lightest that is enough")]
    public string? Incise { get; init; }

    [CommandOption("--zone-depth <MM>")]
    [Description("Depth of the analytical zone, mm; default: the required depth")]
    public double? ZoneMm { get; init; }

    [CommandOption("--strength <PERCENT>")]
    [Description("Strength of the solution, % of product by mass")]
    public double? StrengthPercent { get; init; }

    [CommandOption("--plan <N,C>")]
    [Description("Sampling plan: cores and acceptance number")]
    public string? Plan { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder for drawings and results")]
    public string? Out { get; init; }

    public override TreatingRequest Request(FactLibrary facts) =>
        base.Request(facts) with
        {
            Incising = Incise,
            ZoneMm = ZoneMm,
            StrengthPercent = StrengthPercent,
            Plan = TreatingOptions.Plan(Plan),
        };
}
