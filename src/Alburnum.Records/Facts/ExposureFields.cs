using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>What the use class follows from: where a piece stands and what it meets there.</summary>
public static class ExposureFields
{
    /// <summary>Whether it stands in salt water.</summary>
    public static AskedField SaltWater { get; } = AskedField.YesNo("saltWater", "It stands in salt water");

    /// <summary>Whether it touches the ground or fresh water.</summary>
    public static AskedField GroundContact { get; } =
        AskedField.YesNo("groundContact", "It touches the ground or fresh water");

    /// <summary>Whether the weather reaches it.</summary>
    public static AskedField Weather { get; } =
        AskedField.YesNo("weather", "It is outdoors and the weather reaches it");

    /// <summary>Whether water can stay on it.</summary>
    public static AskedField WaterStays { get; } =
        AskedField.YesNo("waterStays", "Water can stay on it, in joints or on end grain");

    /// <summary>Whether it can get damp under cover.</summary>
    public static AskedField Damp { get; } = AskedField.YesNo("damp", "Under cover, it can get damp now and then");

    /// <summary>Whether a coating is kept up.</summary>
    public static AskedField Coated { get; } = AskedField.YesNo("coated", "A coating is applied and maintained");

    /// <summary>Whether it is hard to reach or replace.</summary>
    public static AskedField HardToReach { get; } = AskedField.YesNo("hardToReach", "It is hard to reach or replace");

    /// <summary>Whether people could be hurt if it fails.</summary>
    public static AskedField CouldHurtPeople { get; } =
        AskedField.YesNo("couldHurtPeople", "People could be hurt if it fails");

    /// <summary>Insects that live where it is used.</summary>
    public static AskedField Insects { get; } =
        new()
        {
            Key = "insects",
            Help = "Insects that attack dry timber and live where it is used, with commas between them, or none",
            Examples = "none, house longhorn beetle, furniture beetle, powder-post beetle, termites",
            Expected = "none, or insects of data/insects.yaml with commas between them",
            LeftOut = "named where they would change the answer",
        };
}
