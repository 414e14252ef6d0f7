using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Imaging.Tests;

/// <summary>The indicators that ship.</summary>
internal static class KnownIndicators
{
    public static IReadOnlyList<Indicator> All { get; } = new FactLibrary(Repository.At("data")).Indicators;

    /// <summary>An indicator whose colour is not drawn past the front, as in plain drawings.</summary>
    public static Indicator Sharp(string key) => All.First(each => each.Key == key) with { BleedMm = new(0, 0.02) };
}
