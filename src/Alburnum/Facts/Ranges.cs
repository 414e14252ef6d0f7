namespace Alburnum.Facts;

/// <summary>The numbers allowed of each quantity that is asked for in more than one place: as an option, in a file, a table or a form. The one place where they stand.</summary>
public static class Ranges
{
    /// <summary>Desired service life.</summary>
    public static NumberRange LifeYears { get; } = NumberRange.Whole(1, 200, "years");

    /// <summary>Moisture content, share of the oven-dry mass. No wood holds more water than 250 %.</summary>
    public static NumberRange MoisturePercent { get; } = NumberRange.Within(0, 250, "%");

    /// <summary>Density at 12 % moisture, from the lightest to the heaviest timbers of trade.</summary>
    public static NumberRange DensityKgPerM3 { get; } = NumberRange.Within(80, 1400, "kg/m³");

    /// <summary>A depth that is required, or that a zone reaches.</summary>
    public static NumberRange DepthMm { get; } = NumberRange.Within(0.1, 1000, "mm");

    /// <summary>A depth that was measured; none may have been reached.</summary>
    public static NumberRange MeasuredDepthMm { get; } = NumberRange.Within(0, 1000, "mm");

    /// <summary>Share of the perimeter over which a depth must be reached.</summary>
    public static NumberRange CoveragePercent { get; } = NumberRange.Within(1, 100, "%");

    /// <summary>Width of the sapwood, or radius of the heartwood.</summary>
    public static NumberRange SapwoodMm { get; } = NumberRange.Within(0, 2000, "mm");

    /// <summary>Product or active ingredient in a volume of wood.</summary>
    public static NumberRange RetentionKgPerM3 { get; } = NumberRange.Within(0.001, 1000, "kg/m³");

    /// <summary>Solution taken up by a volume of wood; it cannot take up more than its own.</summary>
    public static NumberRange UptakeLPerM3 { get; } = NumberRange.Within(0, 1000, "l/m³");

    /// <summary>Share of all pieces that is to be shown, or that must conform.</summary>
    public static NumberRange ConformingPercent { get; } = NumberRange.Within(0.1, 99.99, "%");

    /// <summary>Distance between positions along a face.</summary>
    public static NumberRange StepMm { get; } = NumberRange.Within(0.25, 1, "mm");

    /// <summary>Product in a working solution, by mass.</summary>
    public static NumberRange StrengthPercent { get; } = NumberRange.Within(0.01, 100, "%");

    /// <summary>Pressure in a treating vessel.</summary>
    public static NumberRange PressureKPa { get; } = NumberRange.Within(0.5, 5000, "kPa");

    /// <summary>Temperature of a working solution.</summary>
    public static NumberRange SolutionCelsius { get; } = NumberRange.Within(0, 95, "°C");

    /// <summary>Temperature of the air or the store that wood stands in.</summary>
    public static NumberRange AirCelsius { get; } = NumberRange.Within(0, 90, "°C");

    /// <summary>Pieces of a lot, and how many of them are cut.</summary>
    public static NumberRange Pieces { get; } = NumberRange.Whole(1, 100_000_000, "pieces");

    /// <summary>Pieces drawn by chance where a spread is worked out.</summary>
    public static NumberRange DrawnPieces { get; } = NumberRange.Whole(100, 1_000_000, "pieces");

    /// <summary>Confidence of a bound on one side.</summary>
    public static NumberRange ConfidencePercent { get; } = NumberRange.Within(50, 99.999, "%");

    /// <summary>Share of the pieces that must pass.</summary>
    public static NumberRange MustPassPercent { get; } = NumberRange.Within(1, 100, "%");
}
