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

    /// <summary>Cut ends on one photograph, where there are several.</summary>
    public static NumberRange PiecesOnPhotograph { get; } = NumberRange.Whole(2, 60, "pieces");

    /// <summary>A size of a section: a side or a diameter.</summary>
    public static NumberRange SectionMm { get; } = NumberRange.Within(1, 2000, "mm");

    /// <summary>Length of a piece.</summary>
    public static NumberRange LengthMm { get; } = NumberRange.Within(50, 30_000, "mm");

    /// <summary>Width of the sapwood; 0 where heartwood reaches the face.</summary>
    public static NumberRange SapwoodMm { get; } = NumberRange.Within(0, 2000, "mm");

    /// <summary>Radius of the heartwood around the pith; wood without heartwood has none.</summary>
    public static NumberRange HeartwoodRadiusMm { get; } = NumberRange.Within(0.1, 2000, "mm");

    /// <summary>Position of the pith from the middle of a section, to one side or the other.</summary>
    public static NumberRange PithMm { get; } = NumberRange.Within(-2000, 2000, "mm");

    /// <summary>Diameter of a log under bark.</summary>
    public static NumberRange LogDiameterMm { get; } = NumberRange.Within(10, 4000, "mm");

    /// <summary>Width of a saw cut.</summary>
    public static NumberRange KerfMm { get; } = NumberRange.Within(0, 20, "mm");

    /// <summary>A known length in a photograph, by which its scale is set.</summary>
    public static NumberRange ScaleMm { get; } = NumberRange.Within(0.1, 2000, "mm");

    /// <summary>Product or active ingredient in a volume of wood.</summary>
    public static NumberRange RetentionKgPerM3 { get; } = NumberRange.Within(0.001, 1000, "kg/m³");

    /// <summary>Retention that was measured; none may have been found.</summary>
    public static NumberRange MeasuredRetentionKgPerM3 { get; } = RetentionKgPerM3 with { Low = 0 };

    /// <summary>Product or active ingredient on an area of wood.</summary>
    public static NumberRange RetentionGPerM2 { get; } = NumberRange.Within(0.1, 2000, "g/m²");

    /// <summary>Solution taken up by a volume of wood; it cannot take up more than its own.</summary>
    public static NumberRange UptakeLPerM3 { get; } = NumberRange.Within(0, 1000, "l/m³");

    /// <summary>Share of all pieces that is to be shown, or that must conform.</summary>
    public static NumberRange ConformingPercent { get; } = NumberRange.Within(0.1, 99.99, "%");

    /// <summary>The same where it is shown by variables, which works for more than half of the pieces.</summary>
    public static NumberRange ConformingByVariablesPercent { get; } = ConformingPercent with { Low = 50.1 };

    /// <summary>Where a hand reading lies along its face, or along the rim.</summary>
    public static NumberRange PositionMm { get; } = NumberRange.Within(0, 10_000, "mm");

    /// <summary>Standard uncertainty of a depth read with a ruler.</summary>
    public static NumberRange RulerUncertaintyMm { get; } = NumberRange.Within(0.05, 10, "mm");

    /// <summary>Distance between positions along a face.</summary>
    public static NumberRange StepMm { get; } = NumberRange.Within(0.25, 1, "mm");

    /// <summary>Product in a working solution, by mass.</summary>
    public static NumberRange StrengthPercent { get; } = NumberRange.Within(0.01, 100, "%");

    /// <summary>Standard uncertainty of a strength, % of product by mass.</summary>
    public static NumberRange StrengthUncertaintyPercent { get; } = NumberRange.Within(0, 10, "%");

    /// <summary>Solution whose product a kilogram of dry wood takes up.</summary>
    public static NumberRange SorptionLPerKg { get; } = NumberRange.Within(0.001, 1000, "L/kg");

    /// <summary>Most product that the walls of wood take up.</summary>
    public static NumberRange SorptionMostGPerKg { get; } = NumberRange.Within(0.01, 300, "g/kg");

    /// <summary>Time since treatment while a preservative fixes.</summary>
    public static NumberRange FixationHours { get; } = NumberRange.Within(0, 100_000, "h");

    /// <summary>Standard uncertainty of the density of a solution.</summary>
    public static NumberRange SolutionDensityUncertaintyKgPerM3 { get; } = NumberRange.Within(0, 100, "kg/m³");

    /// <summary>Standard uncertainty of the volume of timber.</summary>
    public static NumberRange VolumeUncertaintyPercent { get; } = NumberRange.Within(0, 50, "%");

    /// <summary>Strength that was measured; a solution may have lost all of it.</summary>
    public static NumberRange MeasuredStrengthPercent { get; } = StrengthPercent with { Low = 0 };

    /// <summary>Density of a treating liquid.</summary>
    public static NumberRange SolutionDensityKgPerM3 { get; } = NumberRange.Within(600, 1600, "kg/m³");

    /// <summary>Time that a step of a schedule takes to reach a pressure, or holds it.</summary>
    public static NumberRange StepMinutes { get; } = NumberRange.Within(0, 1e5, "min");

    /// <summary>Time at peak pressure.</summary>
    public static NumberRange PressureMinutes { get; } = StepMinutes with { Low = 0.1 };

    /// <summary>Absolute pressure in a treating vessel.</summary>
    public static NumberRange PressureKPa { get; } = NumberRange.Within(0.1, 5000, "kPa");

    /// <summary>Temperature of a working solution.</summary>
    public static NumberRange SolutionCelsius { get; } = NumberRange.Within(0, 95, "°C");

    /// <summary>Temperature of steam or hot air against the wood, °C.</summary>
    public static NumberRange SteamCelsius { get; } = NumberRange.Within(0, 150, "°C");

    /// <summary>Temperature of the air that wood dries in.</summary>
    public static NumberRange AirCelsius { get; } = NumberRange.Within(0, 90, "°C");

    /// <summary>Temperature in a damp store, where boron spreads.</summary>
    public static NumberRange StoreCelsius { get; } = NumberRange.Within(0, 60, "°C");

    /// <summary>Relative humidity of the air that wood dries in.</summary>
    public static NumberRange HumidityPercent { get; } = NumberRange.Within(5, 99, "%");

    /// <summary>Time in a damp store, where boron spreads.</summary>
    public static NumberRange StoreWeeks { get; } = NumberRange.Within(0, 520, "weeks");

    /// <summary>Time in running water, where boron washes out.</summary>
    public static NumberRange WetDays { get; } = NumberRange.Within(0, 3650, "days");

    /// <summary>Solution in a tank, or in the vessel around the timber.</summary>
    public static NumberRange TankL { get; } = NumberRange.Within(0, 1e7, "L");

    /// <summary>Standard uncertainty of one reading of a tank.</summary>
    public static NumberRange TankUncertaintyL { get; } = NumberRange.Within(0, 1e5, "L");

    /// <summary>Weight of the timber in a charge.</summary>
    public static NumberRange ChargeKg { get; } = NumberRange.Within(0, 1e7, "kg");

    /// <summary>Standard uncertainty of one weighing of a charge.</summary>
    public static NumberRange WeightUncertaintyKg { get; } = NumberRange.Within(0, 1e5, "kg");

    /// <summary>Pieces of a lot, and how many of them are cut.</summary>
    public static NumberRange Pieces { get; } = NumberRange.Whole(1, 100_000_000, "pieces");

    /// <summary>Pieces that failed.</summary>
    public static NumberRange Failures { get; } = NumberRange.Whole(0, 100_000_000, "failures");

    /// <summary>Pieces drawn by chance where a spread is worked out.</summary>
    public static NumberRange DrawnPieces { get; } = NumberRange.Whole(100, 1_000_000, "pieces");

    /// <summary>Charges at the start of a history that set its mean and spread.</summary>
    public static NumberRange BaselineCharges { get; } = NumberRange.Whole(5, 100_000, "charges");

    /// <summary>Confidence of a bound on one side.</summary>
    public static NumberRange ConfidencePercent { get; } = NumberRange.Within(50, 99.999, "%");

    /// <summary>Share of the pieces that must pass.</summary>
    public static NumberRange MustPassPercent { get; } = NumberRange.Within(1, 100, "%");

    /// <summary>Chance that a design must meet its demands with, %: a hundred batches are drawn, so that more cannot be told.</summary>
    public static NumberRange DesignChancePercent { get; } = NumberRange.Within(50, 98, "%");

    /// <summary>Failing share of a lot to accept or to reject, by which a plan is designed.</summary>
    public static NumberRange FailingPercent { get; } = NumberRange.Within(0.01, 99, "%");

    /// <summary>Risk of a wrong decision about a lot.</summary>
    public static NumberRange RiskPercent { get; } = NumberRange.Within(0.1, 50, "%");

    /// <summary>AQL of a sampling standard; above 10 it counts defects in a hundred pieces.</summary>
    public static NumberRange Aql { get; } = NumberRange.Within(0.01, 1000, "(an AQL)");

    /// <summary>Depth of an incision.</summary>
    public static NumberRange IncisionDepthMm { get; } = NumberRange.Within(1, 100, "mm");

    /// <summary>Length of an incision along the grain at the face.</summary>
    public static NumberRange IncisionLengthMm { get; } = NumberRange.Within(1, 100, "mm");

    /// <summary>Width of an incision across the grain at the face.</summary>
    public static NumberRange IncisionWidthMm { get; } = NumberRange.Within(0.1, 10, "mm");

    /// <summary>Distance between incisions along the grain, at least the length of one.</summary>
    public static NumberRange IncisionsAlongMm { get; } = NumberRange.Within(1, 500, "mm");

    /// <summary>Distance between rows of incisions across the grain, at least the width of one.</summary>
    public static NumberRange IncisionsAcrossMm { get; } = NumberRange.Within(0.1, 200, "mm");

    /// <summary>Shift of each row of incisions against the one before, as a share of the distance along the grain.</summary>
    public static NumberRange IncisionStagger { get; } = NumberRange.Within(0, 0.5, "");

    /// <summary>Cells across the wider side of a section that the flow solver takes.</summary>
    public static NumberRange SectionCells { get; } = NumberRange.Whole(4, 2000, "cells");

    /// <summary>Boxes on each side of the cell under an incised face that the flow solver takes.</summary>
    public static NumberRange CellBoxes { get; } = NumberRange.Whole(8, 200, "boxes");
}
