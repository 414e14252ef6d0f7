using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Timber;

/// <summary>The American grouping by decay resistance, taken from a Navy manual of 1990, against the note of 1967 that it repeats.</summary>
[Transcription]
public sealed class AmericanScaleChecks
{
    private const string Note = "Comparative decay resistance of heartwood of native species (FPL-0153), 1967";
    private const string Place = "table, at second hand in a country magazine";

    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Theory]
    [Published(Note, Place)]
    [InlineData("robinia")]
    [InlineData("Osage-orange")]
    [InlineData("red mulberry")]
    [InlineData("Pacific yew")]
    public void Exceptional_resistance(string timber) => Agrees(timber, "heartwood exceptionally resistant to decay");

    [Theory]
    [Published(Note, Place)]
    [InlineData("western red cedar (N America)")]
    [InlineData("yellow cedar")]
    [InlineData("coast redwood")]
    [InlineData("American white oak")]
    [InlineData("catalpa")]
    [InlineData("black cherry")]
    [InlineData("Arizona cypress")]
    [InlineData("bur oak")]
    [InlineData("chestnut oak")]
    [InlineData("Gambel oak")]
    [InlineData("Oregon white oak")]
    [InlineData("post oak")]
    [InlineData("sassafras")]
    public void Resistant_or_very_resistant(string timber) =>
        Agrees(timber, "heartwood resistant or very resistant to decay");

    [Theory]
    [Published(Note, Place)]
    [InlineData("Douglas fir (N America)")]
    [InlineData("western larch")]
    [InlineData("Weymouth pine")]
    [InlineData("honeylocust")]
    [InlineData("swamp chestnut oak")]
    [InlineData("longleaf pine")]
    [InlineData("slash pine")]
    [InlineData("tamarack")]
    public void Moderately_resistant(string timber) => Agrees(timber, "heartwood moderately resistant to decay");

    [Theory]
    [Published(Note, Place)]
    [InlineData("American red oak")]
    [InlineData("western hemlock")]
    [InlineData("Sitka spruce")]
    [InlineData("white spruce")]
    [InlineData("lodgepole pine")]
    [InlineData("ponderosa pine")]
    [InlineData("red pine")]
    [InlineData("jack pine")]
    [InlineData("ashes")]
    [InlineData("aspens")]
    [InlineData("basswood")]
    [InlineData("beech")]
    [InlineData("birches")]
    [InlineData("buckeye")]
    [InlineData("butternut")]
    [InlineData("cottonwood")]
    [InlineData("elms")]
    [InlineData("hackberry")]
    [InlineData("magnolia")]
    [InlineData("maples")]
    [InlineData("willows")]
    public void Slightly_or_not_resistant(string timber) =>
        Agrees(timber, "heartwood slightly or not resistant to decay");

    private static void Agrees(string timber, string expected)
    {
        var found = Assert.Single(
            Facts.OtherScales,
            each =>
                each.Scale == "American grouping by decay resistance"
                && each.SpeciesNames.Contains(timber, StringComparer.Ordinal)
        );
        SecondSource.IsAnotherCopy(found.Provenance, "FPL-0153");
        Assert.Equal(expected, found.Says);
    }
}
