using Alburnum.Facts;
using Alburnum.Measures;

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

    /// <summary>Standard uncertainty of one strength, % of product by mass.</summary>
    public required double StrengthStandardUncertaintyPercent { get; init; }

    /// <summary>Density of the solution.</summary>
    public required double SolutionDensityKgPerM3 { get; init; }

    /// <summary>Standard uncertainty of that density.</summary>
    public double SolutionDensityStandardUncertaintyKgPerM3 { get; init; }

    /// <summary>Standard uncertainty of the timber's volume, as a share of it.</summary>
    public double VolumeStandardUncertaintyShare { get; init; }
}

/// <summary>What a charge took up, worked out from its readings.</summary>
public sealed record ChargeAccount
{
    // So many standard uncertainties below nothing, an uptake is no reading of one charge.
    private const double Surely = 3;

    // Share by which the strength may drift before it is worth a word.
    private const double StrengthChangeNoted = 0.05;

    /// <summary>Solution kept, by the tank.</summary>
    public required Estimate NetByTankL { get; init; }

    /// <summary>Solution kept, by weight; null where the timber was not weighed twice.</summary>
    public required Estimate? NetByWeightL { get; init; }

    /// <summary>Solution in the timber at the end of the pressure period; null where it was not read.</summary>
    public required Estimate? GrossL { get; init; }

    /// <summary>Solution given back at release; null where gross is.</summary>
    public required Estimate? KickbackL { get; init; }

    /// <summary>
    /// Solution kept: by weight where weighed, otherwise by the tank. Where the two differ beyond doubt, nothing tells which is wrong: their middle, with half
    /// of what parts them as a standard uncertainty.
    /// </summary>
    public required Estimate NetL { get; init; }

    /// <summary>The same to the m³ of timber.</summary>
    public required Estimate NetLPerM3 { get; init; }

    /// <summary>Product to the m³ of timber (whole piece, not the zone), by the tank's balance of product.</summary>
    public required Estimate RetentionKgPerM3 { get; init; }

    /// <summary>What makes that retention uncertain, part by part. The parts are independent, and their root of the sum of squares is its standard uncertainty.</summary>
    public required IReadOnlyList<ChargeUncertainty> RetentionBudget { get; init; }

    /// <summary>Product kept beyond what the solution kept carried at the strength before, as a share of that; null where the strength after was not measured.</summary>
    public required Estimate? SelectiveShare { get; init; }

    /// <summary>Tank less weight; null where there is only one of them.</summary>
    public required Estimate? DiscrepancyL { get; init; }

    /// <summary>What the readings say of each other.</summary>
    public required IReadOnlyList<ChargeFinding> Findings { get; init; }

    /// <summary>Works a charge out.</summary>
    /// <param name="readings">What was read.</param>
    /// <exception cref="ArgumentException">The readings have <see cref="Faults"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No timber, or a solution that cannot be.</exception>
    public static ChargeAccount Of(ChargeReadings readings)
    {
        if (Faults(readings) is [var fault, ..])
            throw new ArgumentException(fault.ToString(), nameof(readings));
        Require.Positive(readings.VolumeM3, "m³");
        Require.Within(readings.StrengthBeforePercent, Ranges.StrengthPercent);
        Require.Within(readings.SolutionDensityKgPerM3, Ranges.SolutionDensityKgPerM3);
        var density = readings.SolutionDensityKgPerM3 / 1000;
        var twoReadings = Math.Sqrt(2) * readings.TankStandardUncertaintyL;
        var byTank = new Estimate(readings.TankBeforeL - readings.TankAfterL, twoReadings);
        Estimate? byWeight = WeighedL(readings) is { } gained
            ? new(gained, Math.Sqrt(2) * readings.WeightStandardUncertaintyKg / density)
            : null;
        Estimate? gross = GrossAtPeakL(readings) is { } atPeak ? new(atPeak, twoReadings) : null;
        Estimate? discrepancy = byWeight is { } weighed
            ? new(byTank.Value - weighed.Value, Combined(byTank.StandardUncertainty, weighed.StandardUncertainty))
            : null;
        var (net, byScales) = Net(byTank, byWeight, discrepancy);
        Estimate? kickback = gross is { } most
            ? new(most.Value - net.Value, Combined(most.StandardUncertainty, net.StandardUncertainty))
            : null;
        IReadOnlyList<ChargeUncertainty> budget = [.. Budget(readings, net.Value, byScales, discrepancy)];
        var retention = new Estimate(
            Product(readings, net.Value) / readings.VolumeM3,
            UncertaintyBudget.Combine([.. budget.Select(part => part.KgPerM3)])
        );
        var perM3 = new Estimate(
            net.Value / readings.VolumeM3,
            Combined(net.StandardUncertainty, net.Value * readings.VolumeStandardUncertaintyShare) / readings.VolumeM3
        );
        return new ChargeAccount
        {
            NetByTankL = byTank,
            NetByWeightL = byWeight,
            GrossL = gross,
            KickbackL = kickback,
            NetL = net,
            NetLPerM3 = perM3,
            RetentionKgPerM3 = retention,
            RetentionBudget = budget,
            SelectiveShare = Selective(readings, net),
            DiscrepancyL = discrepancy,
            Findings = [.. Compared(readings, discrepancy, IsBeyondPeak(gross, [byTank, byWeight, net]))],
        };
    }

    private static bool IsBeyondDoubt(Estimate? difference) =>
        difference is { } off && Math.Abs(off.Value) > 2 * off.StandardUncertainty;

    // What was kept, and how much of it the scales say.
    private static (Estimate NetL, double ByScales) Net(Estimate byTank, Estimate? byWeight, Estimate? discrepancy)
    {
        if (byWeight is not { } weighed)
            return (byTank, 0);
        if (discrepancy is not { } off || !IsBeyondDoubt(off))
            return (weighed, 1);
        var reading = Combined(byTank.StandardUncertainty, weighed.StandardUncertainty) / 2;
        return (new((byTank.Value + weighed.Value) / 2, Combined(reading, off.Value / 2)), 0.5);
    }

    private static bool IsBeyondPeak(Estimate? gross, IEnumerable<Estimate?> kept) =>
        gross is { } most
        && kept.OfType<Estimate>()
            .Any(net => net.Value - most.Value > 2 * Combined(net.StandardUncertainty, most.StandardUncertainty));

    // The tank's balance of product: what was in it before, less what is in it now. Where the timber takes up product before water, the rest
    // of the tank falls in strength, and far more product is gone than the solution kept could carry.
    private static double Product(ChargeReadings readings, double netL) =>
        readings.SolutionDensityKgPerM3
        / 1e5
        * (
            readings.TankBeforeL * readings.StrengthBeforePercent
            - (readings.TankBeforeL - netL) * (readings.StrengthAfterPercent ?? readings.StrengthBeforePercent)
        );

    // Each reading moved by its standard uncertainty (JCGM 100:2008, 5.1.3), everything that it goes into moving along.
    private static IEnumerable<ChargeUncertainty> Budget(
        ChargeReadings readings,
        double netL,
        double byScales,
        Estimate? discrepancy
    )
    {
        var (before, left) = (readings.StrengthBeforePercent, readings.TankBeforeL - netL);
        var after = readings.StrengthAfterPercent ?? before;
        var byTank = 1 - byScales;
        var (strength, tank) = (readings.StrengthStandardUncertaintyPercent, readings.TankStandardUncertaintyL);
        var density = readings.SolutionDensityKgPerM3 / 1e5;
        // Where it was read once, before and after share one error.
        if (readings.StrengthAfterPercent is null)
            yield return Part(ChargeCause.Strength, density * netL * strength);
        else
        {
            yield return Part(ChargeCause.StrengthBefore, density * readings.TankBeforeL * strength);
            yield return Part(ChargeCause.StrengthAfter, density * left * strength);
        }
        yield return Part(ChargeCause.TankBefore, density * (before - byScales * after) * tank);
        if (byScales > 0)
            yield return Part(
                ChargeCause.Weighing,
                byScales * Math.Sqrt(2) * readings.WeightStandardUncertaintyKg * after / 100
            );
        if (byTank > 0)
            yield return Part(ChargeCause.TankAfter, byTank * density * after * tank);
        if (byScales is > 0 and < 1)
            yield return Part(ChargeCause.TankAgainstScales, density * after * discrepancy!.Value.Value / 2);
        // The solution that the scales found does not hang on its density.
        yield return Part(
            ChargeCause.SolutionDensity,
            (readings.TankBeforeL * (before - after) + byTank * (readings.TankBeforeL - readings.TankAfterL) * after)
                / 1e5
                * readings.SolutionDensityStandardUncertaintyKgPerM3
        );
        yield return Part(ChargeCause.TimberVolume, Product(readings, netL) * readings.VolumeStandardUncertaintyShare);

        ChargeUncertainty Part(ChargeCause cause, double kg) => new(cause, Math.Abs(kg) / readings.VolumeM3);
    }

    // T(b - a)/(N b) and Na/(Nb) - 1 together: what the fall in strength of the whole tank adds.
    private static Estimate? Selective(ChargeReadings readings, Estimate net)
    {
        if (readings.StrengthAfterPercent is not { } after || net.Value <= 0)
            return null;
        var (before, strength) = (readings.StrengthBeforePercent, readings.StrengthStandardUncertaintyPercent);
        var left = readings.TankBeforeL - net.Value;
        var ratio = after / before;
        return new(
            left * (1 - ratio) / net.Value,
            UncertaintyBudget.Combine(
                left / net.Value * strength / before,
                left / net.Value * ratio * strength / before,
                readings.TankBeforeL * (1 - ratio) / (net.Value * net.Value) * net.StandardUncertainty
            )
        );
    }

    private static IEnumerable<ChargeFinding> Compared(
        ChargeReadings readings,
        Estimate? discrepancy,
        bool isBeyondPeak
    )
    {
        if (discrepancy is not { } off)
            yield return new NotWeighed();
        else if (!IsBeyondDoubt(off))
            yield return new TankAndWeightAgree();
        else
            yield return off.Value > 0 ? new TankLostMore(off.Value) : new TimberGainedMore(-off.Value);
        if (isBeyondPeak)
            yield return new KeptMoreThanAtPeak();
        if (readings.StrengthAfterPercent is not { } end)
            yield break;
        var change = end / readings.StrengthBeforePercent - 1;
        if (change < -StrengthChangeNoted)
            yield return new SolutionLostStrength(-100 * change);
        else if (change > StrengthChangeNoted)
            yield return new SolutionGainedStrength(100 * change);
    }

    /// <summary>Where the readings contradict each other; empty where they can belong to one charge.</summary>
    public static IReadOnlyList<ChargeFault> Faults(ChargeReadings readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return [.. Contradictions(readings)];
    }

    private static IEnumerable<ChargeFault> Contradictions(ChargeReadings readings)
    {
        if (readings.TankAfterL > readings.TankBeforeL)
            yield return new TankGained(readings.TankBeforeL, readings.TankAfterL);
        if (readings.TankAtPeakL is { } peak && peak > readings.TankBeforeL)
            yield return new TankRoseToPeak(peak);
        else if (
            GrossAtPeakL(readings) is { } gross
            && gross < -Surely * Math.Sqrt(2) * readings.TankStandardUncertaintyL
        )
            yield return new VesselGained(
                readings.TankAtPeakL!.Value,
                Math.Max(0, readings.TankBeforeL - readings.VesselFreeL!.Value)
            );
        if (readings.TankAtPeakL is null != readings.VesselFreeL is null)
            yield return new GrossHalfRead(IsPeakMissing: readings.TankAtPeakL is null);
        if (readings.WeightBeforeKg is null != readings.WeightAfterKg is null)
            yield return new WeighedOnce(IsBeforeMissing: readings.WeightBeforeKg is null);
        if (readings is { WeightBeforeKg: { } before, WeightAfterKg: { } after } && after < before)
            yield return new TimberLost(before, after);
        if (
            readings.WeightBeforeKg is { } weight
            && readings.VolumeM3 * Ranges.DensityKgPerM3.Low is var lightest
            && weight < lightest
        )
            yield return new TimberTooLight(weight, lightest);
        foreach (var fault in BeyondVolume(readings))
            yield return fault;
        if (
            readings is { StrengthBeforePercent: > 0, StrengthAfterPercent: { } end, TankAfterL: > 0 and var left }
            && left <= readings.TankBeforeL
            && readings.StrengthBeforePercent * readings.TankBeforeL / left is var most
            && end - most > 2 * Math.Sqrt(2) * readings.StrengthStandardUncertaintyPercent
        )
            yield return new TankGainedProduct(end, most);
    }

    // All of it under water holds no more than its own volume.
    private static IEnumerable<ChargeFault> BeyondVolume(ChargeReadings readings)
    {
        (UptakeReading Read, double? Litres)[] uptakes =
        [
            (UptakeReading.TankAfter, readings.TankBeforeL - readings.TankAfterL),
            (UptakeReading.TankAtPeak, GrossAtPeakL(readings)),
            (UptakeReading.WeightAfter, WeighedL(readings)),
        ];
        return uptakes
            .Where(uptake => uptake.Litres > 1000 * readings.VolumeM3)
            .Select(uptake => new TookMoreThanTimber(uptake.Read, uptake.Litres!.Value, readings.VolumeM3));
    }

    private static double? WeighedL(ChargeReadings readings) =>
        1000 * (readings.WeightAfterKg - readings.WeightBeforeKg) / readings.SolutionDensityKgPerM3;

    private static double? GrossAtPeakL(ChargeReadings readings) =>
        readings.TankBeforeL - readings.TankAtPeakL - readings.VesselFreeL;

    private static double Combined(double a, double b) => Math.Sqrt(a * a + b * b);
}
