using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Timber;

/// <summary>Treatability and sapwood width, against publications that the shipped cells were not taken from.</summary>
[SecondSource]
public sealed class SecondTreatabilityChecks
{
    private const string GermanTreatability = "a German guide to treatability";
    private const string BritishNotes = "Wood species notes";
    private const string Handbook = "Wood Handbook (FPL-GTR-190)";
    private const string Smithsonian = "Smithsonian Contributions to Botany";
    private const string DutchAzobe = "a Dutch sheet of azobé";
    private const string GermanLarch = "a German merchant's description of larch";
    private const string IrishIroko = "an Irish joinery maker's note on iroko";

    private static readonly SpeciesCatalogue Species = new FactLibrary(Repository.At("data")).Species;

    [Theory]
    [Transcription]
    [Published("EN 350-2, 1994", "at second hand in " + GermanTreatability)]
    [InlineData("Norway spruce", "3")]
    [InlineData("silver fir", "2")]
    [InlineData("Scots pine", "1")]
    [InlineData("Douglas fir (Europe)", "2-3")]
    public void A_German_guide_quotes_the_same_treatability_of_sapwood(string species, string expected) =>
        IsQuoted(Species.Get(species).SapwoodTreatability!, expected);

    [Theory]
    [Transcription]
    [Published("EN 350-2, 1994", "at second hand in " + GermanTreatability)]
    [InlineData("Norway spruce", "3-4")]
    [InlineData("silver fir", "2-3")]
    public void A_German_guide_quotes_the_same_treatability_of_heartwood(string species, string expected) =>
        IsQuoted(Species.Get(species).HeartwoodTreatability!, expected);

    [Fact]
    [Published(BritishNotes, "European larch: heartwood extremely difficult, sapwood moderately easy")]
    public void British_notes_find_larch_as_hard_to_treat()
    {
        Agrees(Species.Get("European larch").HeartwoodTreatability!, "4", BritishNotes);
        Agrees(Species.Get("European larch").SapwoodTreatability!, "2", BritishNotes);
    }

    [Fact]
    [Published(BritishNotes, "European redwood: sapwood easy, in a copy")]
    public void British_notes_find_the_sapwood_of_Scots_pine_as_easy_to_treat() =>
        Agrees(Species.Get("Scots pine").SapwoodTreatability!, "1", BritishNotes);

    [Fact]
    [Published(Handbook + ", 2010", "chapter 2, radiata pine: sapwood treats readily, heartwood moderately resistant")]
    public void The_Wood_Handbook_finds_radiata_pine_as_easy_to_treat()
    {
        Agrees(Species.Get("radiata pine").SapwoodTreatability!, "1", Handbook);
        var heartwood = Species.Get("radiata pine").HeartwoodTreatability!;
        SecondSource.IsAnother(heartwood.Provenance, Handbook);
        Assert.InRange(2, heartwood.Value.Low, heartwood.Value.High);
    }

    [Fact]
    [Published(Smithsonian, "African mahogany: extremely resistant to preservative treatment")]
    public void Botanists_find_African_mahogany_as_hard_to_treat() =>
        Agrees(Species.Get("African mahogany").HeartwoodTreatability!, "4", Smithsonian);

    [Fact]
    [Published(DutchAzobe, "sapwood up to 50 mm")]
    public void A_Dutch_sheet_gives_ekki_the_same_band_of_sapwood() => HoldsWidths("ekki", [50], DutchAzobe);

    [Fact]
    [Published(IrishIroko, "sapwood about 50 to 75 mm")]
    public void An_Irish_note_gives_iroko_the_same_band_of_sapwood() => HoldsWidths("iroko", [50, 75], IrishIroko);

    [Fact]
    [Published(GermanLarch, "sapwood about 2 cm")]
    public void A_German_description_gives_larch_the_same_band_of_sapwood() =>
        HoldsWidths("European larch", [20], GermanLarch);

    private static void HoldsWidths(string species, double[] widthsMm, string publication)
    {
        var cell = Species.Get(species).SapwoodWidth!;
        SecondSource.IsAnother(cell.Provenance, publication);
        Assert.All(
            widthsMm,
            width => Assert.InRange(width, Bounds(cell.Value.Narrowest).FromMm, Bounds(cell.Value.Widest).ToMm)
        );
    }

    private static (double FromMm, double ToMm) Bounds(SapwoodBand band) =>
        band switch
        {
            SapwoodBand.VerySmall => (0, 20),
            SapwoodBand.Small => (20, 50),
            SapwoodBand.Medium => (50, 100),
            SapwoodBand.Broad => (100, double.PositiveInfinity),
            _ => throw new ArgumentOutOfRangeException(nameof(band), band, "Has no width."),
        };

    private static void Agrees(Fact<ClassRange> cell, string expected, string publication)
    {
        SecondSource.IsAnother(cell.Provenance, publication);
        Assert.Equal(expected, cell.Value.Label);
    }

    private static void IsQuoted(Fact<ClassRange> cell, string expected)
    {
        SecondSource.IsAnotherCopy(cell.Provenance, GermanTreatability);
        Assert.Equal(expected, cell.Value.Label);
    }
}
