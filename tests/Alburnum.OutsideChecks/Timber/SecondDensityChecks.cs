using Alburnum.Impregnation;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Timber;

/// <summary>
/// Density at 12 % moisture, against publications that the shipped cells were not taken from. They may differ by 10 %:
/// as much as one piece of a species differs from the next (coefficient of variation, Wood Handbook 2010, page 4-8).
/// </summary>
[SecondSource]
public sealed class SecondDensityChecks
{
    private const double Spread = 0.10;
    private const double KgPerM3InLbPerFt3 = 16.0185;

    private const string DesignSpecification = "National Design Specification for Wood Construction";
    private const string ArmyManual = "TM 5-852-4";
    private const string Oregon = "Table of relative working and physical properties";
    private const string NavyManual = "MO-312";
    private const string TropicalTimbers = "Tropical Timbers of the World";
    private const string CommercialTimbers = "Commercial Timbers";
    private const string Smithsonian = "Smithsonian Contributions to Botany";
    private const string Handbook = "Wood Handbook (FPL-GTR-190)";
    private const string DutchAzobe = "a Dutch sheet of azobé";
    private const string TradeIroko = "a trade guide to iroko";
    private const string GermanLexicon = "a German lexicon of timbers";
    private const string SpanishEncyclopaedia = "a Spanish importers' encyclopaedia";
    private const string ItalianManual = "Manuale tecnico del legno (Giordano)";
    private const string CanadianProducer = "a Canadian producer's sheets";
    private const string BritishNotes = "Wood species notes";
    private const string LumberJournal = "The commercial importance of lodgepole pine lumber";
    private const string WoodDensityDatabase = "Global wood density database";
    private const string Queensland = "Properties of timbers, Queensland Government";

    private static readonly SpeciesCatalogue Species = new FactLibrary(Repository.At("data")).Species;

    /// <summary>The specification prints ovendry mass over ovendry volume; shrinkage and density follow as the program works them out.</summary>
    [Theory]
    [Published(DesignSpecification + ", 2018", "table 12.3.3A, read in a public transcription")]
    [InlineData("Douglas fir (N America)", 0.50)]
    [InlineData("western hemlock", 0.47)]
    [InlineData("western red cedar (N America)", 0.36)]
    [InlineData("Sitka spruce", 0.43)]
    [InlineData("southern pine", 0.55)]
    [InlineData("ponderosa pine", 0.43)]
    [InlineData("Weymouth pine", 0.36)]
    [InlineData("coast redwood", 0.37)]
    [InlineData("yellow cedar", 0.46)]
    [InlineData("American red oak", 0.68)]
    [InlineData("American white oak", 0.73)]
    public void Ovendry_gravity_of_the_design_specification_gives_the_density(string species, double ovendryGravity)
    {
        // G₀ = Gb / (1 − 0.265·Gb), turned round.
        var basic = ovendryGravity / (1 + 0.265 * ovendryGravity);
        var at12 = WoodDensity.SpecificGravity(basic, WoodDensity.UsualShrinkagePercent(basic), 12);
        Agrees(species, WoodDensity.KgPerM3(at12, 12), DesignSpecification);
    }

    [Theory]
    [Published(ArmyManual, "table 2-2, specific gravity at 12 % moisture")]
    [InlineData("ponderosa pine", 0.40)]
    [InlineData("western hemlock", 0.48)]
    [InlineData("Sitka spruce", 0.40)]
    public void Gravity_at_12_percent_of_an_Army_manual_gives_the_density(string species, double gravity) =>
        Agrees(species, WoodDensity.KgPerM3(gravity, 12), ArmyManual);

    [Fact]
    [Published(Oregon, "metric, air-dry weight")]
    public void An_Oregon_table_gives_the_density_of_Douglas_fir() => Agrees("Douglas fir (N America)", 545, Oregon);

    [Fact]
    [Published(TropicalTimbers, "sheet of ipe, 66 to 75 lb/ft³ air-dry, at second hand")]
    public void Tropical_timbers_of_the_world_gives_the_density_of_ipe() =>
        Agrees("ipe", 70.5 * KgPerM3InLbPerFt3, TropicalTimbers);

    [Fact]
    [Published(CommercialTimbers, "khaya, 0.42 to 0.57, 0.47 g/cm³")]
    public void German_descriptions_give_the_density_of_African_mahogany() =>
        Agrees("African mahogany", 470, CommercialTimbers);

    [Fact]
    [Published(NavyManual + " wood protection manual", "western hemlock, 29 lb/ft³")]
    public void A_Navy_manual_gives_the_density_of_western_hemlock() =>
        Agrees("western hemlock", 29 * KgPerM3InLbPerFt3, NavyManual);

    [Theory]
    [Published(Smithsonian, "average seasoned weight")]
    [InlineData("idigbo", 34)]
    [InlineData("African mahogany", 35)]
    public void Botanists_give_the_density(string species, double lbPerFt3) =>
        Agrees(species, lbPerFt3 * KgPerM3InLbPerFt3, Smithsonian);

    [Fact]
    [Published(Handbook + ", 2010", "chapter 2, afrormosia, about 700 kg/m³ at 15 % moisture")]
    public void The_Wood_Handbook_gives_the_density_of_afrormosia() => Agrees("afrormosia", 700, Handbook);

    [Fact]
    [Published(Handbook + ", 2010", "chapter 2, radiata pine of plantations, about 480 kg/m³ at 12 % moisture")]
    public void The_Wood_Handbook_gives_the_density_of_radiata_pine() => Agrees("radiata pine", 480, Handbook);

    [Theory]
    [Published(CanadianProducer, "air-dry average")]
    [InlineData("Sitka spruce", 430)]
    [InlineData("western red cedar (N America)", 380)]
    public void A_Canadian_producer_gives_the_density(string species, double kgPerM3) =>
        Agrees(species, kgPerM3, CanadianProducer);

    [Fact]
    [Published(BritishNotes, "European redwood, dried, in a copy")]
    public void British_notes_give_the_density_of_Scots_pine() => Agrees("Scots pine", 510, BritishNotes);

    [Fact]
    [Published(LumberJournal + ", 1950", "29 lb/ft³ at 12 % moisture")]
    public void A_lumber_journal_gives_the_density_of_lodgepole_pine() =>
        Agrees("lodgepole pine", 29 * KgPerM3InLbPerFt3, LumberJournal);

    [Fact]
    [Published(DutchAzobe, "940 to 1100, 1060 kg/m³")]
    public void A_Dutch_sheet_gives_the_density_of_ekki() => Agrees("ekki", 1060, DutchAzobe);

    [Fact]
    [Published(TradeIroko, "660 kg/m³ dried")]
    public void A_trade_guide_gives_the_density_of_iroko() => Agrees("iroko", 660, TradeIroko);

    [Fact]
    [Published(Queensland, "keruing, at 12 % moisture")]
    public void Queensland_gives_the_density_of_keruing() => Agrees("keruing", 790, Queensland);

    [Fact]
    [Published(SpanishEncyclopaedia, "European oak, at 12 % moisture")]
    public void A_Spanish_encyclopaedia_gives_the_density_of_oak() => Agrees("European oak", 710, SpanishEncyclopaedia);

    [Theory]
    [Published(GermanLexicon, "middle of the range of bulk density")]
    [InlineData("Norway spruce", 430, 480)]
    [InlineData("Scots pine", 510, 550)]
    [InlineData("utile", 550, 690)]
    public void A_German_lexicon_gives_the_density(string species, double low, double high) =>
        Agrees(species, (low + high) / 2, GermanLexicon);

    [Theory]
    [Published(ItalianManual, "after normal seasoning, at second hand")]
    [InlineData("Norway spruce", 450)]
    [InlineData("Scots pine", 550)]
    [InlineData("afzelia", 820)]
    public void An_Italian_manual_gives_the_density(string species, double kgPerM3) =>
        Agrees(species, kgPerM3, ItalianManual);

    /// <summary>
    /// Means of the database's entries for the botanical species from where the timber grows, g/cm³, ovendry mass over green
    /// volume. Of 46 timbers looked up, six differ by more than the spread and are left out, and the notes of each say so:
    /// afrormosia, Corsican and maritime pine, cedro, blue gum and rose gum. The database gathers some 200 works; that a
    /// cell's own source is among them is not ruled out.
    /// </summary>
    [Theory]
    [Published(WoodDensityDatabase + " (Zanne and others), 2009", "basic density by species, read in a public copy")]
    [Published(
        "American Journal of Botany 105, 2018",
        "Vieilledent and others, basic density is 0.828 of that at 12 %"
    )]
    [InlineData("silver fir", 0.353)]
    [InlineData("grand fir", 0.350)]
    [InlineData("noble fir", 0.370)]
    [InlineData("Norway spruce", 0.370)]
    [InlineData("Sitka spruce", 0.366)]
    [InlineData("Weymouth pine", 0.340)]
    [InlineData("Scots pine", 0.422)]
    [InlineData("radiata pine", 0.390)]
    [InlineData("western red cedar (N America)", 0.310)]
    [InlineData("western hemlock", 0.420)]
    [InlineData("American pitch pine", 0.540)]
    [InlineData("European larch", 0.474)]
    [InlineData("western larch", 0.480)]
    [InlineData("Siberian larch", 0.468)]
    [InlineData("yew", 0.551)]
    [InlineData("European oak", 0.560)]
    [InlineData("American red oak", 0.560)]
    [InlineData("American white oak", 0.600)]
    [InlineData("sycamore", 0.509)]
    [InlineData("lime", 0.442)]
    [InlineData("elm", 0.507)]
    [InlineData("European walnut", 0.551)]
    [InlineData("makore", 0.553)]
    [InlineData("obeche", 0.335)]
    [InlineData("tiama", 0.483)]
    [InlineData("kosipo", 0.574)]
    [InlineData("sapele", 0.572)]
    [InlineData("utile", 0.537)]
    [InlineData("dabema", 0.605)]
    [InlineData("African mahogany", 0.443)]
    [InlineData("limba", 0.459)]
    [InlineData("wallaba", 0.719)]
    [InlineData("greenheart", 0.862)]
    [InlineData("ipe", 0.924)]
    [InlineData("kempas", 0.760)]
    [InlineData("jarrah", 0.706)]
    [InlineData("karri", 0.747)]
    [InlineData("tallowwood", 0.842)]
    [InlineData("grey ironbark", 0.929)]
    [InlineData("blackbutt", 0.755)]
    public void The_global_wood_density_database_gives_the_density(string species, double basicGPerCm3) =>
        Agrees(species, basicGPerCm3 / 0.828 * 1000, WoodDensityDatabase);

    private static void Agrees(string species, double kgPerM3, string publication)
    {
        var cell = Species.Get(species).Density!;
        SecondSource.IsAnother(cell.Provenance, publication);
        Assert.Equal(kgPerM3, cell.Value.TypicalKgPerM3, Spread * kgPerM3);
    }
}
