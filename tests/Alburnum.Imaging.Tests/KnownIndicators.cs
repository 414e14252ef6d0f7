using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests;

/// <summary>The indicators and heartwood reagents that ship.</summary>
internal static class KnownIndicators
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    public static IReadOnlyList<Indicator> All => Facts.Indicators;

    public static IReadOnlyList<HeartwoodReagent> Reagents => Facts.HeartwoodReagents;

    /// <summary>The one that a drawing names in its own words.</summary>
    public static Indicator OfDrawn(string name) =>
        All.First(each =>
            each.Key
            == name switch
            {
                "dark-green" => "copper-black",
                "magenta" => "copper-magenta",
                _ => name,
            }
        );

    /// <summary>An indicator whose colour is not drawn past the front, as in plain drawings.</summary>
    public static Indicator Sharp(string key) => All.First(each => each.Key == key) with { BleedMm = new(0, 0.02) };
}
