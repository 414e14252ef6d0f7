using System.Globalization;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Cli.Impregnation;

/// <summary>An input that a sweep can vary.</summary>
/// <param name="Name">Name as typed.</param>
/// <param name="Unit">Unit of its values.</param>
/// <param name="With">The request with the input set to a value.</param>
internal sealed record SweepInput(string Name, string Unit, Func<TreatingRequest, double, TreatingRequest> With);

/// <summary>One axis of a sweep as typed: an input and its values.</summary>
/// <param name="Input">The input.</param>
/// <param name="Values">Its values, rising.</param>
internal sealed record SweptInput(SweepInput Input, IReadOnlyList<double> Values)
{
    public string Label => $"{Input.Name}, {Input.Unit}";
}

/// <summary>The inputs that a sweep can vary, and how an axis is written.</summary>
internal static class SweepInputs
{
    private const int MostSteps = 100;

    private static readonly SweepInput[] All =
    [
        new("moisture", "%", (request, value) => request with { MoisturePercent = value }),
        new("density", "kg/m³", (request, value) => request with { DensityKgPerM3 = value }),
        new("pressure", "kPa", (request, value) => request with { PeakKPa = value }),
        new("minutes", "at peak pressure", (request, value) => request with { PressureMinutes = value }),
        new("temperature", "°C", (request, value) => request with { Celsius = value }),
        new("depth", "mm", (request, value) => request with { DepthMm = value }),
        new("zone-depth", "mm", (request, value) => request with { ZoneMm = value }),
        new("sapwood", "mm", (request, value) => request with { SapwoodMm = value }),
        new("heart-radius", "mm", (request, value) => request with { HeartRadiusMm = value }),
        new("log-diameter", "mm", (request, value) => request with { LogDiameterMm = value }),
        new("size", "mm", (request, value) => request with { Section = Sized(request.Section, value) }),
    ];

    public static string Names => string.Join(", ", All.Select(input => input.Name));

    /// <summary>Reads "minutes=30:240:8": an input, its first and last value, and how many.</summary>
    public static SweptInput Parse(string option, string? text)
    {
        var sides = (text ?? "").Split('=');
        var parts = sides.Length == 2 ? sides[1].Split(':') : [];
        if (
            parts.Length != 3
            || !Number(parts[0], out var from)
            || !Number(parts[1], out var to)
            || !int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var steps)
            || !(to > from)
            || steps is < 2 or > MostSteps
        )
            throw Options.Refused(
                option,
                text ?? "nothing",
                $"an input, its first and last value and how many (2 to {MostSteps}), such as minutes=30:240:8; inputs: {Names}"
            );
        var input = Array.Find(All, known => known.Name == sides[0]) ?? throw Options.Refused(option, sides[0], Names);
        return new(input, [.. Enumerable.Range(0, steps).Select(i => from + (to - from) * i / (steps - 1))]);
    }

    // A round section's diameter; both sides of a sawn one.
    private static Section Sized(Section section, double mm) =>
        section switch
        {
            RectangularSection => new RectangularSection(mm, mm),
            HalfRoundSection => new HalfRoundSection(mm),
            QuarteredSection => new QuarteredSection(mm),
            _ => new RoundSection(mm),
        };

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
