using Alburnum.Facts;
using Alburnum.Records.Charges;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

/// <summary>An input that a sweep can vary.</summary>
/// <param name="Name">Its name: that of its option, without the dashes.</param>
/// <param name="Unit">Unit of its values.</param>
/// <param name="With">The request with the input set to a value.</param>
public sealed record SweepInput(string Name, string Unit, Func<TreatingRequest, double, TreatingRequest> With)
{
    /// <summary>Every input that can be varied.</summary>
    public static IReadOnlyList<SweepInput> All { get; } =
    [
        new(NameOf(TreatmentFields.Moisture), "%", (request, value) => request with { MoisturePercent = value }),
        new(NameOf(TreatmentFields.Density), "kg/m³", (request, value) => request with { DensityKgPerM3 = value }),
        new(NameOf(TreatmentFields.Pressure), "kPa", (request, value) => request with { PeakKPa = value }),
        new(
            NameOf(TreatmentFields.Minutes),
            "at peak pressure",
            (request, value) => request with { PressureMinutes = value }
        ),
        new(NameOf(TreatmentFields.Temperature), "°C", (request, value) => request with { Celsius = value }),
        new(NameOf(TreatmentFields.WoodTemperature), "°C", (request, value) => request with { WoodCelsius = value }),
        new(NameOf(TreatmentFields.Depth), "mm", (request, value) => request with { DepthMm = value }),
        new(NameOf(TreatmentFields.ZoneDepth), "mm", (request, value) => request with { ZoneDepthMm = value }),
        new(NameOf(TreatmentFields.Sapwood), "mm", (request, value) => request with { SapwoodMm = value }),
        new(
            NameOf(TreatmentFields.HeartwoodRadius),
            "mm",
            (request, value) => request with { HeartwoodRadiusMm = value }
        ),
        new(NameOf(TreatmentFields.LogDiameter), "mm", (request, value) => request with { LogDiameterMm = value }),
        new("size", "mm", (request, value) => request with { Section = Sized(request, value) }),
    ];

    /// <summary>True for the moisture content.</summary>
    internal bool IsMoisture => Name == NameOf(TreatmentFields.Moisture);

    /// <summary>True for the temperatures of solution and wood.</summary>
    internal bool IsTemperature =>
        Name == NameOf(TreatmentFields.Temperature) || Name == NameOf(TreatmentFields.WoodTemperature);

    private static string NameOf(AskedField field) => field.Option.TrimStart('-');

    // The diameter of a round piece; both sides of a sawn one.
    private static Section Sized(TreatingRequest request, double mm)
    {
        if (!Ranges.SectionMm.Holds(mm))
            throw TreatmentFields.Section.Refused(request.File, $"{InputProblem.Number(mm)} mm", SectionText.Expected);
        var size = Math.Round(mm, 1);
        return request.Section switch
        {
            RectangularSection => new RectangularSection(size, size),
            HalfRoundSection => new HalfRoundSection(size),
            QuarteredSection => new QuarteredSection(size),
            _ => new RoundSection(size),
        };
    }
}

/// <summary>One axis of a sweep.</summary>
/// <param name="Input">The input.</param>
/// <param name="Values">The values that it takes, rising; two or more.</param>
public sealed record SweptInput(SweepInput Input, IReadOnlyList<double> Values)
{
    /// <summary>Most values that an axis may have.</summary>
    public const int MostValues = 100;

    /// <summary>Values in even steps.</summary>
    /// <param name="input">The input.</param>
    /// <param name="from">First value.</param>
    /// <param name="to">Last value, above the first.</param>
    /// <param name="count">How many values, 2 to 100.</param>
    public static SweptInput Even(SweepInput input, double from, double to, int count)
    {
        Require.Positive(to - from, "(from the first to the last value)");
        Require.InRange(count, 2, MostValues, "values");
        return new(input, [.. Enumerable.Range(0, count).Select(i => from + (to - from) * i / (count - 1))]);
    }
}
