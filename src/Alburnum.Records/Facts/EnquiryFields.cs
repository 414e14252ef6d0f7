using Alburnum.Facts;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Everything that can be said of a piece in an enquiry: one name, one range for each, wherever it is written.</summary>
public static class EnquiryFields
{
    /// <summary>The rulebook that is asked: where what is asked goes with it, not of the piece itself.</summary>
    public static AskedField Rulebook { get; } =
        new()
        {
            Key = "rulebook",
            Help = "Rulebook to ask",
            Examples = "british-2014, european-2007",
            Expected = "the name of a rulebook, or a rulebook file",
            Default = "british-2014",
        };

    /// <summary>What the piece is for.</summary>
    public static AskedField Component { get; } =
        new()
        {
            Key = "component",
            Help = "What it is for; common names are understood",
            Examples = "fence post, deck joist, tiling batten",
            Expected = "a known component",
            LeftOut = "no default use class or life",
        };

    /// <summary>The timber.</summary>
    public static AskedField Species { get; } =
        new()
        {
            Key = "species",
            Help = "Common, botanical or trade name",
            Examples = "Sitka spruce, Picea sitchensis",
            Expected =
                "a species in the catalogue, or a kind such as acetylated, heat-treated or furfurylated wood (brand names are not kept)",
            LeftOut = "rows that depend on species stay open",
        };

    /// <summary>Nominal section.</summary>
    public static AskedField Section { get; } =
        new()
        {
            Key = "section",
            Help = "Nominal section; mm where no unit is written",
            Examples = "75x75, 4 x 4 in, round 120, half round 120, quartered 120",
            Expected = SectionText.Expected,
            LeftOut = "thickness and form unknown",
        };

    /// <summary>Sawn or round.</summary>
    public static AskedField Form { get; } =
        new()
        {
            Key = "form",
            Help = "Sawn or round",
            Examples = "sawn, round",
            Expected = "sawn or round",
            Choices = ["sawn", "round"],
            LeftOut = "taken from the section",
        };

    /// <summary>Use class.</summary>
    public static AskedField UseClass { get; } =
        new()
        {
            Key = "useClass",
            Help = "Use class; British 3c and 3u also say whether it is coated",
            Examples = "1, 2, 3, 3c, 3u, 3.1, 3.2, 4, 5",
            Expected = "1, 2, 3, 3c, 3u, 3.1, 3.2, 4 or 5",
            Default = "the code's class for the component, otherwise from where it stands",
        };

    /// <summary>Desired service life, years.</summary>
    public static AskedField Life { get; } =
        new()
        {
            Key = "serviceLife",
            Help = "Desired service life, whole years",
            Examples = "15, 30 years",
            Range = Ranges.LifeYears,
            Default = "the code's usual life for the component, otherwise what is usual for its name",
        };

    /// <summary>Whether heartwood reaches a face.</summary>
    public static AskedField ExposedHeartwood { get; } =
        AskedField.YesNo("exposedHeartwood", "Heartwood reaches a face");

    /// <summary>Whether the faces are incised.</summary>
    public static AskedField Incised { get; } = AskedField.YesNo("incised", "Faces are incised before treatment");

    /// <summary>Moisture content before treatment, %.</summary>
    public static AskedField Moisture { get; } =
        new()
        {
            Key = "moisture",
            Help = "Moisture content before treatment, % of the oven-dry mass",
            Examples = "24, 24 %",
            Range = Ranges.MoisturePercent,
            LeftOut = "the moisture limit is not checked",
        };

    /// <summary>The class that a contract names itself.</summary>
    public static AskedField StatedClass { get; } =
        new()
        {
            Key = "statedClass",
            Help = "Penetration or treatment class that the contract names, of any system",
            Examples = "NP3, AB, UC4A, H4",
            Expected = "a class",
            LeftOut = "the answer comes from the use",
        };

    /// <summary>Code of the preservative.</summary>
    public static AskedField Preservative { get; } =
        new()
        {
            Key = "preservative",
            Help = "Preservative by its kind, or by its code in the rulebook",
            Examples = "copper azole, CA-C, creosote, boron",
            Expected = "a kind of preservative, or a code that the rulebook names",
            LeftOut = "fixed retentions stay open",
        };

    /// <summary>The preservative's critical value for the use class.</summary>
    public static AskedField CriticalValue { get; } =
        new()
        {
            Key = "criticalValue",
            Help = "The preservative's critical value for the use class",
            Examples = "8 kg/m3, 0.5 pcf, 120 g/m2",
            Expected = EnquiryReader.AmountExpected,
            LeftOut = "retention is shown as a multiple",
        };

    /// <summary>All that are said of the piece, in the order in which they are listed to people.</summary>
    public static IReadOnlyList<AskedField> All { get; } =
    [
        Component,
        Species,
        Section,
        Form,
        UseClass,
        ExposureFields.SaltWater,
        ExposureFields.GroundContact,
        ExposureFields.Weather,
        ExposureFields.WaterStays,
        ExposureFields.Damp,
        Life,
        ExposedHeartwood,
        Incised,
        ExposureFields.Coated,
        Moisture,
        StatedClass,
        Preservative,
        CriticalValue,
        ExposureFields.Insects,
    ];
}
