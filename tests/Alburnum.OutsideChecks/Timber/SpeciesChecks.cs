using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Timber;

[Transcription]
public sealed class SpeciesChecks
{
    private static readonly FactLibrary Facts = new FactLibrary(Repository.At("data"));
    private static readonly SpeciesCatalogue Species = Facts.Species;

    [Theory]
    [Published("EN 350-2, 1994 and EN 350, 2016", "species tables, at second hand")]
    [InlineData("silver fir", "4")]
    [InlineData("European larch", "3-4")]
    [InlineData("Norway spruce", "4")]
    [InlineData("Scots pine", "3-4")]
    [InlineData("yew", "2")]
    [InlineData("European beech", "5")]
    [InlineData("robinia", "1-2")]
    [InlineData("greenheart", "1")]
    [InlineData("Populus spp.", "5")]
    public void Natural_durability(string species, string expected) =>
        Assert.Equal((expected, Standing.Published), Cell(Species.Get(species).Durability));

    [Theory]
    [Published("EN 350-2, 1994", "species tables, at second hand")]
    [InlineData("Scots pine", "1", "3-4")]
    [InlineData("maritime pine", "1", "4")]
    [InlineData("radiata pine", "1", "2-3")]
    [InlineData("Norway spruce", "3", "3-4")]
    [InlineData("silver fir", "2", "2-3")]
    [InlineData("Douglas fir (Europe)", "2-3", "4")]
    public void Treatability_of_sapwood_and_heartwood(string species, string sapwood, string heartwood)
    {
        Assert.Equal((sapwood, Standing.Published), Cell(Species.Get(species).SapwoodTreatability));
        Assert.Equal((heartwood, Standing.Published), Cell(Species.Get(species).HeartwoodTreatability));
    }

    [Theory]
    [Published("Wood species notes", "density of the dried timber")]
    [InlineData("radiata pine", 480)]
    [InlineData("Sitka spruce", 450)]
    [InlineData("American pitch pine", 670)]
    [InlineData("western red cedar (UK)", 390)]
    public void The_density_of_the_British_notes(string species, double kgPerM3)
    {
        var density = Species.Get(species).Density!;
        Assert.Equal((kgPerM3, Standing.Published), (density.Value.TypicalKgPerM3, density.Provenance.Standing));
    }

    [Theory]
    [Published("Wood species notes", "radiata pine, sapwood of 75 to 150 mm")]
    [InlineData("radiata pine", SapwoodBand.Medium, SapwoodBand.Broad)]
    public void The_sapwood_of_the_British_notes(string species, SapwoodBand narrowest, SapwoodBand widest) =>
        HasSapwood(species, narrowest, widest);

    [Theory]
    [Published("The identification of Douglas-fir wood (FPL-010), 1963", "page 1, sapwood of 1 to 3 in")]
    [InlineData("Douglas fir (N America)", SapwoodBand.Small, SapwoodBand.Medium)]
    public void The_sapwood_of_American_Douglas_fir(string species, SapwoodBand narrowest, SapwoodBand widest) =>
        HasSapwood(species, narrowest, widest);

    [Theory]
    [Published("Canadian wood council, treatability of major North American softwoods", "table of permeability")]
    [InlineData("Douglas fir (N America)", "sapwood 2, heartwood 4")]
    [InlineData("western hemlock", "sapwood 2, heartwood 3")]
    [InlineData("white spruce", "sapwood 2, heartwood 3-4")]
    [InlineData("lodgepole pine", "sapwood 1, heartwood 3-4")]
    [InlineData("red pine", "sapwood 1, heartwood 3")]
    [InlineData("yellow cedar", "sapwood 1, heartwood 3")]
    [InlineData("amabilis fir", "sapwood 2, heartwood 2-3")]
    public void The_Canadian_permeability_scale(string species, string expected) =>
        Assert.Equal((expected, Standing.Published), Elsewhere("Canadian permeability scale", species));

    [Theory]
    [Published("MO-312 wood protection manual", "table 2-1")]
    [InlineData("robinia", "heartwood exceptionally resistant to decay")]
    [InlineData("coast redwood", "heartwood resistant or very resistant to decay")]
    [InlineData("western larch", "heartwood moderately resistant to decay")]
    [InlineData("Sitka spruce", "heartwood slightly or not resistant to decay")]
    public void The_American_grouping_by_decay_resistance(string species, string expected) =>
        Assert.Equal((expected, Standing.Published), Elsewhere("American grouping by decay resistance", species));

    [Fact]
    [Published("Wood Handbook (FPL-GTR-190), 2010", "chapter 15, in the text")]
    public void Where_American_sources_disagree_on_western_hemlock_what_was_read_is_kept_and_the_note_says_so()
    {
        Assert.Equal(
            ("heartwood resists treatment", Standing.Published),
            Elsewhere("American text on treatment", "western hemlock")
        );
        Assert.Contains("disagree", Species.Get("western hemlock").Notes, StringComparison.Ordinal);
    }

    private static void HasSapwood(string species, SapwoodBand narrowest, SapwoodBand widest)
    {
        var cell = Species.Get(species).SapwoodWidth!;
        Assert.Equal(new SapwoodWidth(narrowest, widest), cell.Value);
        Assert.Equal(Standing.Published, cell.Provenance.Standing);
    }

    private static (string, Standing) Elsewhere(string scale, string species)
    {
        var found = Assert.Single(
            Facts.OtherScales,
            each => each.Scale == scale && each.SpeciesNames.Contains(species, StringComparer.Ordinal)
        );
        return (found.Says, found.Provenance.Standing);
    }

    private static (string, Standing) Cell(Fact<ClassRange>? cell) => (cell!.Value.Label, cell.Provenance.Standing);
}
