using Alburnum.Records.Facts;

namespace Alburnum.Records.Tests.Facts;

/// <summary>The data folder that ships, read once for all tests.</summary>
public static class ShippedData
{
    private static readonly Lazy<FactLibrary> Loaded = new(() => FactLibrary.Load(FactLibrary.DefaultFolder));

    public static FactLibrary Library => Loaded.Value;
}
