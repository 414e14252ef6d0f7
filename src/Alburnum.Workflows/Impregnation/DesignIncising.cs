using Alburnum.Facts;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Impregnation;

/// <summary>What incising must bring.</summary>
public sealed record IncisingRequest
{
    /// <summary>The wood, the schedule and the depth, which must be there; its own pattern is not used.</summary>
    public required TreatingRequest Treating { get; init; }

    /// <summary>Share of cores that must reach the depth, 0 to 1.</summary>
    public required double CoreShare { get; init; }

    /// <summary>Length of a cut along the grain at the face, mm. 1 to 100.</summary>
    public required double ToothLengthMm { get; init; }

    /// <summary>Pieces to draw for each pattern, 100 to 1 000 000.</summary>
    public required int Pieces { get; init; }

    /// <summary>Seed of the draws, the same for each pattern.</summary>
    public required int Seed { get; init; }

    /// <summary>Boxes on each side of the flow solver's cell, which checks the pattern found, 8 to 200; null leaves it out.</summary>
    public int? Boxes { get; init; }
}

/// <summary>The flow solver on the repeating cell of a pattern, in the median wood, beside what the search takes for it.</summary>
/// <param name="Solved">What the flow solver found.</param>
/// <param name="Taken">The same from the distances to the cuts.</param>
/// <param name="GridErrorMm">How far the unbroken depth found may be from that of endlessly many boxes, mm; null where there are too few to tell.</param>
/// <param name="Boxes">Boxes on each side of the cell.</param>
/// <param name="Ending">How the run ended.</param>
public sealed record RepeatingCell(
    IncisedDepth Solved,
    IncisedDepth Taken,
    double? GridErrorMm,
    int Boxes,
    FlowEnding Ending
);

/// <summary>How deep one wood is treated under an incised face.</summary>
/// <param name="UnbrokenMm">Depth of the border that runs unbroken between the cuts, mm.</param>
/// <param name="MeanMm">Mean over the face, mm.</param>
public readonly record struct IncisedDepth(double UnbrokenMm, double MeanMm);

/// <summary>The lightest incising that is enough, with what was tried.</summary>
public sealed record IncisingDesign
{
    /// <summary>What was asked.</summary>
    public required TreatingQuestion Asked { get; init; }

    /// <summary>Share of cores that must reach the depth, 0 to 1.</summary>
    public required double CoreShare { get; init; }

    /// <summary>The patterns tried and the one chosen.</summary>
    public required IncisingSearch Search { get; init; }

    /// <summary>Whether the demand is usually met in such timber, for each trial, in their order.</summary>
    public required IReadOnlyList<UsualOutcome> Usual { get; init; }

    /// <summary>What design codes take off for incising.</summary>
    public required IncisingPenalty Penalty { get; init; }

    /// <summary>The flow solver's check of the pattern chosen; null where it was left out, or nothing is to be cut.</summary>
    public required RepeatingCell? Check { get; init; }
}

/// <summary>Looks for the lightest incising that makes enough of the cores reach the depth.</summary>
public static class DesignIncising
{
    /// <summary>Looks.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="facts">Permeabilities, schedules and the design code's factors.</param>
    /// <param name="progress">Told the share of the flow solver's run that is done; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">No depth is required, or something asked cannot be or is not known of the species.</exception>
    public static IncisingDesign Run(
        IncisingRequest request,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(facts);
        var (asked, penalty) = (TreatingQuestion.OfPieces(request.Treating, facts), facts.Impregnation.Penalty);
        if (!asked.Prediction.IsDepthAsked)
        {
            var file = request.Treating.File;
            throw TreatmentFields.Depth.Refused(
                file,
                "nothing",
                $"{TreatmentFields.Depth.NameIn(file)} or {TreatmentFields.WholeSapwood.NameIn(file)}, to know what the cuts are for"
            );
        }
        var front = WayRun.Table(asked.Prediction);
        var search = IncisingSearch.Lightest(
            (asked.Prediction, front),
            request.ToothLengthMm,
            penalty,
            request.CoreShare,
            (request.Seed, request.Pieces),
            stop
        );
        return new()
        {
            Asked = asked,
            CoreShare = request.CoreShare,
            Search = search,
            Usual =
            [
                .. search
                    .Best.Select(trial =>
                        UsualOutcome.Of(
                            asked.Prediction.Rule,
                            request.Treating.Species,
                            trial.Pattern is not null,
                            trial.Quick,
                            facts
                        )
                    )
                    .OfType<UsualOutcome>(),
            ],
            Penalty = penalty,
            Check =
                request.Boxes is { } boxes && search.Chosen?.Pattern is { } pattern
                    ? Check((asked.Prediction, front), pattern, boxes, progress, stop)
                    : null,
        };
    }

    // The median wood under the pattern, sapwood where the face is sapwood.
    private static RepeatingCell Check(
        (PredictionQuestion Question, FrontTable Front) asked,
        IncisingPattern pattern,
        int boxes,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        var question = asked.Question;
        var law = question.Log.HeartwoodRadiusMm > 1e5 ? question.Heartwood : question.Sapwood;
        var bottomMm = Math.Max(question.Section.ThicknessMm / 2, 1.5 * pattern.DepthMm);
        var across = asked.Front.DepthMm(law.LateralMedianM2, question.VoidFraction, bottomMm);
        var reach = new IncisedReach(pattern, law.Directions.LongitudinalToLateral);
        var (fine, ending) = Solve(boxes);
        var coarser = Math.Max(boxes / 2, (int)Ranges.CellBoxes.Low);
        return new(
            fine,
            new(reach.UnbrokenMm(across), reach.MeanMm(across, double.PositiveInfinity)),
            coarser < boxes
                ? Math.Abs(fine.UnbrokenMm - Solve(coarser).Depth.UnbrokenMm) / ((double)boxes / coarser - 1)
                : null,
            boxes,
            ending
        );

        (IncisedDepth Depth, FlowEnding Ending) Solve(int side)
        {
            // A face is met along the radius or the tangent, as it was sawn: taken alike here, as the search does.
            var wood = (law with { Directions = law.Directions.AlikeAcross() }).Typical();
            var cell = Cut(new WoodFlow(wood, question.VoidFraction, question.WaterShare));
            var heat = question.Warming is { } warming
                ? new WarmedWood(Cut(WarmedWood.Unit).Problem.Mesh, warming)
                : null;
            var run = FlowSolver.Run(
                cell.Problem with
                {
                    Heat = heat,
                },
                question.Schedule,
                StepControl.Rough,
                side == boxes ? ShareDone.To(progress) : null,
                stop
            );
            var depths = cell.Depths(run);
            return (new(depths.Min(at => at.DepthMm), depths.Sum(at => at.Share * at.DepthMm)), run.Ending);

            IncisedCell Cut(WoodFlow flow) =>
                IncisedCell.Of(pattern, flow, FluidPair.Of(question.Liquid), bottomMm, side);
        }
    }
}
