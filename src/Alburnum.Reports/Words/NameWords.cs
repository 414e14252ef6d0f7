using Alburnum.Timber;

namespace Alburnum.Reports.Words;

/// <summary>What is known of a timber, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class NameWords(Wording wording)
{
    /// <summary>Natural durability of the heartwood.</summary>
    public string Durability(ClassRange range) => wording.Say("names.durability", ("classes", range.Label));

    /// <summary>Treatability of the heartwood.</summary>
    public string HeartwoodTreatability(ClassRange range) =>
        wording.Say("names.heartwood-treatability", ("classes", range.Label));

    /// <summary>Treatability of the sapwood.</summary>
    public string SapwoodTreatability(ClassRange range) =>
        wording.Say("names.sapwood-treatability", ("classes", range.Label));

    /// <summary>Width of the sapwood.</summary>
    public string SapwoodWidth(SapwoodWidth width) =>
        width.Narrowest == width.Widest
            ? wording.Say("names.sapwood", ("width", Say(width.Narrowest)))
            : wording.Say(
                "names.sapwood",
                ("width", wording.Joined("rows.either", [Say(width.Narrowest), Say(width.Widest)]))
            );

    /// <summary>Density.</summary>
    public string Density(DensityRange density)
    {
        ArgumentNullException.ThrowIfNull(density);
        return density is { LowKgPerM3: { } low, HighKgPerM3: { } high }
            ? wording.Say(
                "names.density-range",
                ("typical", Figures.Digits(density.TypicalKgPerM3)),
                ("low", Figures.Digits(low)),
                ("high", Figures.Digits(high))
            )
            : wording.Say("names.density", ("typical", Figures.Digits(density.TypicalKgPerM3)));
    }

    private string Say(SapwoodBand band) =>
        band switch
        {
            SapwoodBand.VerySmall => wording.Say("names.sapwood.very-small"),
            SapwoodBand.Small => wording.Say("names.sapwood.small"),
            SapwoodBand.Medium => wording.Say("names.sapwood.medium"),
            SapwoodBand.Broad => wording.Say("names.sapwood.broad"),
            SapwoodBand.NotDistinct => wording.Say("names.sapwood.not-distinct"),
            _ => throw new ArgumentOutOfRangeException(nameof(band), band, "Not a band."),
        };
}
