using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

/// <summary>The data folder that ships, read once for all tests.</summary>
public static class ShippedData
{
    private static readonly Lazy<FactLibrary> Loaded = new(() => new FactLibrary(Repository.At("data")));

    public static FactLibrary Library => Loaded.Value;
}
