using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Timber;

/// <summary>
/// Natural durability, against publications that the shipped cells were not taken from. Most of them quote EN 350, as the
/// cells' own sources do: that they agree shows that it was quoted alike, not that the standard is right.
/// </summary>
[Transcription]
public sealed class QuotedDurabilityChecks
{
    private const string MainTimbers = "a German guide to the durability of the main timbers";
    private const string Examples = "a German list of examples of each class";
    private const string Nordic = "a Nordic guide to natural durability";
    private const string Dutch = "a Dutch encyclopaedia";
    private const string Coatings = "a French guide to timbers for coating";
    private const string DutchImporter = "a Dutch importer's table of durability classes";
    private const string Decking = "German answers on decking timbers";
    private const string Trade = "a German merchant's table of durability classes";
    private const string Flooring = "a German flooring maker's table of durability classes";
    private const string Encyclopaedia = "a German encyclopaedia's list of timbers";
    private const string EuropeanSheets = "Selected European wood species";
    private const string BritishNotes = "Wood species notes";
    private const string BritishDouglasFir = "British-grown Douglas fir, 2014";

    private static readonly SpeciesCatalogue Species = new FactLibrary(Repository.At("data")).Species;

    [Theory]
    [Published("EN 350-2, 1994", "at second hand in " + MainTimbers)]
    [InlineData("silver fir", "4")]
    [InlineData("European larch", "3-4")]
    [InlineData("Norway spruce", "4")]
    [InlineData("Scots pine", "3-4")]
    [InlineData("Douglas fir (N America)", "3")]
    [InlineData("Douglas fir (Europe)", "3-4")]
    [InlineData("western red cedar (N America)", "2")]
    [InlineData("European beech", "5")]
    [InlineData("robinia", "1-2")]
    public void A_guide_to_the_main_timbers_quotes_the_same_durability(string species, string expected) =>
        Agrees(species, expected, MainTimbers);

    [Theory]
    [Published("EN 350-2, 1994", "at second hand in " + Examples)]
    [InlineData("afzelia", "1")]
    [InlineData("moabi", "1")]
    [InlineData("makore", "1")]
    [InlineData("opepe", "1")]
    [InlineData("greenheart", "1")]
    [InlineData("teak", "1")]
    [InlineData("western red cedar (N America)", "2")]
    [InlineData("balau", "2")]
    [InlineData("ekki", "2")]
    [InlineData("American white oak", "2-3")]
    [InlineData("Douglas fir (Europe)", "3-4")]
    [InlineData("American red oak", "4")]
    [InlineData("elm", "4")]
    [InlineData("birch", "5")]
    [InlineData("lime", "5")]
    public void Examples_of_each_class_have_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Examples);

    [Theory]
    [Published("EN 350, 2016", "at second hand in " + Nordic)]
    [InlineData("Scots pine", "3-4")]
    [InlineData("yew", "2")]
    [InlineData("European ash", "5")]
    public void A_Nordic_guide_quotes_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Nordic);

    [Theory]
    [Published("EN 350, 2016", "at second hand in " + Dutch)]
    [InlineData("opepe", "1")]
    [InlineData("robinia", "1-2")]
    [InlineData("yew", "2")]
    [InlineData("sweet chestnut", "2")]
    [InlineData("European oak", "2-4")]
    [InlineData("European walnut", "3")]
    [InlineData("sapele", "3")]
    [InlineData("European larch", "3-4")]
    [InlineData("Norway spruce", "4")]
    [InlineData("European ash", "5")]
    [InlineData("sycamore", "5")]
    public void A_Dutch_encyclopaedia_quotes_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Dutch);

    [Theory]
    [Published("EN 350-1, 1994", "at second hand in " + Coatings)]
    [InlineData("teak", "1")]
    [InlineData("iroko", "1-2")]
    [InlineData("sweet chestnut", "2")]
    [InlineData("sapele", "3")]
    [InlineData("European larch", "3-4")]
    [InlineData("Scots pine", "3-4")]
    [InlineData("silver fir", "4")]
    public void A_French_guide_quotes_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Coatings);

    [Theory]
    [Published("Duurzaamheidsklassen", DutchImporter)]
    [InlineData("robinia", "1-2")]
    [InlineData("sweet chestnut", "2")]
    [InlineData("American white oak", "2-3")]
    [InlineData("Douglas fir (Europe)", "3-4")]
    [InlineData("Scots pine", "3-4")]
    [InlineData("Norway spruce", "4")]
    public void A_Dutch_importer_counts_in_the_same_durability(string species, string expected) =>
        Agrees(species, expected, DutchImporter);

    [Theory]
    [Published("EN 350-2, 1994", "at second hand in " + Decking)]
    [InlineData("robinia", "1-2")]
    [InlineData("balau", "2")]
    [InlineData("European larch", "3-4")]
    [InlineData("Scots pine", "3-4")]
    [InlineData("Douglas fir (Europe)", "3-4")]
    [InlineData("Norway spruce", "4")]
    public void Answers_on_decking_quote_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Decking);

    [Theory]
    [Published("EN 350-2, 1994", "at second hand in " + Trade)]
    [InlineData("teak", "1")]
    [InlineData("ipe", "1")]
    [InlineData("balau", "2")]
    [InlineData("European ash", "5")]
    [InlineData("European beech", "5")]
    [InlineData("birch", "5")]
    [InlineData("sycamore", "5")]
    [InlineData("alder", "5")]
    [InlineData("Populus spp.", "5")]
    public void A_German_merchant_counts_in_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Trade);

    [Theory]
    [Published("EN 350-2, 1994", "at second hand in " + Flooring)]
    [InlineData("ipe", "1")]
    [InlineData("American mahogany", "2")]
    [InlineData("balau", "2")]
    [InlineData("ekki", "2")]
    [InlineData("silver fir", "4")]
    [InlineData("European ash", "5")]
    public void A_flooring_maker_counts_in_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Flooring);

    [Theory]
    [Published("EN 350-2, 1994", "at second hand in " + Encyclopaedia)]
    [InlineData("western red cedar (N America)", "2")]
    [InlineData("yellow cedar", "2-3")]
    [InlineData("silver fir", "4")]
    public void A_German_encyclopaedia_quotes_the_same_durability(string species, string expected) =>
        Agrees(species, expected, Encyclopaedia);

    [Fact]
    [Published(EuropeanSheets, "spruce")]
    public void The_European_sheet_of_spruce_has_the_same_durability() => Agrees("Norway spruce", "4", EuropeanSheets);

    [Theory]
    [Published(BritishDouglasFir, "introduction, classes of EN 350-2 in words, read in the abstract")]
    [InlineData("Douglas fir (N America)", "3")]
    [InlineData("Douglas fir (Europe)", "3-4")]
    public void A_British_paper_on_Douglas_fir_divides_it_by_origin_alike(string species, string expected) =>
        Agrees(species, expected, BritishDouglasFir);

    [Theory]
    [SecondSource]
    [Published(BritishNotes, "western red cedar, classes in words")]
    [InlineData("western red cedar (UK)", "3")]
    [InlineData("western red cedar (N America)", "2")]
    public void British_notes_divide_western_red_cedar_by_origin_alike(string species, string expected)
    {
        SecondSource.IsAnother(Species.Get(species).Durability!.Provenance, BritishNotes);
        Agrees(species, expected, BritishNotes);
    }

    private static void Agrees(string species, string expected, string publication)
    {
        var cell = Species.Get(species).Durability!;
        SecondSource.IsAnotherCopy(cell.Provenance, publication);
        Assert.Equal(expected, cell.Value.Label);
    }
}
