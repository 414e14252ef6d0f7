using Alburnum.Facts;

namespace Alburnum.Impregnation.Heating;

/// <summary>Wood that is not as warm as what comes to it.</summary>
public sealed record Warming
{
    /// <summary>Checks the temperatures.</summary>
    /// <param name="wood">How the wood takes up heat.</param>
    /// <param name="woodCelsius">Temperature of the wood at the start, °C; the same throughout. 0 to 95.</param>
    /// <param name="solutionCelsius">Temperature of the solution, °C; kept by the vessel. 0 to 95.</param>
    public Warming(WoodHeat wood, double woodCelsius, double solutionCelsius)
    {
        Wood = wood;
        WoodCelsius = Require.Within(woodCelsius, Ranges.SolutionCelsius);
        SolutionCelsius = Require.Within(solutionCelsius, Ranges.SolutionCelsius);
    }

    /// <summary>How the wood takes up heat.</summary>
    public WoodHeat Wood { get; }

    /// <summary>Temperature of the wood at the start, °C.</summary>
    public double WoodCelsius { get; }

    /// <summary>Temperature of the solution, °C.</summary>
    public double SolutionCelsius { get; }

    /// <summary>How many times as easily solution flows at a temperature as at its own: it is as viscous as water.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    public double FlowsTimes(double celsius) =>
        TreatingLiquid.ViscosityOfWaterMPaS(SolutionCelsius) / TreatingLiquid.ViscosityOfWaterMPaS(celsius);

    /// <summary>Air that a room holds at a temperature, over that which it held at the wood's first temperature and the same pressure (ideal gas).</summary>
    /// <param name="celsius">Temperature, °C.</param>
    public double AirTimes(double celsius) => (WoodCelsius + Kelvin) / (celsius + Kelvin);

    private const double Kelvin = 273.15;
}
