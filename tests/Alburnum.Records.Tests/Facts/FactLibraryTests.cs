using Alburnum.Records.Facts;
using Alburnum.Timber;

namespace Alburnum.Records.Tests.Facts;

public sealed class FactLibraryTests
{
    private static readonly FactLibrary Library = ShippedData.Library;

    [Fact]
    public void The_data_folder_is_found_beside_the_program()
    {
        Assert.True(Library.Species.All.Count >= 60);
        Assert.NotEmpty(Library.Components.All);
        Assert.NotEmpty(Library.Rulebooks);
    }

    [Theory]
    [InlineData("Sitka spruce", "Picea sitchensis")]
    [InlineData("picea sitchensis", "Picea sitchensis")]
    [InlineData("SITKA-SPRUCE", "Picea sitchensis")]
    [InlineData("European redwood", "Pinus sylvestris")]
    [InlineData("Scots pines", "Pinus sylvestris")]
    public void A_species_is_found_by_any_of_its_names(string asked, string botanical) =>
        Assert.Contains(botanical, Library.Species.Get(asked).BotanicalNames);

    [Fact]
    public void A_misspelt_species_brings_a_suggestion()
    {
        var near = Assert.IsType<NotFound<Species>>(Library.Species.Find("Stika spurce"));
        Assert.Contains("Sitka spruce", near.Suggestions);
    }

    [Fact]
    public void A_name_that_several_species_bear_is_not_settled_silently()
    {
        var near = Assert.IsType<NotFound<Species>>(Library.Species.Find("Douglas fir"));
        Assert.Equal(["Douglas fir (N America)", "Douglas fir (Europe)"], near.Suggestions);
    }

    [Fact]
    public void Every_rulebook_is_named_after_its_folder_and_edition() =>
        Assert.Contains("british-2014", Library.Rulebooks.Select(rulebook => rulebook.Name));

    [Fact]
    public void A_rulebook_that_is_not_there_is_refused_with_those_that_are()
    {
        var refused = Assert.Throws<InputRefusedException>(() => Library.Rulebook("british-1066"));
        Assert.Contains("british-2014", refused.Message, StringComparison.Ordinal);
    }
}
