namespace Alburnum.Impregnation.Charging;

/// <summary>What makes the retention of a charge uncertain.</summary>
public enum ChargeCause
{
    /// <summary>The strength, read once.</summary>
    Strength,

    /// <summary>The strength before.</summary>
    StrengthBefore,

    /// <summary>The strength after.</summary>
    StrengthAfter,

    /// <summary>The tank before.</summary>
    TankBefore,

    /// <summary>The tank after.</summary>
    TankAfter,

    /// <summary>The two weighings.</summary>
    Weighing,

    /// <summary>Tank and scales differ beyond doubt: half of what parts them.</summary>
    TankAgainstScales,

    /// <summary>The density of the solution.</summary>
    SolutionDensity,

    /// <summary>The volume of the timber.</summary>
    TimberVolume,
}

/// <summary>What one cause adds to the uncertainty of a charge's retention.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="KgPerM3">Standard uncertainty from this cause alone, kg/m³. 0 or more.</param>
public sealed record ChargeUncertainty(ChargeCause Cause, double KgPerM3);
