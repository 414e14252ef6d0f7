namespace Alburnum.Impregnation;

/// <summary>What is assumed of the voids of wood where nobody measured.</summary>
public static class AssumedVoids
{
    /// <summary>Radius of the cavities that pull the liquid in, µm: of the order of softwood tracheids.</summary>
    public const double CavityRadiusMicrometres = 15;

    /// <summary>Share of the voids in which air no longer moves, and that liquid therefore never fills.</summary>
    public const double TrappedAirShare = 0.05;

    /// <summary>Viscosity of air at room temperature, mPa·s.</summary>
    public const double AirMPaS = 0.0181;
}
