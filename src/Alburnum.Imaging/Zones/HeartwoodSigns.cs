using Alburnum.Imaging.Colour;
using Alburnum.Timber;

namespace Alburnum.Imaging.Zones;

/// <summary>Which way heartwood's colour lies from sapwood's: +1, −1, or 0 for either way, in light, ln(red ⁄ green), ln(blue ⁄ green).</summary>
internal readonly record struct HeartwoodSigns(double Light, double RedOverGreen, double BlueOverGreen)
{
    /// <summary>A reagent's two palettes nearer than this in a channel show no way. Our own choice.</summary>
    private const double LeastApart = 0.15;

    /// <summary>Darker, redder, and less blue: heartwood of its own colour.</summary>
    public static HeartwoodSigns Natural { get; } = new(-1, 1, -1);

    /// <summary>As a reagent colours it.</summary>
    public static HeartwoodSigns Of(HeartwoodReagent reagent)
    {
        var (heart, sap) = (Mean(reagent.HeartwoodColours), Mean(reagent.SapwoodColours));
        return new(Sign(heart.L - sap.L), Sign(heart.U - sap.U), Sign(heart.V - sap.V));
    }

    private static double Sign(float apart) => Math.Abs(apart) < LeastApart ? 0 : Math.Sign(apart);

    private static LogColour Mean(IReadOnlyList<int> colours)
    {
        var all = colours.Select(LogColour.OfHex).ToList();
        return new(all.Average(c => c.L), all.Average(c => c.U), all.Average(c => c.V));
    }
}
