using Alburnum.Facts;

namespace Alburnum.Impregnation;

/// <summary>What touches the wood during a stage.</summary>
public enum Contact
{
    /// <summary>Air (or a vacuum): liquid can leave the wood but not enter.</summary>
    Air,

    /// <summary>Solution: it can enter, and air can bubble out.</summary>
    Liquid,
}

/// <summary>One stage of a schedule: the pressure runs straight from one value to another.</summary>
public sealed record Stage
{
    /// <summary>Checks duration and pressures.</summary>
    /// <param name="name">What the stage is, in the treater's words.</param>
    /// <param name="contact">What touches the wood.</param>
    /// <param name="minutes">Duration, min. Above 0, at most 1e5.</param>
    /// <param name="fromKPa">Absolute pressure at the start, kPa. 0.1 to 5000.</param>
    /// <param name="toKPa">Absolute pressure at the end, kPa. 0.1 to 5000.</param>
    /// <param name="celsius">Temperature of the solution (0 to 95 °C), of steam or of hot air (0 to 150 °C); null for the solution's usual one, and for air or a vacuum that brings no heat.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Stage(string name, Contact contact, double minutes, double fromKPa, double toKPa, double? celsius = null)
    {
        Name = name;
        Contact = contact;
        Minutes = Require.Positive(Require.Within(minutes, Ranges.StepMinutes), "min");
        FromKPa = Require.Within(fromKPa, Ranges.PressureKPa);
        ToKPa = Require.Within(toKPa, Ranges.PressureKPa);
        if (celsius is { } heated)
            Celsius = Require.Within(heated, CelsiusRange(contact));
    }

    /// <summary>What the stage is.</summary>
    public string Name { get; }

    /// <summary>What touches the wood.</summary>
    public Contact Contact { get; }

    /// <summary>Duration, min.</summary>
    public double Minutes { get; }

    /// <summary>Absolute pressure at the start, kPa.</summary>
    public double FromKPa { get; }

    /// <summary>Absolute pressure at the end, kPa.</summary>
    public double ToKPa { get; }

    /// <summary>Temperature of the solution, of steam or of hot air, °C; null for the solution's usual one, and for air or a vacuum that brings no heat.</summary>
    public double? Celsius { get; }

    /// <summary>How warm what touches the wood may be.</summary>
    public static NumberRange CelsiusRange(Contact contact) =>
        contact == Contact.Liquid ? Ranges.SolutionCelsius : Ranges.SteamCelsius;

    /// <summary>Absolute pressure at a moment of the stage, kPa.</summary>
    /// <param name="minutes">Time since the stage began, min. 0 to its duration.</param>
    public double KPaAt(double minutes) => FromKPa + (ToKPa - FromKPa) * Math.Clamp(minutes / Minutes, 0, 1);

    /// <summary>
    /// Absolute pressure of the gas that presses into the wood at a moment, kPa: that of the vessel, but steam condenses where air would be pressed in, so that
    /// above the atmosphere only what exceeds the pressure of saturated steam counts.
    /// </summary>
    /// <param name="minutes">Time since the stage began, min. 0 to its duration.</param>
    /// <remarks>Saturated steam by Antoine's equation, constants for 99 to 374 °C (remembered; 186 kPa at 118 °C).</remarks>
    public double GasKPaAt(double minutes)
    {
        var kPa = KPaAt(minutes);
        return Contact == Contact.Air && Celsius is > BoilingCelsius and var celsius && kPa > Schedule.AtmosphereKPa
            ? Math.Max(Schedule.AtmosphereKPa, kPa - KPaPerMmHg * Math.Pow(10, 8.14019 - 1810.94 / (244.485 + celsius)))
            : kPa;
    }

    private const double BoilingCelsius = 100;

    private const double KPaPerMmHg = 0.133322;

    /// <summary>The same stage for another time, between other pressures.</summary>
    internal Stage With(double minutes, double fromKPa, double toKPa) =>
        new(Name, Contact, minutes, fromKPa, toKPa, Celsius);
}

/// <summary>The pressure history of a vessel from closing the door to opening it: stages in order.</summary>
/// <param name="Name">What the schedule is called.</param>
/// <param name="Stages">The stages in order, one or more.</param>
public sealed record Schedule(string Name, IReadOnlyList<Stage> Stages)
{
    /// <summary>Air pressure outside the vessel, kPa absolute.</summary>
    public const double AtmosphereKPa = 101.325;

    /// <summary>Whole duration, min.</summary>
    public double Minutes => Stages.Sum(stage => stage.Minutes);

    /// <summary>Greatest absolute pressure while solution touches the wood, kPa; 0 where it never does.</summary>
    public double PeakKPa =>
        Stages
            .Where(stage => stage.Contact == Contact.Liquid)
            .Select(stage => Math.Max(stage.FromKPa, stage.ToKPa))
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>Whether a stage has a temperature of its own.</summary>
    public bool IsHeated => Stages.Any(stage => stage.Celsius is not null);

    /// <summary>Whether solution is pressed into the wood, so that it can be pressed for longer: not where it is brushed on, or the wood lies in it.</summary>
    public bool IsUnderPressure => PeakKPa > 1.01 * AtmosphereKPa;

    /// <summary>Greatest absolute pressure at which the schedule works below its peak, kPa; 0 where there is none.</summary>
    public double BelowPeakKPa
    {
        get
        {
            var peak = PeakKPa;
            return Stages
                .SelectMany(stage => new[] { stage.FromKPa, stage.ToKPa })
                .Where(kPa => kPa < peak)
                .Append(0)
                .Max();
        }
    }

    /// <summary>Absolute pressure at a moment, kPa.</summary>
    /// <param name="minutes">Time since the schedule began, min. 0 to its end, beyond which the last pressure stands.</param>
    public double KPaAt(double minutes)
    {
        var left = minutes;
        foreach (var stage in Stages)
        {
            if (left <= stage.Minutes)
                return stage.KPaAt(left);
            left -= stage.Minutes;
        }
        return Stages[^1].ToKPa;
    }

    /// <summary>The same schedule with the solution held at peak pressure for a different time.</summary>
    /// <param name="minutes">Minutes of every stage that holds the peak pressure against the wood, min. Above 0.</param>
    public Schedule WithPressurePeriod(double minutes) =>
        this with
        {
            Stages =
            [
                .. Stages.Select(stage => Holds(stage) ? stage.With(minutes, stage.FromKPa, stage.ToKPa) : stage),
            ],
        };

    /// <summary>The same schedule with another peak pressure; lower pressures stay as they are.</summary>
    /// <param name="kPa">Peak absolute pressure, kPa; above every other pressure of the schedule.</param>
    /// <exception cref="ArgumentOutOfRangeException">Some stage already works at more, or no vessel does.</exception>
    public Schedule WithPeak(double kPa)
    {
        var peak = PeakKPa;
        Require.InRange(
            Require.Within(kPa, Ranges.PressureKPa),
            Math.BitIncrement(BelowPeakKPa),
            double.MaxValue,
            "kPa"
        );
        double Moved(double p) => p == peak ? kPa : p;
        return this with
        {
            Stages = [.. Stages.Select(stage => stage.With(stage.Minutes, Moved(stage.FromKPa), Moved(stage.ToKPa)))],
        };
    }

    /// <summary>The same schedule, broken off.</summary>
    /// <param name="minutes">When, min since it began. Above 0; at or after its end it is whole.</param>
    public Schedule Until(double minutes)
    {
        Require.Positive(minutes, "min");
        var stages = new List<Stage>();
        var left = minutes;
        foreach (var stage in Stages)
        {
            if (left <= 0)
                break;
            var length = Math.Min(stage.Minutes, left);
            stages.Add(stage.With(length, stage.FromKPa, stage.KPaAt(length)));
            left -= stage.Minutes;
        }
        return this with { Stages = stages };
    }

    private bool Holds(Stage stage) =>
        stage.Contact == Contact.Liquid && stage.FromKPa >= PeakKPa - 1e-9 && stage.ToKPa >= PeakKPa - 1e-9;
}
