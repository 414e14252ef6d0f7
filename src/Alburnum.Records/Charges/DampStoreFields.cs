using Alburnum.Facts;
using Alburnum.Records.Facts;

namespace Alburnum.Records.Charges;

/// <summary>What can be said of a damp store, where boron spreads.</summary>
public static class DampStoreFields
{
    /// <summary>Moisture content in storage, %.</summary>
    public static AskedField Moisture { get; } =
        EnquiryFields.Moisture with
        {
            Help = "Moisture content in storage, % of the oven-dry mass",
            Default = "30",
        };

    /// <summary>Temperature in storage, °C.</summary>
    public static AskedField Temperature { get; } =
        TreatmentFields.Temperature with
        {
            Help = "Temperature in storage, °C",
            Range = Ranges.StoreCelsius,
            Default = "15",
        };
}
