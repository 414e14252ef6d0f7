using System.Text.Json.Serialization;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Documents;
using Alburnum.Requirements;

namespace Alburnum.Reports.Impregnation;

/// <summary>A prediction as it is printed and written: plain values, in the units their names end in. Fields as in docs/json/predict.md.</summary>
public sealed record PredictionDocument
{
    /// <summary>What was asked, in one line.</summary>
    public required string Title { get; init; }

    /// <summary>Size of the pieces.</summary>
    public required string Section { get; init; }

    /// <summary>Name of the sapwood's permeability row.</summary>
    public required string Sapwood { get; init; }

    /// <summary>Name of the heartwood's permeability row.</summary>
    public required string Heartwood { get; init; }

    /// <summary>Name of the schedule.</summary>
    public required string Schedule { get; init; }

    /// <summary>The cuts in words; null where there are none.</summary>
    public string? Incising { get; init; }

    /// <summary>What design codes take off for the cuts; null where there are none.</summary>
    public string? StrengthPenalty { get; init; }

    /// <summary>Required depth, in words.</summary>
    public required string Demand { get; init; }

    /// <summary>Least depth of a piece.</summary>
    public required Spread LeastDepthMm { get; init; }

    /// <summary>Mean depth of a piece.</summary>
    public required Spread MeanDepthMm { get; init; }

    /// <summary>Mean depth of a piece's border that runs unbroken between the cuts, mm; null where it is not incised.</summary>
    public required Spread? BorderDepthMm { get; init; }

    /// <summary>Pressure period for the depth; null where two days are not enough or no single depth is required.</summary>
    public Spread? MinutesToDepth { get; init; }

    /// <summary>Net uptake.</summary>
    public required Spread UptakeLPerM3 { get; init; }

    /// <summary>Product in the analytical zone; null where no strength was given.</summary>
    public Spread? RetentionKgPerM3 { get; init; }

    /// <summary>Where the product stays, with walls that take up nothing and with others; empty where no strength was given.</summary>
    public required IReadOnlyList<PieceProductDocument> Product { get; init; }

    /// <summary>What the figures of the product mean and rest on, one sentence each; empty likewise.</summary>
    public required IReadOnlyList<string> ProductNotes { get; init; }

    /// <summary>Share of pieces that meet the demand everywhere, with its spread between batches; null where no depth is asked for.</summary>
    public required Estimate? PieceShare { get; init; }

    /// <summary>Share of cores that meet it; null where no depth is asked for.</summary>
    public required Estimate? CoreShare { get; init; }

    /// <summary>Whether the demand is usually met in such timber, by treatability and incising alone; null where no depth is required.</summary>
    [JsonConverter(typeof(ReachConverter))]
    public ReachVerdict? Usual { get; init; }

    /// <summary>The same in sentences, with a remark where it differs from the prediction.</summary>
    public required IReadOnlyList<string> UsualInWords { get; init; }

    /// <summary>Chance that a batch passes the sampling plan; null where none was given.</summary>
    public double? ChanceToPass { get; init; }

    /// <summary>What the flow solver found for the median piece; null where it was not run.</summary>
    public SolverDocument? Solver { get; init; }

    /// <summary>The plant's own charges beside what was foretold of them; null where no plant was given.</summary>
    public required PlantDocument? Plant { get; init; }

    /// <summary>Depth from a cut end along the grain: of heartwood where there is any, otherwise of sapwood.</summary>
    public required Spread EndDepthMm { get; init; }

    /// <summary>What was assumed because nobody said it, one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>Which model answered what.</summary>
    public required IReadOnlyList<string> Models { get; init; }

    /// <summary>What the numbers rest on, one sentence each.</summary>
    public required IReadOnlyList<string> RestsOn { get; init; }

    /// <summary>Weakest standing touched.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>How a run of the flow solver ended.</summary>
public enum SolverEnding
{
    /// <summary>At the end of the schedule.</summary>
    Completed,

    /// <summary>Early: a cell stayed out of balance however short the step.</summary>
    StepTooSmall,

    /// <summary>Early: after as many steps as are allowed.</summary>
    StepLimit,
}

/// <summary>completed, step too small, step limit.</summary>
public sealed class SolverEndingConverter : WordConverter<SolverEnding>;

/// <summary>What the flow solver found.</summary>
public sealed record SolverDocument
{
    /// <summary>How the run ended.</summary>
    [JsonConverter(typeof(SolverEndingConverter))]
    public required SolverEnding Ending { get; init; }

    /// <summary>The same in a sentence.</summary>
    public required string EndingInWords { get; init; }

    /// <summary>Newton iterations over all steps; null where the run stopped short.</summary>
    public required int? NewtonIterations { get; init; }

    /// <summary>Iterations of the linear solver over all steps; null likewise.</summary>
    public required int? LinearIterations { get; init; }

    /// <summary>Cells solved: one for all that mirror each other.</summary>
    public required int Cells { get; init; }

    /// <summary>Share of the section reached, 0 to 1.</summary>
    public required double ReachedShare { get; init; }

    /// <summary>Mean depth in from the middle halves of the sides.</summary>
    public required double MeanDepthMm { get; init; }

    /// <summary>Most solution held at any moment.</summary>
    public required double GrossLPerM3 { get; init; }

    /// <summary>Solution held at the end.</summary>
    public required double NetLPerM3 { get; init; }

    /// <summary>Depth from a cut end along the middle of the piece; null where that run stopped short.</summary>
    public double? EndDepthMm { get; init; }

    /// <summary>About how far the cells of the section put the mean depth off, an estimate; null where it cannot be told.</summary>
    public required double? GridErrorMm { get; init; }

    /// <summary>The same of the solution held at the end.</summary>
    public required double? GridErrorLPerM3 { get; init; }

    /// <summary>About how far the time steps put the mean depth off, an estimate; null where it cannot be told.</summary>
    public required double? StepErrorMm { get; init; }

    /// <summary>The same of the solution held at the end.</summary>
    public required double? StepErrorLPerM3 { get; init; }

    /// <summary>That the expected values lie apart from this, where they do by more than a tenth; null where they do not, or the wood is incised.</summary>
    public required string? Difference { get; init; }

    /// <summary>Temperature in the middle of the section at the end, °C; null where nothing warms the wood.</summary>
    public required double? MiddleCelsius { get; init; }

    /// <summary>Largest imbalance of liquid or air at any step, as a share of the voids.</summary>
    public required double WorstImbalance { get; init; }

    /// <summary>Minutes, absolute kPa and litres per m³ at each step.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> UptakeCurve { get; init; }
}
