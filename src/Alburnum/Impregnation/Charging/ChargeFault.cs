namespace Alburnum.Impregnation.Charging;

/// <summary>How readings of one charge contradict each other.</summary>
public abstract record ChargeFault
{
    private protected ChargeFault() { }
}

/// <summary>More in the tank after than before: timber does not give solution to the tank.</summary>
/// <param name="BeforeL">In the tank before, L.</param>
/// <param name="AfterL">In the tank after, L.</param>
public sealed record TankGained(double BeforeL, double AfterL) : ChargeFault;

/// <summary>More in the tank at peak pressure than before flooding.</summary>
/// <param name="PeakL">In the tank at peak pressure, L.</param>
public sealed record TankRoseToPeak(double PeakL) : ChargeFault;

/// <summary>Less in tank and vessel before the pressure than at its peak: timber does not give solution while it is pressed in.</summary>
/// <param name="PeakL">In the tank at peak pressure, L.</param>
/// <param name="MostL">The most it can be, L.</param>
public sealed record VesselGained(double PeakL, double MostL) : ChargeFault;

/// <summary>Timber lighter before than any wood.</summary>
/// <param name="BeforeKg">Weight before, kg.</param>
/// <param name="LeastKg">What as much of the lightest wood weighs, kg.</param>
public sealed record TimberTooLight(double BeforeKg, double LeastKg) : ChargeFault;

/// <summary>More product in the tank after than before.</summary>
/// <param name="AfterPercent">Strength after, % of product by mass.</param>
/// <param name="MostPercent">The strength that it would have if the timber had taken water alone, % of product by mass.</param>
public sealed record TankGainedProduct(double AfterPercent, double MostPercent) : ChargeFault;

/// <summary>More solution taken up than the timber has volume.</summary>
/// <param name="Read">The reading that says so.</param>
/// <param name="Litres">Solution taken up by it, L.</param>
/// <param name="VolumeM3">Volume of the timber, m³.</param>
public sealed record TookMoreThanTimber(UptakeReading Read, double Litres, double VolumeM3) : ChargeFault;

/// <summary>A reading that an uptake is worked out from.</summary>
public enum UptakeReading
{
    /// <summary>Of the tank after the vessel was emptied.</summary>
    TankAfter,

    /// <summary>Of the tank at peak pressure.</summary>
    TankAtPeak,

    /// <summary>Of the scales after.</summary>
    WeightAfter,
}

/// <summary>Only one of tank at peak pressure and free volume of the vessel, which give the gross uptake together.</summary>
/// <param name="IsPeakMissing">True where the tank at peak pressure is missing, false where the free volume is.</param>
public sealed record GrossHalfRead(bool IsPeakMissing) : ChargeFault;

/// <summary>Only one of the two weights, which give the uptake together.</summary>
/// <param name="IsBeforeMissing">True where the weight before is missing, false where that after is.</param>
public sealed record WeighedOnce(bool IsBeforeMissing) : ChargeFault;

/// <summary>Timber lighter after than before.</summary>
/// <param name="BeforeKg">Weight before, kg.</param>
/// <param name="AfterKg">Weight after, kg.</param>
public sealed record TimberLost(double BeforeKg, double AfterKg) : ChargeFault;
