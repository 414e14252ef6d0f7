namespace Alburnum.Impregnation.Heating;

/// <summary>How wood takes up and conducts heat.</summary>
/// <remarks>
/// Wood Handbook (FPL-GTR-190, 2010), chapter 4: conductivity k = G(0.1941 + 0.004064 M) + 0.01864 W/(m·K) across the grain (eq. 4-15, given for
/// M below 25 % at 24 °C and G above 0.3, known to 20 %); heat capacity of dry wood 0.1031 + 0.003867 T kJ/(kg·K), T in kelvin, that of the water
/// in the walls added by mass, and a part for its bond (eq. 4-16 to 4-18). Beyond 25 %, where the handbook gives nothing, the line is carried on:
/// green wood warms faster in trials than it says by up to a third (docs/science/flow.md).
/// </remarks>
public sealed record WoodHeat
{
    // Heat capacity changes little with temperature: it is taken half-way between a yard and a hot solution.
    private const double Kelvin = 313.15;

    /// <summary>Heat held by solution and water, J per m³ and kelvin: 4.18 kJ/(kg·K), as the handbook has it.</summary>
    public const double LiquidJPerM3K = 4.18e6;

    /// <summary>How many times as well wood conducts along the grain as across it: reported 1.5 to 2.8, 1.8 on average (Wood Handbook, chapter 4).</summary>
    public const double AlongToAcross = 1.8;

    /// <summary>Checks both figures.</summary>
    /// <param name="dryKgPerM3">Oven-dry wood in its volume, kg/m³. 50 to 1400.</param>
    /// <param name="wallMoisturePercent">Water in the walls, % of the dry wood. 0 to 30.</param>
    public WoodHeat(double dryKgPerM3, double wallMoisturePercent)
    {
        DryKgPerM3 = Require.InRange(dryKgPerM3, 50, 1400, "kg/m³");
        WallMoisturePercent = Require.InRange(wallMoisturePercent, 0, WoodDensity.FibreSaturationPercent, "%");
    }

    /// <summary>Oven-dry wood in its volume, kg/m³.</summary>
    public double DryKgPerM3 { get; }

    /// <summary>Water in the walls, % of the dry wood.</summary>
    public double WallMoisturePercent { get; }

    /// <summary>Heat held by the walls and the water in them, J per m³ of wood and kelvin.</summary>
    public double WallsJPerM3K
    {
        get
        {
            var m = WallMoisturePercent;
            var bond = m * (-0.06191 + 2.36e-4 * Kelvin - 1.33e-4 * m);
            var kJPerKgK = (0.1031 + 0.003867 * Kelvin + 4.18 * m / 100) / (1 + m / 100) + bond;
            return 1000 * kJPerKgK * DryKgPerM3 * (1 + m / 100);
        }
    }

    /// <summary>Conductivity across the grain, W/(m·K).</summary>
    /// <param name="liquidKgPerM3">Liquid in the cavities, kg per m³ of wood. 0 or more.</param>
    public double ConductivityWPerMK(double liquidKgPerM3) =>
        DryKgPerM3 / 1000 * (0.1941 + 0.004064 * (WallMoisturePercent + 100 * liquidKgPerM3 / DryKgPerM3)) + 0.01864;
}
