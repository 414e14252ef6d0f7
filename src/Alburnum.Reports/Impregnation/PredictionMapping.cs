using Alburnum.Flow.Stepping;
using Alburnum.Records.Charges;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>Writes a prediction down.</summary>
public static class PredictionMapping
{
    /// <summary>The prediction as a document.</summary>
    public static PredictionDocument Of(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var (asked, quick, words) = (prediction.Asked, prediction.Quick, TreatingWords.Current);
        var question = asked.Prediction;
        return new()
        {
            Title = words.Title(asked),
            Section = question.Section.Label,
            Sapwood = words.Name(question.Sapwood),
            Heartwood = words.Name(question.Heartwood),
            Schedule = question.Schedule.Name,
            Incising = question.Incising is { } cuts ? words.Say(cuts) : null,
            StrengthPenalty =
                question.Incising is { } pattern && prediction.Penalty is { } penalty
                    ? words.Penalty(penalty, pattern)
                    : null,
            Demand = TreatingWords.Demand(question.Rule),
            LeastDepthMm = quick.LeastMm,
            MeanDepthMm = quick.MeanMm,
            BorderDepthMm = question.Incising is not null ? quick.BorderMm : null,
            MinutesToDepth = prediction.MinutesToDepth,
            UptakeLPerM3 = quick.UptakeLPerM3,
            RetentionKgPerM3 = prediction.RetentionKgPerM3,
            Product = [.. prediction.Product.Select(product => PieceProductDocument.Of(product, prediction))],
            ProductNotes =
                prediction.Product.Count == 0
                    ? []
                    :
                    [
                        .. ProductWords.Current.Notes(
                            prediction.Product.Select(product => product.Basis),
                            TreatmentFields.Sorption.Option,
                            TreatmentFields.SorptionMost.Option,
                            question.Incising is null
                        ),
                    ],
            PieceShare = question.IsDepthAsked ? quick.PieceShare : null,
            CoreShare = question.IsDepthAsked ? quick.CoreShare : null,
            Usual = prediction.Usual?.Verdict,
            UsualInWords = [.. PredictionWords.Current.Usual(prediction)],
            ChanceToPass = prediction.ChanceToPass,
            Solver = prediction.Solved is { } solved ? Solver(solved, prediction.Gap) : null,
            Plant = PlantDocument.Of(prediction),
            EndDepthMm = prediction.EndDepthMm,
            Assumptions = words.Say(asked.Assumptions),
            Models = [.. PredictionWords.Current.Models(prediction)],
            RestsOn = [.. PredictionWords.Current.RestsOn(prediction)],
            Standing = prediction.Standing,
            Cautions = words.Cautions(asked),
        };
    }

    private static SolverDocument Solver(SolvedPiece solved, SolverGap? gap)
    {
        var section = solved.Section;
        List<double[]> curve =
        [
            .. section.Uptake().Select(point => new[] { point.Minutes, point.KPa, point.UptakeLPerM3 }),
        ];
        return new()
        {
            Ending = section.Run.Ending switch
            {
                Completed => SolverEnding.Completed,
                StepTooSmall => SolverEnding.StepTooSmall,
                StepLimit => SolverEnding.StepLimit,
                var other => throw new ArgumentOutOfRangeException(nameof(solved), other, "Not an ending."),
            },
            EndingInWords = PredictionWords.Current.Say(section.Run.Ending),
            NewtonIterations = (section.Run.Ending as Completed)?.NewtonIterations,
            LinearIterations = (section.Run.Ending as Completed)?.LinearIterations,
            Cells = section.Mesh.Problem.Mesh.CellCount,
            ReachedShare = section.ReachedShare,
            MeanDepthMm = section.MeanDepthMm(),
            GrossLPerM3 = curve.Max(point => point[2]),
            NetLPerM3 = curve[^1][2],
            EndDepthMm = solved.End is { Ending: Completed, DepthMm: var end } ? end : null,
            GridErrorMm = section.GridError(run => run.MeanDepthMm()),
            GridErrorLPerM3 = section.GridError(run => run.NetLPerM3),
            StepErrorMm = section.StepError(run => run.MeanDepthMm()),
            StepErrorLPerM3 = section.StepError(run => run.NetLPerM3),
            Difference = gap is { IsLarge: true } ? PredictionWords.Current.Differ(gap) : null,
            MiddleCelsius = section.MiddleCelsius,
            WorstImbalance = section.Run.Moments.Max(moment =>
                Math.Max(Math.Abs(moment.LiquidImbalance), Math.Abs(moment.AirImbalance))
            ),
            UptakeCurve = curve,
        };
    }
}
