namespace Alburnum.Impregnation.Charging;

/// <summary>What was read at the vessel. Volumes in L at the tank's gauge, weights in kg.</summary>
public sealed record ChargeReadings
{
    /// <summary>Volume of the timber, m³.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Solution in the tank before flooding.</summary>
    public required double TankBeforeL { get; init; }

    /// <summary>Solution in the tank at the end of the pressure period, the vessel full; null where not read.</summary>
    public required double? TankAtPeakL { get; init; }

    /// <summary>Free volume of the vessel around the timber, that the solution fills; null where not known.</summary>
    public required double? VesselFreeL { get; init; }

    /// <summary>Solution in the tank after the vessel was emptied and the drip pumped back.</summary>
    public required double TankAfterL { get; init; }

    /// <summary>Standard uncertainty of one tank reading.</summary>
    public required double TankStandardUncertaintyL { get; init; }

    /// <summary>Weight of the timber before; null where not weighed.</summary>
    public required double? WeightBeforeKg { get; init; }

    /// <summary>Weight of the timber after; null where not weighed.</summary>
    public required double? WeightAfterKg { get; init; }

    /// <summary>Standard uncertainty of one weighing.</summary>
    public required double WeightStandardUncertaintyKg { get; init; }

    /// <summary>Strength before, % of product by mass.</summary>
    public required double StrengthBeforePercent { get; init; }

    /// <summary>Strength after; null where not measured.</summary>
    public required double? StrengthAfterPercent { get; init; }

    /// <summary>Density of the solution.</summary>
    public required double SolutionDensityKgPerM3 { get; init; }
}

/// <summary>A charge reckoned from its readings.</summary>
public sealed record ChargeAccount
{
    /// <summary>Solution kept, by the tank.</summary>
    public required Estimate NetByTankL { get; init; }

    /// <summary>Solution kept, by weight; null where the timber was not weighed twice.</summary>
    public required Estimate? NetByWeightL { get; init; }

    /// <summary>Solution in the timber at the end of the pressure period; null where it was not read.</summary>
    public required Estimate? GrossL { get; init; }

    /// <summary>Solution given back at release; null where gross is.</summary>
    public required Estimate? KickbackL { get; init; }

    /// <summary>Net uptake, by weight where weighed, else by the tank.</summary>
    public required Estimate NetLPerM3 { get; init; }

    /// <summary>Product to the m³ of timber (whole piece, not the zone).</summary>
    public required Estimate RetentionKgPerM3 { get; init; }

    /// <summary>Tank less weight; null where there is only one of them.</summary>
    public required Estimate? DiscrepancyL { get; init; }

    /// <summary>What the readings say of each other, one sentence each.</summary>
    public required IReadOnlyList<string> Explanations { get; init; }

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
        return new ChargeAccount
        {
            NetByTankL = byTank,
            NetByWeightL = byWeight,
            GrossL = gross,
            KickbackL = kickback,
            NetLPerM3 = perM3,
            RetentionKgPerM3 = new Estimate(perM3.Value * productPerL, perM3.StandardUncertainty * productPerL),
            DiscrepancyL = discrepancy,
            Explanations = [.. Explain(readings, discrepancy, kickback)],
        };
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
