using Alburnum.Facts;
using MathNet.Numerics.Distributions;

namespace Alburnum.Impregnation.Charging;

/// <summary>What a charge consists of and what it must reach.</summary>
public sealed record ChargeQuestion
{
    /// <summary>Volume of the timber, m³.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Lateral surface of the timber, m².</summary>
    public required double SurfaceM2 { get; init; }

    /// <summary>Density of the timber with its water, kg/m³.</summary>
    public required double DensityKgPerM3 { get; init; }

    /// <summary>Net uptake expected, L to the m³ of timber.</summary>
    public required Estimate UptakeLPerM3 { get; init; }

    /// <summary>Solution expected in the analytical zone, L to the m³ of zone.</summary>
    public required Estimate ZoneLPerM3 { get; init; }

    /// <summary>Product required in the analytical zone, kg/m³.</summary>
    public required double RetentionKgPerM3 { get; init; }

    /// <summary>Density of the working solution, kg/m³.</summary>
    public required double SolutionDensityKgPerM3 { get; init; }

    /// <summary>Greatest strength that the label allows, % of product by mass; null where nobody said.</summary>
    public double? StrengthMostPercent { get; init; }

    /// <summary>Whether the zone takes so little that no solution could hold the product.</summary>
    public bool IsBeyondAnySolution => !(100 * StrengthShare <= AnySolutionPercent);

    /// <summary>Why no charge should be planned to this; null where one can.</summary>
    public ChargeShortfall? Shortfall =>
        !(100 * StrengthShare <= MostPercent)
            ? new StrengthTooHigh(100 * StrengthShare, MostPercent, IsOfLabel: StrengthMostPercent < AnySolutionPercent)
        : !(ZoneLPerM3.StandardUncertainty <= MostUncertainShare * ZoneLPerM3.Value) ? new ZoneTooUncertain(ZoneLPerM3)
        : null;

    // No working solution holds more product than this. Our own choice.
    internal const double AnySolutionPercent = 50;

    // A zone known no better than this tells no strength to work with. Our own choice.
    private const double MostUncertainShare = 0.5;

    /// <summary>Product in the solution, as a share of its mass: the zone's solution must carry the retention.</summary>
    internal double StrengthShare => RetentionKgPerM3 / (ZoneLPerM3.Value * (SolutionDensityKgPerM3 / 1000));

    private double MostPercent => Math.Min(StrengthMostPercent ?? AnySolutionPercent, AnySolutionPercent);

    /// <summary>The same, aiming so much higher that the retention is met with a chance, the zone's solution being normal about its value.</summary>
    /// <param name="chance">Chance, 0.5 to below 1.</param>
    /// <remarks>Null where the zone may well hold nothing, so that no strength is enough.</remarks>
    public ChargeQuestion? Aimed(double chance)
    {
        var deviations = Normal.InvCDF(0, 1, Require.InRange(chance, 0.5, Math.BitDecrement(1), "(share)"));
        var sure = ZoneLPerM3.Value - deviations * ZoneLPerM3.StandardUncertainty;
        return sure > 0 ? this with { RetentionKgPerM3 = RetentionKgPerM3 * ZoneLPerM3.Value / sure } : null;
    }
}

/// <summary>The plan for one charge. Every amount is worked from the question by the equations beside it.</summary>
public sealed record ChargePlan
{
    /// <summary>What was asked.</summary>
    public required ChargeQuestion Question { get; init; }

    /// <summary>Strength of the working solution, % of product by mass.</summary>
    public required Estimate StrengthPercent { get; init; }

    /// <summary>Solution the timber is expected to keep, L.</summary>
    public required Estimate SolutionL { get; init; }

    /// <summary>Product in that solution, kg.</summary>
    public required Estimate ConcentrateKg { get; init; }

    /// <summary>Water in that solution, kg.</summary>
    public required Estimate WaterKg { get; init; }

    /// <summary>Weight of the timber before, kg.</summary>
    public required double WeightBeforeKg { get; init; }

    /// <summary>Weight expected after, kg.</summary>
    public required Estimate WeightAfterKg { get; init; }

    /// <summary>Plans a charge.</summary>
    /// <param name="question">What is asked.</param>
    /// <exception cref="ArgumentOutOfRangeException">The zone takes so little that the question <see cref="ChargeQuestion.IsBeyondAnySolution"/>.</exception>
    /// <remarks>
    /// Strength c = R/(z·ρ): the zone's solution must carry the retention. Solution V·u; product c·ρ·V·u; the rest is water.
    /// Uncertainties by first-order propagation (JCGM 100, 5.1.2), uptake and zone taken as moving together.
    /// </remarks>
    public static ChargePlan For(ChargeQuestion question)
    {
        Require.Positive(question.VolumeM3, "m³");
        Require.InRange(question.SurfaceM2, 0, 1e7, "m²");
        Require.InRange(question.DensityKgPerM3, 50, 2000, "kg/m³");
        Require.Within(question.RetentionKgPerM3, Ranges.RetentionKgPerM3);
        Require.Within(question.SolutionDensityKgPerM3, Ranges.SolutionDensityKgPerM3);
        Require.Positive(question.UptakeLPerM3.Value, "L/m³");
        Require.Positive(question.ZoneLPerM3.Value, "L/m³");
        var perLitre = question.SolutionDensityKgPerM3 / 1000;
        var strength = Require.InRange(question.StrengthShare, 0, ChargeQuestion.AnySolutionPercent / 100, "(share)");
        var strengthShare = Relative(question.ZoneLPerM3);
        var litres = question.VolumeM3 * question.UptakeLPerM3.Value;
        var uptakeShare = Relative(question.UptakeLPerM3);
        var mass = litres * perLitre;
        var before = question.VolumeM3 * question.DensityKgPerM3;
        return new ChargePlan
        {
            Question = question,
            StrengthPercent = new Estimate(100 * strength, 100 * strength * strengthShare),
            SolutionL = new Estimate(litres, litres * uptakeShare),
            // More uptake in a zone that takes more, at a strength set beforehand: only the uptake's share remains.
            ConcentrateKg = new Estimate(mass * strength, mass * strength * uptakeShare),
            WaterKg = new Estimate(mass * (1 - strength), mass * (1 - strength) * uptakeShare),
            WeightBeforeKg = before,
            WeightAfterKg = new Estimate(before + mass, mass * uptakeShare),
        };
    }

    private static double Relative(Estimate estimate) => estimate.StandardUncertainty / estimate.Value;
}
