using Alburnum.Timber;

namespace Alburnum.Impregnation;

/// <summary>Sapwood width taken for a species where none was measured.</summary>
/// <param name="Mm">The geometric middle of the band, to whole mm.</param>
/// <param name="NarrowestMm">Lower end of the narrower band, mm.</param>
/// <param name="WidestMm">Upper end of the wider band, mm.</param>
public sealed record UsualSapwood(double Mm, double NarrowestMm, double WidestMm)
{
    /// <summary>The middle of a species' band or bands in EN 350.</summary>
    /// <param name="width">The bands, distinct.</param>
    /// <remarks>Bands end at 20, 50 and 100 mm; the narrowest is taken from 5 mm, the broadest to 200 mm.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The sapwood is not distinct: it has no width.</exception>
    public static UsualSapwood Of(SapwoodWidth width)
    {
        var (low, high) = (Ends(width.Narrowest).Low, Ends(width.Widest).High);
        return new(Math.Round(Math.Sqrt(low * high)), low, high);
    }

    private static (double Low, double High) Ends(SapwoodBand band) =>
        band switch
        {
            SapwoodBand.VerySmall => (5, 20),
            SapwoodBand.Small => (20, 50),
            SapwoodBand.Medium => (50, 100),
            SapwoodBand.Broad => (100, 200),
            _ => throw new ArgumentOutOfRangeException(nameof(band), band, "No width: sapwood is not distinct."),
        };
}
