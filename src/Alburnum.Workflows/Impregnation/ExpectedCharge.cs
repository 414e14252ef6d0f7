using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A charge, and what is expected of its timber.</summary>
public sealed record ExpectedCharge
{
    /// <summary>The charge as it was written down.</summary>
    public required ChargeOrder Order { get; init; }

    /// <summary>The schedule.</summary>
    public required Fact<Schedule> Schedule { get; init; }

    /// <summary>Required depth.</summary>
    public required DepthRule Rule { get; init; }

    /// <summary>What its plan follows from.</summary>
    public required ChargeQuestion Question { get; init; }

    /// <summary>Share of cores expected to reach the required depth.</summary>
    public required Estimate CoreShare { get; init; }

    /// <summary>The same share in each batch drawn, rising.</summary>
    public required IReadOnlyList<double> BatchShares { get; init; }

    /// <summary>What was assumed because nobody said it.</summary>
    public required IReadOnlyList<LogAssumption> Assumptions { get; init; }

    /// <summary>What is expected.</summary>
    /// <param name="order">The charge.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">The charge cannot be run so, or something needed is not known of the timber.</exception>
    internal static ExpectedCharge Of(ChargeOrder order, FactLibrary facts, CancellationToken stop) =>
        Of(order, request => request, facts, stop);

    /// <summary>The same, treated in another way.</summary>
    /// <param name="order">The charge.</param>
    /// <param name="treated">Makes of the request of each size of piece the one that is run.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    internal static ExpectedCharge Of(
        ChargeOrder order,
        Func<TreatingRequest, TreatingRequest> treated,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(order);
        var parts = order.Pieces.Select(pieces => Part.Of(order, pieces, treated, facts, stop)).ToList();
        double Mean(Func<Part, double> of) => parts.Sum(part => of(part) * part.Pieces.VolumeM3) / order.VolumeM3;
        // Pieces of a batch lean the same way: the charge's mean moves as the batches do.
        Estimate Middle(Func<Part, Spread> of) =>
            new(
                Mean(part => of(part).Middle),
                double.Hypot(
                    Mean(part => of(part).NormalDeviation()),
                    UptakeCurve.AssumedLaws * Mean(part => of(part).Middle)
                )
            );
        return new()
        {
            Order = order,
            Schedule = parts[0].Question.Schedule,
            Rule = parts[0].Question.Prediction.Rule,
            Question = new()
            {
                VolumeM3 = order.VolumeM3,
                SurfaceM2 = order.SurfaceM2,
                DensityKgPerM3 = Mean(part => part.Question.KgPerM3),
                UptakeLPerM3 = Middle(part => part.Quick.UptakeLPerM3),
                ZoneLPerM3 = Middle(part => part.Quick.ZoneLPerM3),
                RetentionKgPerM3 = order.RetentionKgPerM3,
                SolutionDensityKgPerM3 = order.SolutionDensityKgPerM3,
                StrengthMostPercent = order.StrengthMostPercent,
            },
            CoreShare = new(
                Mean(part => part.Quick.CoreShare.Value),
                Mean(part => part.Quick.CoreShare.StandardUncertainty)
            ),
            BatchShares =
            [
                .. parts[0].Quick.BatchShares.Select((_, batch) => Mean(part => part.Quick.BatchShares[batch])),
            ],
            Assumptions = [.. parts.SelectMany(part => part.Question.Assumptions).Distinct()],
        };
    }

    /// <summary>One size of piece and what is expected of it.</summary>
    private sealed record Part(ChargePieces Pieces, TreatingQuestion Question, QuickPrediction Quick)
    {
        public static Part Of(
            ChargeOrder order,
            ChargePieces pieces,
            Func<TreatingRequest, TreatingRequest> treated,
            FactLibrary facts,
            CancellationToken stop
        )
        {
            var question = TreatingQuestion.OfPieces(
                treated(TreatingRequest.Of(order.Treatment, pieces.Section)),
                facts
            );
            return new(
                pieces,
                question,
                QuickPrediction.Draw(
                    question.Prediction,
                    WayRun.Table(question.Prediction),
                    Draws.Seed,
                    Draws.Pieces,
                    cancellation: stop
                )
            );
        }
    }
}
