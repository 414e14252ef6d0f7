namespace Alburnum.Impregnation.Charging;

/// <summary>What a charge consists of and what it must reach.</summary>
/// <param name="VolumeM3">Volume of the timber, m³.</param>
/// <param name="SurfaceM2">Lateral surface of the timber, m².</param>
/// <param name="DensityKgPerM3">Density of the timber with its water, kg/m³.</param>
/// <param name="UptakeLPerM3">Net uptake expected, L to the m³ of timber.</param>
/// <param name="ZoneLPerM3">Solution expected in the analytical zone, L to the m³ of zone.</param>
/// <param name="RetentionKgPerM3">Product required in the analytical zone, kg/m³.</param>
/// <param name="SolutionDensityKgPerM3">Density of the working solution, kg/m³.</param>
public sealed record ChargeQuestion(
    double VolumeM3,
    double SurfaceM2,
    double DensityKgPerM3,
    Estimate UptakeLPerM3,
    Estimate ZoneLPerM3,
    double RetentionKgPerM3,
    double SolutionDensityKgPerM3
);

/// <summary>The plan for one charge. Every amount is worked from the question by the equations beside it.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="StrengthPercent">Strength of the working solution, % of product by mass.</param>
/// <param name="SolutionL">Solution the timber is expected to keep, L.</param>
/// <param name="ConcentrateKg">Product in that solution, kg.</param>
/// <param name="WaterKg">Water in that solution, kg.</param>
/// <param name="WeightBeforeKg">Weight of the timber before, kg.</param>
/// <param name="WeightAfterKg">Weight expected after, kg.</param>
public sealed record ChargePlan(
    ChargeQuestion Question,
    Estimate StrengthPercent,
    Estimate SolutionL,
    Estimate ConcentrateKg,
    Estimate WaterKg,
    double WeightBeforeKg,
    Estimate WeightAfterKg
)
{
    /// <summary>Plans a charge.</summary>
    /// <param name="question">What is asked.</param>
    /// <exception cref="InputRefusedException">The zone takes so little that no solution could hold the product.</exception>
    /// <remarks>
    /// Strength c = R/(z·ρ): the zone's solution must carry the retention. Solution V·u; product c·ρ·V·u; the rest is water.
    /// Uncertainties by first-order propagation (JCGM 100, 5.1.2), uptake and zone taken as moving together.
    /// </remarks>
    public static ChargePlan For(ChargeQuestion question)
    {
        Require.Positive(question.VolumeM3, "m³");
        Require.InRange(question.SurfaceM2, 0, 1e7, "m²");
        Require.InRange(question.DensityKgPerM3, 50, 2000, "kg/m³");
        Require.Positive(question.RetentionKgPerM3, "kg/m³");
        Require.InRange(question.SolutionDensityKgPerM3, 600, 1600, "kg/m³");
        Require.Positive(question.UptakeLPerM3.Value, "L/m³");
        Require.Positive(question.ZoneLPerM3.Value, "L/m³");
        var perLitre = question.SolutionDensityKgPerM3 / 1000;
        var strength = question.RetentionKgPerM3 / (question.ZoneLPerM3.Value * perLitre);
        if (strength > 0.5)
        {
            var found = FormattableString.Invariant($"{question.ZoneLPerM3.Value:0.#} L to the m³ of zone");
            throw new InputRefusedException(
                new InputProblem(
                    "charge",
                    0,
                    "",
                    "retention",
                    found,
                    "a zone that takes more: incise, hold the pressure longer, or choose another timber"
                )
            );
        }
        var strengthShare = Relative(question.ZoneLPerM3);
        var litres = question.VolumeM3 * question.UptakeLPerM3.Value;
        var uptakeShare = Relative(question.UptakeLPerM3);
        var mass = litres * perLitre;
        var before = question.VolumeM3 * question.DensityKgPerM3;
        return new ChargePlan(
            question,
            new Estimate(100 * strength, 100 * strength * strengthShare),
            new Estimate(litres, litres * uptakeShare),
            // More uptake in a zone that takes more, at a strength set beforehand: only the uptake's share remains.
            new Estimate(mass * strength, mass * strength * uptakeShare),
            new Estimate(mass * (1 - strength), mass * (1 - strength) * uptakeShare),
            before,
            new Estimate(before + mass, mass * uptakeShare)
        );
    }

    private static double Relative(Estimate estimate) => estimate.StandardUncertainty / estimate.Value;
}
