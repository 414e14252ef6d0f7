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

    /// <summary>The most that a m³ of the timber has room for, L: its cavities, and what its walls take up to fibre saturation.</summary>
    public required double RoomLPerM3 { get; init; }

    /// <summary>Share of cores expected to reach the required depth.</summary>
    public required Estimate CoreShare { get; init; }

    /// <summary>The same share in each batch drawn, rising.</summary>
    public required IReadOnlyList<double> BatchShares { get; init; }

    /// <summary>What was assumed because nobody said it.</summary>
    public required IReadOnlyList<LogAssumption> Assumptions { get; init; }

    private IReadOnlyList<Part> Parts { get; init; } = [];

    /// <summary>Where the product is expected: with walls that take nothing, and with what is known of them or bounds.</summary>
    /// <param name="strengthPercent">Strength of the working solution, % of product by mass. Above 0.</param>
    /// <param name="tankL">Solution in the tank before, L; null where nobody said.</param>
    /// <param name="stop">Stops the work.</param>
    internal IReadOnlyList<ProductInCharge> Product(double strengthPercent, double? tankL, CancellationToken stop)
    {
        var kgPerL = Order.SolutionDensityKgPerM3 / 1000 * strengthPercent / 100;
        var parts = Parts
            .Select(part =>
                ExpectedProduct.Of(part.Question, part.Quick, Order.Sorption, 1000 * kgPerL, Draws.Seed, stop)
            )
            .ToList();
        var largest = Enumerable.Range(0, Parts.Count).MaxBy(i => Parts[i].Pieces.VolumeM3);
        return [.. parts[0].Select((_, n) => In([.. parts.Select(part => part[n])]))];

        ProductInCharge In(IReadOnlyList<ExpectedProduct> each)
        {
            var (zone, mean) = (
                Middle(each, product => product.Quick.ZoneLPerM3),
                Middle(each, product => product.Quick.KeptLPerM3)
            );
            var kept = Mean(each, (_, part) => part.Quick.KeptLPerM3.Middle);
            return new()
            {
                Basis = each[0].Basis,
                ZoneKgPerM3 = new(kgPerL * zone.Value, kgPerL * zone.StandardUncertainty),
                MeanKgPerM3 = new(kgPerL * mean.Value, kgPerL * mean.StandardUncertainty),
                DepthMm = Mean(each, (product, _) => product.Quick.MeanMm.Middle),
                SelectiveShare = Math.Max(0, mean.Value / kept - 1),
                StrengthAfterPercent = tankL is { } tank ? After(tank, mean) : null,
                Bands = Parts[largest].Question.Prediction.Incising is null ? each[largest].Bands : [],
                KgPerL = kgPerL,
            };
        }

        // What the charge takes of solution and of product is uncertain by the same share.
        Estimate? After(double tank, Estimate product)
        {
            var (liquid, carried) = (Order.VolumeM3 * Question.UptakeLPerM3.Value, Order.VolumeM3 * product.Value);
            if (!(tank > liquid))
                return null;
            var left = Math.Max(0, tank - carried) / (tank - liquid);
            var share = product.StandardUncertainty / product.Value;
            return new(
                strengthPercent * left,
                strengthPercent * share * Math.Abs(liquid * left - carried) / (tank - liquid)
            );
        }

        double Mean(IReadOnlyList<ExpectedProduct> each, Func<ExpectedProduct, Part, double> of) =>
            each.Zip(Parts, (product, part) => of(product, part) * part.Pieces.VolumeM3).Sum() / Order.VolumeM3;

        Estimate Middle(IReadOnlyList<ExpectedProduct> each, Func<ExpectedProduct, Spread> of) =>
            Expected(
                Mean(each, (product, _) => of(product).Middle),
                Mean(each, (product, _) => of(product).NormalDeviation())
            );
    }

    // Pieces of a batch lean the same way: the charge's mean moves as the batches do.
    private static Estimate Expected(double middle, double deviation) =>
        new(middle, double.Hypot(deviation, UptakeCurve.AssumedLaws * middle));

    /// <summary>What is expected.</summary>
    /// <param name="order">The charge.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">The charge cannot be run so, or something needed is not known of the timber.</exception>
    /// <param name="plant">What the plant's own charges say of its wood; null where nothing is known of them.</param>
    internal static ExpectedCharge Of(
        ChargeOrder order,
        FactLibrary facts,
        CancellationToken stop,
        IReadOnlyList<PlantWood>? plant = null
    ) => Of(order, request => request, facts, stop, plant);

    /// <summary>The same, treated in another way.</summary>
    /// <param name="order">The charge.</param>
    /// <param name="treated">Makes of the request of each size of piece the one that is run.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    /// <param name="plant">What the plant's own charges say of its wood; null where nothing is known of them.</param>
    internal static ExpectedCharge Of(
        ChargeOrder order,
        Func<TreatingRequest, TreatingRequest> treated,
        FactLibrary facts,
        CancellationToken stop,
        IReadOnlyList<PlantWood>? plant = null
    )
    {
        ArgumentNullException.ThrowIfNull(order);
        var parts = order
            .Pieces.Select(pieces =>
                Part.Of(
                    pieces,
                    TreatingQuestion.OfPieces(treated(TreatingRequest.Of(order.Treatment, pieces.Section)), facts),
                    plant ?? [],
                    stop
                )
            )
            .ToList();
        double Mean(Func<Part, double> of) => parts.Sum(part => of(part) * part.Pieces.VolumeM3) / order.VolumeM3;
        Estimate Middle(Func<Part, Spread> of) =>
            Expected(Mean(part => of(part).Middle), Mean(part => of(part).NormalDeviation()));
        return new()
        {
            Order = order,
            Parts = parts,
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
            RoomLPerM3 = Mean(part => Room(part.Question)),
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

    private static double Room(TreatingQuestion question) =>
        1000 * question.Prediction.VoidFraction * (1 - question.Prediction.WaterShare)
        + Math.Max(0, WoodDensity.FibreSaturationPercent - question.MoisturePercent) / 100 * question.DryKgPerM3;

    /// <summary>One size of piece and what is expected of it.</summary>
    private sealed record Part(ChargePieces Pieces, TreatingQuestion Question, QuickPrediction Quick)
    {
        public static Part Of(
            ChargePieces pieces,
            TreatingQuestion asked,
            IReadOnlyList<PlantWood> plant,
            CancellationToken stop
        )
        {
            var question = plant.Applied(asked);
            var prediction = question.Prediction;
            var quick = QuickPrediction.Draw(
                prediction,
                WayRun.Table(prediction),
                Draws.Seed,
                Draws.Pieces,
                cancellation: stop
            );
            return new(pieces, question, plant.Applied(quick, prediction.VoidFraction));
        }
    }
}
