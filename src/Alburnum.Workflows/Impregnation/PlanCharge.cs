using System.Globalization;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Diffusing;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A charge planned from what is expected of its timber.</summary>
/// <param name="Expected">The charge, and what is expected of it.</param>
/// <param name="Plan">Solution, product, water and weights.</param>
/// <param name="DryingDays">Least days of drying first, where the timber is too wet; null where it is not.</param>
public sealed record PlannedCharge(ExpectedCharge Expected, ChargePlan Plan, double? DryingDays)
{
    /// <summary>Where the product is expected at the strength planned: with walls that take nothing, and with what is known of them or bounds. Empty where nobody asked.</summary>
    public IReadOnlyList<ProductInCharge> Product { get; init; } = [];

    // Our own choice.
    private const double LeastCores = 0.5;

    /// <summary>Whether fewer than half of the cores are expected to reach the depth, so that the strength is worked out for a zone that the solution does not cross.</summary>
    public bool IsShortOfDepth => Expected.CoreShare.Value < LeastCores;
}

/// <summary>Plans one charge.</summary>
public static class PlanCharge
{
    /// <summary>Plans it.</summary>
    /// <param name="order">The charge.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">The charge cannot be run so, or something needed is not known of the timber.</exception>
    public static PlannedCharge Run(ChargeOrder order, FactLibrary facts, CancellationToken stop)
    {
        var planned = Of(ExpectedCharge.Of(order, facts, stop));
        return planned with
        {
            Product = planned.Expected.Product(
                planned.Plan.StrengthPercent.Value,
                order.TankL ?? order.Readings?.TankBeforeL,
                stop
            ),
        };
    }

    /// <summary>Plans it from what is expected of it.</summary>
    /// <param name="expected">The charge, and what is expected of it.</param>
    /// <exception cref="InputRefusedException">No strength that can be worked with gives the retention, or the timber never dries.</exception>
    internal static PlannedCharge Of(ExpectedCharge expected) =>
        expected.Question.Shortfall is { } shortfall ? throw Refusal(expected, shortfall) : AsFarAsPossible(expected)!;

    /// <summary>The same where a charge is one part of a case: a plan that nobody should work to is made all the same, and null where no solution holds so much.</summary>
    internal static PlannedCharge? AsFarAsPossible(ExpectedCharge expected) =>
        expected.Question.IsBeyondAnySolution
            ? null
            : new(expected, ChargePlan.For(expected.Question), Drying(expected.Order));

    private static InputRefusedException Refusal(ExpectedCharge expected, ChargeShortfall shortfall)
    {
        var zone = expected.Question.ZoneLPerM3;
        return shortfall switch
        {
            StrengthTooHigh { IsOfLabel: true, NeededPercent: var needed, MostPercent: var most } =>
                ChargeFields.StrengthMost.Refused(
                    expected.Order.Treatment.File,
                    string.Create(CultureInfo.InvariantCulture, $"{most:0.##} %, where {needed:0.##} % is needed"),
                    MoreSolution
                ),
            ZoneTooUncertain => OfRetention(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{zone.Value:0.#} ± {zone.StandardUncertainty:0.#} L per m³ of zone"
                ),
                "an uptake known to half of itself or better: say more of the timber (sapwood, position, density), or treat and weigh a first charge"
            ),
            _ => OfRetention(
                string.Create(CultureInfo.InvariantCulture, $"{zone.Value:0.#} L per m³ of zone"),
                MoreSolution
            ),
        };
    }

    private static InputRefusedException OfRetention(string found, string expected) =>
        new(new InputProblem("charge", 0, "", "retention", found, expected));

    private const string MoreSolution =
        "a zone that takes more: incise, hold the pressure longer, or choose another timber";

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
}
