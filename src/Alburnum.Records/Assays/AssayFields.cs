using Alburnum.Facts;

namespace Alburnum.Records.Assays;

/// <summary>How a laboratory's figures become the retention that is required.</summary>
public static class AssayFields
{
    /// <summary>Substances that the retention counts.</summary>
    public static AskedField CountedAs { get; } =
        new()
        {
            Key = "countedAs",
            Help = "Substances that the retention counts together",
            Examples = "CuO, H3BO3, Cu + Cr + As",
            Expected = "formulas or names of substances, joined by +, such as CuO or Cu + Cr + As",
            LeftOut = "counted as measured",
        };

    /// <summary>Product that the retention counts.</summary>
    public static AskedField Product { get; } =
        new()
        {
            Key = "product",
            Help = "Product that the retention counts: by its formula, or with the shares that you know",
            Examples = "cca-c, acq-d, ca-c, \"CuO 11.5 %, H3BO3 4 %\"",
            LeftOut = "substances are counted",
        };

    /// <summary>Oven-dry density of the zone.</summary>
    public static AskedField ZoneDensity { get; } =
        new()
        {
            Key = "zoneDensity",
            Help =
                "Oven-dry mass in the volume of the zone, kg/m³, with its uncertainty and coverage factor; without them nothing is held against a demand",
            Examples = "430 ± 20 (k=1)",
            Expected = "kg/m³, 80 to 1400, its uncertainty with the coverage factor k, such as 430 ± 20 (k=1)",
            LeftOut = "worked out from the species' density at 12 %",
        };
}
