using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Records.Tests.Facts;

public sealed class FactLibraryTests
{
    private static readonly FactLibrary Library = ShippedData.Library;

    [Theory]
    [InlineData("crash barrier post", 30)]
    [InlineData("telegraph pole", 30)]
    [InlineData("railway sleeper", 30)]
    [InlineData("lintel", 60)]
    [InlineData("foundation post", 60)]
    [InlineData("house pile", 60)]
    [InlineData("lock gate", 25)]
    public void Parts_of_structures_roads_and_waterways_have_a_usual_life(string name, int years) =>
        Assert.Equal(new DesiredServiceLife(years), Library.Components.Called(name)!.Life!.Value);

    [Theory]
    [InlineData("staircase")]
    [InlineData("flagpole")]
    [InlineData("bridge joist")]
    [InlineData("groyne")]
    [InlineData("scaffold board")]
    [InlineData("pit prop")]
    public void A_part_without_one_usual_life_has_none_to_be_taken_for_it(string name) =>
        Assert.Null(Library.Components.Called(name)!.Life);

    [Theory]
    [InlineData("telegraph pole", Standing.Published)]
    [InlineData("lock gate", Standing.Published)]
    [InlineData("vindskiva", Standing.CommonPractice)]
    public void A_life_that_the_source_of_the_name_does_not_give_has_a_standing_of_its_own(
        string name,
        Standing standing
    )
    {
        var called = Library.Components.Called(name)!;
        Assert.NotEqual(called.Provenance.Standing, called.Life!.Provenance.Standing);
        Assert.Equal(standing, called.Life.Provenance.Standing);
    }

    [Fact]
    public void The_data_folder_is_found_beside_the_program()
    {
        Assert.True(Library.Species.All.Count >= 60);
        Assert.NotEmpty(Library.Components.All);
        Assert.NotEmpty(Library.Rulebooks.All);
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
        var several = Assert.IsType<Several<Species>>(Library.Species.Find("Pseudotsuga menziesii"));
        Assert.Equal(["Douglas fir (N America)", "Douglas fir (Europe)"], several.Names);
    }

    [Fact]
    public void At_least_sixty_species_have_durability_both_treatabilities_sapwood_and_density_each_with_its_source()
    {
        var full = Library
            .Species.All.Select(species =>
                new[]
                {
                    species.Durability?.Provenance,
                    species.HeartwoodTreatability?.Provenance,
                    species.SapwoodTreatability?.Provenance,
                    species.SapwoodWidth?.Provenance,
                    species.Density?.Provenance,
                }
            )
            .Where(cells => !cells.Contains(null))
            .ToList();

        Assert.True(full.Count >= 60, $"{full.Count} species have every cell.");
        Assert.All(
            full.SelectMany(cells => cells).OfType<Provenance>(),
            cell =>
            {
                Assert.NotEqual("", cell.Document);
                Assert.True(cell.Standing != Standing.Published || (cell.Edition.Length > 0 && cell.Place.Length > 0));
            }
        );
    }

    [Fact]
    public void Other_scales_name_species_of_the_catalogue_and_say_where_they_stand()
    {
        Assert.NotEmpty(Library.OtherScales);
        Assert.All(Library.OtherScales, scale => Assert.NotEqual("", scale.Provenance.Document));
        Assert.Contains(Library.OtherScales, scale => scale.SpeciesNames.Contains("Sitka spruce"));
    }

    [Fact]
    public void A_rulebook_that_cannot_be_read_does_not_stand_in_the_way_of_another()
    {
        using var folder = new TemporaryFolder();
        Copy(Repository.At("data"), folder.Path);
        File.AppendAllText(folder.At("rulebooks/spanish/se-m.yaml"), "colour: red\n");

        var library = new FactLibrary(folder.Path);

        Assert.NotEmpty(library.Rulebooks.Named("british-2014").Rows);
        var refused = Assert.Throws<InputRefusedException>(() => library.Rulebooks.Named("spanish-se-m"));
        Assert.Contains("se-m.yaml", refused.Message, StringComparison.Ordinal);
        Assert.Contains("colour", refused.Message, StringComparison.Ordinal);
        Assert.Throws<InputRefusedException>(() => library.Rulebooks.All.ToList());
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    [Fact]
    public void Every_rulebook_is_named_after_its_folder_and_edition() =>
        Assert.Contains("british-2014", Library.Rulebooks.All.Select(rulebook => rulebook.Name));

    [Fact]
    public void A_rulebook_that_is_not_there_is_refused_with_those_that_are()
    {
        var refused = Assert.Throws<InputRefusedException>(() => Library.Rulebooks.Named("british-1066"));
        Assert.Contains("british-2014", refused.Message, StringComparison.Ordinal);
    }
}
