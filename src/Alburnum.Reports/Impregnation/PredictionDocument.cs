using System.Text.Encodings.Web;
using System.Text.Json;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation.Prediction;

namespace Alburnum.Reports.Impregnation;

/// <summary>A prediction as it is printed and written: plain values, in the units their names end in.</summary>
/// <param name="Title">What was asked, in one line.</param>
/// <param name="Section">Size of the pieces.</param>
/// <param name="Sapwood">Name of the sapwood's permeability row.</param>
/// <param name="Heartwood">Name of the heartwood's permeability row.</param>
/// <param name="Schedule">Name of the schedule.</param>
/// <param name="Incising">The cuts in words; empty where there are none.</param>
/// <param name="StrengthPenalty">What design codes take off for the cuts; empty where there are none.</param>
/// <param name="Demand">Depth asked for, in words.</param>
/// <param name="LeastDepthMm">Least depth of a piece.</param>
/// <param name="MeanDepthMm">Mean depth of a piece.</param>
/// <param name="MinutesToDepth">Pressure period for the depth; null where two days are not enough or no single depth is asked for.</param>
/// <param name="UptakeLPerM3">Net uptake.</param>
/// <param name="RetentionKgPerM3">Product in the analytical zone; null where no strength was given.</param>
/// <param name="PieceShare">Share of pieces that meet the demand everywhere, with its spread between batches.</param>
/// <param name="CoreShare">Share of cores that meet it.</param>
/// <param name="ChanceToPass">Chance that a batch passes the sampling plan; null where none was given.</param>
/// <param name="Solver">What the flow solver found for the median piece; null where it was not run.</param>
/// <param name="EndDepthMm">Depth from a cut end along the grain by the quick model: of heartwood where there is any, else of sapwood.</param>
/// <param name="Assumptions">What was assumed for want of anything said, one sentence each.</param>
/// <param name="Models">Which model answered what.</param>
/// <param name="RestsOn">What the numbers rest on, one sentence each.</param>
/// <param name="Standing">Weakest standing touched.</param>
/// <param name="Cautions">What to mind, one sentence each.</param>
public sealed record PredictionDocument(
    string Title,
    string Section,
    string Sapwood,
    string Heartwood,
    string Schedule,
    string Incising,
    string StrengthPenalty,
    string Demand,
    Spread LeastDepthMm,
    Spread MeanDepthMm,
    Spread? MinutesToDepth,
    Spread UptakeLPerM3,
    Spread? RetentionKgPerM3,
    Estimate PieceShare,
    Estimate CoreShare,
    double? ChanceToPass,
    SolverDocument? Solver,
    Spread EndDepthMm,
    IReadOnlyList<string> Assumptions,
    IReadOnlyList<string> Models,
    IReadOnlyList<string> RestsOn,
    string Standing,
    IReadOnlyList<string> Cautions
)
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
    };

    /// <summary>Said on every prediction.</summary>
    public static IReadOnlyList<string> UsualCautions { get; } =
    [
        "Published figures do not allow the predicted penetration to be checked against measurements: treat it as a plan, and cut and spray pieces of the first charge.",
        "The product's label and authorisation, the code in force and the treater's licence decide what may be done.",
    ];

    /// <summary>The document as JSON.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options);
}

/// <summary>What the flow solver found.</summary>
/// <param name="Ending">How the run ended.</param>
/// <param name="Cells">Cells of the section.</param>
/// <param name="ReachedShare">Share of the section reached, 0 to 1.</param>
/// <param name="MeanDepthMm">Mean depth in from the middles of the sides.</param>
/// <param name="GrossLPerM3">Most solution held at any moment.</param>
/// <param name="NetLPerM3">Solution held at the end.</param>
/// <param name="EndDepthMm">Depth from a cut end along the middle of the piece; null where that run stopped short.</param>
/// <param name="WorstImbalance">Largest imbalance of liquid or air at any step, as a share of the voids.</param>
/// <param name="UptakeCurve">Minutes, absolute kPa and litres to the m³ at each step.</param>
public sealed record SolverDocument(
    string Ending,
    int Cells,
    double ReachedShare,
    double MeanDepthMm,
    double GrossLPerM3,
    double NetLPerM3,
    double? EndDepthMm,
    double WorstImbalance,
    IReadOnlyList<IReadOnlyList<double>> UptakeCurve
)
{
    /// <summary>Takes what is printed from a run.</summary>
    /// <param name="section">The section's run.</param>
    /// <param name="endDepthMm">Depth from a cut end; null where that run stopped short.</param>
    public static SolverDocument From(SectionRun section, double? endDepthMm)
    {
        var curve = section.Uptake().Select(point => new[] { point.Minutes, point.KPa, point.UptakeLPerM3 }).ToList();
        return new(
            section.Run.Ending.InWords,
            section.Mesh.Problem.Mesh.CellCount,
            section.ReachedShare,
            section.MeanDepthMm(),
            curve.Max(point => point[2]),
            curve[^1][2],
            endDepthMm,
            section.Run.Moments.Max(moment =>
                Math.Max(Math.Abs(moment.LiquidImbalance), Math.Abs(moment.AirImbalance))
            ),
            curve
        );
    }
}
