using System.Globalization;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Diffusing;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A charge planned from what is expected of its timber.</summary>
public sealed record PlannedCharge
{
    /// <summary>The charge as it was written down.</summary>
    public required ChargeOrder Order { get; init; }

    /// <summary>The schedule.</summary>
    public required Schedule Schedule { get; init; }

    /// <summary>Solution, product, water and weights.</summary>
    public required ChargePlan Plan { get; init; }

    /// <summary>Share of cores expected to reach the required depth.</summary>
    public required Estimate CoreShare { get; init; }

    /// <summary>Least days of drying first, where the timber is too wet; null where it is not.</summary>
    public required double? DryingDays { get; init; }

    /// <summary>What was assumed because nobody said it.</summary>
    public required IReadOnlyList<LogAssumption> Assumptions { get; init; }
}

/// <summary>Plans one charge.</summary>
public static class PlanCharge
{
    // Standard uncertainty of an uptake as a share of it, because how air and solution hinder each other is assumed: kept shares of sapwood
    // move by about so much where radius of the cavities, exponents and trapped air are varied as far as they may be (docs/science/flow.md).
    private const double AssumedLaws = 0.12;

    /// <summary>Plans it.</summary>
    /// <param name="order">The charge.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">The charge cannot be run so, or something needed is not known of the timber.</exception>
    public static PlannedCharge Run(ChargeOrder order, FactLibrary facts, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(order);
        var parts = order.Pieces.Select(pieces => Part.Of(order, pieces, facts, stop)).ToList();
        var volume = order.VolumeM3;
        double Mean(Func<Part, double> of) => parts.Sum(part => of(part) * part.Pieces.VolumeM3) / volume;
        // Pieces of a batch lean the same way: the charge's mean moves as the batches do.
        Estimate Middle(Func<Part, Spread> of) =>
            new(
                Mean(part => of(part).Middle),
                Math.Sqrt(
                    Squared(Mean(part => of(part).NormalDeviation()))
                        + Squared(AssumedLaws * Mean(part => of(part).Middle))
                )
            );
        var question = new ChargeQuestion
        {
            VolumeM3 = volume,
            SurfaceM2 = order.SurfaceM2,
            DensityKgPerM3 = Mean(part => part.Question.KgPerM3),
            UptakeLPerM3 = Middle(part => part.Quick.UptakeLPerM3),
            ZoneLPerM3 = Middle(part => part.Quick.ZoneLPerM3),
            RetentionKgPerM3 = order.RetentionKgPerM3,
            SolutionDensityKgPerM3 = order.SolutionDensityKgPerM3,
        };
        if (question.IsBeyondAnySolution)
            throw new InputRefusedException(
                new InputProblem(
                    "charge",
                    0,
                    "",
                    "retention",
                    FormattableString.Invariant($"{question.ZoneLPerM3.Value:0.#} L per m³ of zone"),
                    "a zone that takes more: incise, hold the pressure longer, or choose another timber"
                )
            );
        return new()
        {
            Order = order,
            Schedule = parts[0].Question.Prediction.Schedule,
            Plan = ChargePlan.For(question),
            CoreShare = new(
                Mean(part => part.Quick.CoreShare.Value),
                Mean(part => part.Quick.CoreShare.StandardUncertainty)
            ),
            DryingDays = Drying(order),
            Assumptions = [.. parts.SelectMany(part => part.Question.Assumptions).Distinct()],
        };
    }

    private static double Squared(double value) => value * value;

    private static double? Drying(ChargeOrder order)
    {
        var (moisture, file) = (order.Treatment.MoisturePercent, order.Treatment.File);
        if (order.MoistureLimitPercent is not { } limit || moisture <= limit)
            return null;
        var air = EquilibriumMoisture.Percent(order.DryingCelsius, order.DryingHumidity);
        if (air >= limit)
            throw new InputRefusedException(
                new InputProblem(
                    file,
                    0,
                    "",
                    ChargeFields.MoistureLimit.Key,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{limit:0.#} %, in air that keeps wood at {air:0.#} %"
                    ),
                    $"drier or warmer air ({ChargeFields.DryingHumidity.Key}, {ChargeFields.DryingTemperature.Key})"
                )
            );
        return DryingTime.Days(
            order.Pieces.Max(pieces => pieces.Section.ThicknessMm),
            moisture,
            limit,
            air,
            DryingTime.SoftwoodDiffusionM2PerS.Value
        );
    }

    /// <summary>One size of piece and what is expected of it.</summary>
    private sealed record Part(ChargePieces Pieces, TreatingQuestion Question, QuickPrediction Quick)
    {
        public static Part Of(ChargeOrder order, ChargePieces pieces, FactLibrary facts, CancellationToken stop)
        {
            var question = TreatingQuestion.OfPieces(TreatingRequest.Of(order.Treatment, pieces.Section), facts);
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
