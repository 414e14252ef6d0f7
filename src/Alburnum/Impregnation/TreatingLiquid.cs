using Alburnum.Facts;

namespace Alburnum.Impregnation;

/// <summary>The liquid that enters the wood.</summary>
public sealed record TreatingLiquid
{
    /// <summary>Checks the three properties.</summary>
    /// <param name="name">What it is, for the sheet.</param>
    /// <param name="viscosityMPaS">Dynamic viscosity, mPa·s. 0.1 to 1000.</param>
    /// <param name="densityKgPerM3">Density, kg/m³. 600 to 1600.</param>
    /// <param name="surfaceTensionMNPerM">Surface tension, mN/m. 0 to 100.</param>
    public TreatingLiquid(string name, double viscosityMPaS, double densityKgPerM3, double surfaceTensionMNPerM)
    {
        Name = name;
        ViscosityMPaS = Require.InRange(viscosityMPaS, 0.1, 1000, "mPa·s");
        DensityKgPerM3 = Require.Within(densityKgPerM3, Ranges.SolutionDensityKgPerM3);
        SurfaceTensionMNPerM = Require.InRange(surfaceTensionMNPerM, 0, 100, "mN/m");
    }

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>Dynamic viscosity, mPa·s.</summary>
    public double ViscosityMPaS { get; }

    /// <summary>Density, kg/m³.</summary>
    public double DensityKgPerM3 { get; }

    /// <summary>Surface tension against air, mN/m.</summary>
    public double SurfaceTensionMNPerM { get; }

    /// <summary>Viscosity of water, mPa·s.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <remarks>2.414e-5·10^(247.8/(T − 140)) Pa·s, T in kelvin, remembered; within 0.6 % of IAPWS 2008 from 10 to 60 °C.</remarks>
    public static double ViscosityOfWaterMPaS(double celsius) =>
        1000 * 2.414e-5 * Math.Pow(10, 247.8 / (celsius + 273.15 - 140));

    /// <summary>A thin waterborne solution, taken as water at a temperature.</summary>
    /// <param name="celsius">Temperature, °C. 0 to 95.</param>
    /// <remarks>
    /// Viscosity: <see cref="ViscosityOfWaterMPaS"/>.
    /// Density by a quartic fitted to IAPWS-97 from 1 to 95 °C, within 0.04 kg/m³; surface tension 72.8 mN/m at 20 °C, −0.15 per degree.
    /// A product that thickens the water has its own figures: use the constructor.
    /// </remarks>
    public static TreatingLiquid Water(double celsius = 20)
    {
        Require.Within(celsius, Ranges.SolutionCelsius);
        return new TreatingLiquid(
            "water-thin solution",
            ViscosityOfWaterMPaS(celsius),
            WaterDensityKgPerM3(celsius - 4),
            72.8 - 0.15 * (celsius - 20)
        );
    }

    private static double WaterDensityKgPerM3(double above4) =>
        999.9764 + above4 * (-8.6308e-3 + above4 * (-6.97378e-3 + above4 * (3.91624e-5 - 1.32408e-7 * above4)));
}
