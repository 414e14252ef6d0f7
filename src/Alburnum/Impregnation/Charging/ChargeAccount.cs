namespace Alburnum.Impregnation.Charging;

/// <summary>What was read at the vessel. Volumes in L at the tank's gauge, weights in kg.</summary>
/// <param name="VolumeM3">Volume of the timber, m³.</param>
/// <param name="TankBeforeL">Solution in the tank before flooding.</param>
/// <param name="TankAtPeakL">Solution in the tank at the end of the pressure period, the vessel full; null where not read.</param>
/// <param name="VesselFreeL">Free volume of the vessel around the timber, that the solution fills; null where not known.</param>
/// <param name="TankAfterL">Solution in the tank after the vessel was emptied and the drip pumped back.</param>
/// <param name="TankStandardUncertaintyL">Standard uncertainty of one tank reading.</param>
/// <param name="WeightBeforeKg">Weight of the timber before; null where not weighed.</param>
/// <param name="WeightAfterKg">Weight of the timber after; null where not weighed.</param>
/// <param name="WeightStandardUncertaintyKg">Standard uncertainty of one weighing.</param>
/// <param name="StrengthBeforePercent">Strength before, % of product by mass.</param>
/// <param name="StrengthAfterPercent">Strength after; null where not measured.</param>
/// <param name="SolutionDensityKgPerM3">Density of the solution.</param>
public sealed record ChargeReadings(
    double VolumeM3,
    double TankBeforeL,
    double? TankAtPeakL,
    double? VesselFreeL,
    double TankAfterL,
    double TankStandardUncertaintyL,
    double? WeightBeforeKg,
    double? WeightAfterKg,
    double WeightStandardUncertaintyKg,
    double StrengthBeforePercent,
    double? StrengthAfterPercent,
    double SolutionDensityKgPerM3
);

/// <summary>A charge reckoned from its readings.</summary>
/// <param name="NetByTankL">Solution kept, by the tank.</param>
/// <param name="NetByWeightL">Solution kept, by weight; null where the timber was not weighed twice.</param>
/// <param name="GrossL">Solution in the timber at the end of the pressure period; null where it was not read.</param>
/// <param name="KickbackL">Solution given back at release; null where gross is.</param>
/// <param name="NetLPerM3">Net uptake, by weight where weighed, else by the tank.</param>
/// <param name="RetentionKgPerM3">Product to the m³ of timber (whole piece, not the zone).</param>
/// <param name="DiscrepancyL">Tank less weight; null where there is only one of them.</param>
/// <param name="Explanations">What the readings say of each other, one sentence each.</param>
public sealed record ChargeAccount(
    Estimate NetByTankL,
    Estimate? NetByWeightL,
    Estimate? GrossL,
    Estimate? KickbackL,
    Estimate NetLPerM3,
    Estimate RetentionKgPerM3,
    Estimate? DiscrepancyL,
    IReadOnlyList<string> Explanations
)
{
    /// <summary>Reckons a charge.</summary>
    /// <param name="readings">What was read.</param>
    /// <exception cref="InputRefusedException">Readings that cannot belong to one charge.</exception>
    public static ChargeAccount Of(ChargeReadings readings)
    {
        Check(readings);
        var density = readings.SolutionDensityKgPerM3 / 1000;
        var twoReadings = Math.Sqrt(2) * readings.TankStandardUncertaintyL;
        var byTank = new Estimate(readings.TankBeforeL - readings.TankAfterL, twoReadings);
        Estimate? byWeight = readings is { WeightBeforeKg: { } before, WeightAfterKg: { } after }
            ? new((after - before) / density, Math.Sqrt(2) * readings.WeightStandardUncertaintyKg / density)
            : null;
        Estimate? gross = readings is { TankAtPeakL: { } peak, VesselFreeL: { } free }
            ? new(readings.TankBeforeL - peak - free, twoReadings)
            : null;
        var net = byWeight ?? byTank;
        Estimate? kickback = gross is { } most
            ? new(most.Value - net.Value, Combined(most.StandardUncertainty, net.StandardUncertainty))
            : null;
        var strength = readings.StrengthAfterPercent is { } end
            ? (readings.StrengthBeforePercent + end) / 2
            : readings.StrengthBeforePercent;
        var perM3 = new Estimate(net.Value / readings.VolumeM3, net.StandardUncertainty / readings.VolumeM3);
        var productPerL = density * strength / 100;
        Estimate? discrepancy = byWeight is { } weighed
            ? new(byTank.Value - weighed.Value, Combined(byTank.StandardUncertainty, weighed.StandardUncertainty))
            : null;
        return new ChargeAccount(
            byTank,
            byWeight,
            gross,
            kickback,
            perM3,
            new Estimate(perM3.Value * productPerL, perM3.StandardUncertainty * productPerL),
            discrepancy,
            [.. Explain(readings, discrepancy, kickback)]
        );
    }

    private static IEnumerable<string> Explain(ChargeReadings readings, Estimate? discrepancy, Estimate? kickback)
    {
        if (discrepancy is { } off)
        {
            if (Math.Abs(off.Value) <= 2 * off.StandardUncertainty)
                yield return "Tank and weight agree within their uncertainty.";
            else if (off.Value > 0)
                yield return FormattableString.Invariant(
                    $"The tank lost {off.Value:0} L more than the timber gained: drip not pumped back before the reading, a leak, evaporation, or solution held in stacking and on surfaces."
                );
            else
                yield return FormattableString.Invariant(
                    $"The timber gained {-off.Value:0} L more than the tank lost: rain or snow on the load, the load not drained when weighed, or water let into the tank."
                );
        }
        else
        {
            yield return "The timber was not weighed before and after: nothing checks the tank.";
        }
        if (kickback is { } back && back.Value < -2 * back.StandardUncertainty)
            yield return "More was kept than was in the timber at peak pressure: the free volume of the vessel or a reading is wrong.";
        if (readings.StrengthAfterPercent is { } end)
        {
            var change = end / readings.StrengthBeforePercent - 1;
            if (change < -0.05)
                yield return FormattableString.Invariant(
                    $"The solution lost {-100 * change:0} % of its strength: product taken up ahead of the water, water from wet timber, or rain; check the strength before the next charge."
                );
            else if (change > 0.05)
                yield return FormattableString.Invariant(
                    $"The solution gained {100 * change:0} % of strength: water taken up ahead of the product, or evaporation; check the strength before the next charge."
                );
        }
    }

    private static void Check(ChargeReadings readings)
    {
        var problems = new List<InputProblem>();
        void Refuse(string field, double found, string expected) =>
            problems.Add(
                new InputProblem("readings", 0, "", field, FormattableString.Invariant($"{found:0.###}"), expected)
            );
        if (!(readings.VolumeM3 > 0))
            Refuse("volumeM3", readings.VolumeM3, "above 0 m³");
        if (readings.TankAfterL > readings.TankBeforeL)
            Refuse(
                "tankAfterL",
                readings.TankAfterL,
                FormattableString.Invariant(
                    $"at most the {readings.TankBeforeL:0.#} L before: timber does not give solution to the tank"
                )
            );
        if (readings.TankAtPeakL is { } peak && peak > readings.TankBeforeL)
            Refuse("tankAtPeakL", peak, "at most what was in the tank before");
        if (readings is { WeightBeforeKg: { } before, WeightAfterKg: { } after } && after < before)
            Refuse("weightAfterKg", after, FormattableString.Invariant($"at least the {before:0.#} kg before"));
        if (!(readings.StrengthBeforePercent is > 0 and <= 100))
            Refuse("strengthBeforePercent", readings.StrengthBeforePercent, "above 0 to 100 %");
        if (!(readings.SolutionDensityKgPerM3 is >= 600 and <= 1600))
            Refuse("solutionDensityKgPerM3", readings.SolutionDensityKgPerM3, "600 to 1600 kg/m³");
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
    }

    private static double Combined(double a, double b) => Math.Sqrt(a * a + b * b);
}
