namespace Alburnum.Impregnation.Prediction;

/// <summary>What kind of evidence of a wood's permeability it is; earlier kinds are trusted before later ones.</summary>
public enum PlantEvidenceKind
{
    /// <summary>Depths on cut pieces.</summary>
    Depths,

    /// <summary>Net uptakes of charges.</summary>
    Uptakes,

    /// <summary>The tank's readings while the wood lay in the solution.</summary>
    Tank,

    /// <summary>Assays of zones, one below the other.</summary>
    Zones,
}

/// <summary>What was read of one whole charge: it speaks of the median of the charge's wood.</summary>
/// <param name="Charge">The charge.</param>
public abstract record ChargeEvidence(string Charge)
{
    /// <summary>Of what kind it is.</summary>
    public abstract PlantEvidenceKind Kind { get; }

    /// <summary>How many laws of what the walls take it tells apart; 1 where it says nothing of them. The same for all that do.</summary>
    public virtual int Walls => 1;

    /// <summary>Logarithm of how likely it is, less a constant.</summary>
    /// <param name="lnM2">Logarithm of the charge's median permeability at the moisture asked about, m².</param>
    /// <param name="lnFactor">Logarithm of what the plant's uptakes are over those expected.</param>
    /// <param name="walls">Number of the law of the walls, from 0.</param>
    public abstract double LnLikelihood(double lnM2, double lnFactor, int walls);

    /// <summary>Logarithm of a normal density of readings whose expected values are off together by one share, and each by itself; a constant left out.</summary>
    /// <param name="readings">What was read, what is expected, and the variance of each by itself.</param>
    /// <param name="commonVariance">Variance of the share by which all expected values are off together.</param>
    /// <param name="isFromAnyZero">True where the readings count from a zero that nobody knows: any is as likely.</param>
    private protected static double LnDensity(
        ReadOnlySpan<(double Read, double Expected, double Variance)> readings,
        double commonVariance,
        bool isFromAnyZero
    )
    {
        double weights = 0,
            ofRest = 0,
            ofExpected = 0,
            restSquared = 0,
            both = 0,
            expectedSquared = 0,
            ln = 0;
        foreach (var (read, expected, variance) in readings)
        {
            var (weight, rest) = (1 / variance, read - expected);
            weights += weight;
            ofRest += weight * rest;
            ofExpected += weight * expected;
            restSquared += weight * rest * rest;
            both += weight * rest * expected;
            expectedSquared += weight * expected * expected;
            ln += Math.Log(variance);
        }
        if (isFromAnyZero)
        {
            restSquared -= ofRest * ofRest / weights;
            both -= ofRest * ofExpected / weights;
            expectedSquared -= ofExpected * ofExpected / weights;
            ln += Math.Log(weights);
        }
        var more = 1 + commonVariance * expectedSquared;
        return -(restSquared - commonVariance * both * both / more + ln + Math.Log(more)) / 2;
    }
}

/// <summary>Net uptake of a plant's own charge.</summary>
/// <param name="Charge">The charge.</param>
/// <param name="LPerM3">Uptake, L/m³ of wood. Above 0.</param>
/// <param name="Curve">What is expected of it.</param>
public sealed record PlantUptake(string Charge, double LPerM3, UptakeCurve Curve) : ChargeEvidence(Charge)
{
    /// <inheritdoc/>
    public override PlantEvidenceKind Kind => PlantEvidenceKind.Uptakes;

    /// <inheritdoc/>
    public override double LnLikelihood(double lnM2, double lnFactor, int walls)
    {
        var (ln, variance) = Curve.At(lnM2);
        var rest = Math.Log(LPerM3) - ln - lnFactor;
        return -(rest * rest / variance + Math.Log(variance)) / 2;
    }
}

/// <summary>The tank's reading at one moment.</summary>
/// <param name="GoneLPerM3">Solution gone from the tank since any one moment with the vessel full, L per m³ of the charge's wood.</param>
/// <param name="ULPerM3">Its standard uncertainty, L/m³. Above 0.</param>
/// <param name="Curve">The uptake expected by then.</param>
public sealed record TankReading(double GoneLPerM3, double ULPerM3, UptakeCurve Curve);

/// <summary>The tank's readings while the wood of a charge lay in the solution.</summary>
/// <param name="Charge">The charge.</param>
/// <param name="Readings">Each reading, by time. Two or more: what the empty vessel took is not known, so that only differences count.</param>
public sealed record TankReadings(string Charge, IReadOnlyList<TankReading> Readings) : ChargeEvidence(Charge)
{
    /// <summary>By how much of itself an uptake at one moment may be off by itself: the laws of flow are not so exact in time. Our own choice.</summary>
    public const double AtOneMoment = 0.05;

    /// <inheritdoc/>
    public override PlantEvidenceKind Kind => PlantEvidenceKind.Tank;

    /// <inheritdoc/>
    public override double LnLikelihood(double lnM2, double lnFactor, int walls)
    {
        Span<(double Read, double Expected, double Variance)> readings =
            stackalloc (double, double, double)[Readings.Count];
        double common = 0;
        for (var i = 0; i < Readings.Count; i++)
        {
            var (ln, variance) = Readings[i].Curve.At(lnM2);
            var (expected, u) = (Math.Exp(ln + lnFactor), Readings[i].ULPerM3);
            readings[i] = (Readings[i].GoneLPerM3, expected, u * u + AtOneMoment * AtOneMoment * expected * expected);
            common = variance;
        }
        return LnDensity(readings, common, isFromAnyZero: true);
    }
}

/// <summary>Product found in one zone of a charge's pieces.</summary>
/// <param name="KgPerM3">Product, kg per m³ of the zone. 0 or more.</param>
/// <param name="UKgPerM3">Standard uncertainty of the laboratory, kg/m³. 0 or more.</param>
/// <param name="Curve">Product expected of the zone, kg/m³, by the charge's median permeability and the law of the walls.</param>
public sealed record ZoneAssay(double KgPerM3, double UKgPerM3, Func<double, int, double> Curve);

/// <summary>Assays of zones of a charge, one below the other.</summary>
/// <param name="Charge">The charge.</param>
/// <param name="Zones">Each zone. One or more.</param>
/// <param name="FullKgPerM3">Product in wood whose cavities are full of the solution, kg/m³.</param>
/// <param name="WallLaws">How many laws of the walls are weighed.</param>
public sealed record ZoneAssays(string Charge, IReadOnlyList<ZoneAssay> Zones, double FullKgPerM3, int WallLaws)
    : ChargeEvidence(Charge)
{
    /// <summary>By how much of itself the product of one zone may be off by itself: few cores, and a saw that does not cut to the tenth of a millimetre. Our own choice.</summary>
    public const double OfOneZone = 0.15;

    /// <summary>The same as a share of what full cavities hold: product that diffused, or was carried along by the saw.</summary>
    public const double AtLeast = 0.02;

    /// <summary>By how much all zones of a charge may be off together: strength and density of the solution, and which pieces were cored.</summary>
    public const double OfCharge = 0.07;

    /// <inheritdoc/>
    public override PlantEvidenceKind Kind => PlantEvidenceKind.Zones;

    /// <inheritdoc/>
    public override int Walls => WallLaws;

    /// <inheritdoc/>
    public override double LnLikelihood(double lnM2, double lnFactor, int walls)
    {
        Span<(double Read, double Expected, double Variance)> readings =
            stackalloc (double, double, double)[Zones.Count];
        for (var i = 0; i < Zones.Count; i++)
        {
            var expected = Zones[i].Curve(lnM2, walls) * Math.Exp(lnFactor);
            var own = double.Hypot(OfOneZone * expected, AtLeast * FullKgPerM3);
            readings[i] = (Zones[i].KgPerM3, expected, own * own + Zones[i].UKgPerM3 * Zones[i].UKgPerM3);
        }
        return LnDensity(readings, OfCharge * OfCharge, isFromAnyZero: false);
    }
}
