using Alburnum.DrawnSections;
using Alburnum.Imaging.Cards;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Tests.Accuracy;

namespace Alburnum.Imaging.Tests.Cards;

/// <summary>The card found, and never where there is none. Seeds of which no limit was set on any.</summary>
public sealed class CardFinderTests
{
    private const double Megapixels = 1.5;

    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    public void The_card_is_found_in_every_plain_photograph_and_its_marks_lie_where_it_says(Stratum stratum)
    {
        for (var seed = 8001; seed <= 8006; seed++)
        {
            var scene = CardScenes.Of(stratum, seed, belowMm: 0, Megapixels);
            var card = Found(TestPhotographs.Of(scene));

            Assert.NotNull(card);
            Assert.All(
                card.MarksPx.Zip(scene.Card!.Marks.Select(scene.Lens.Project)),
                pair =>
                    Assert.InRange(
                        double.Hypot(pair.First.X - pair.Second.X, pair.First.Y - pair.Second.Y),
                        0,
                        3 * card.MarkPx
                    )
            );
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(8)]
    public void However_the_file_is_turned_the_marks_lie_in_the_upright_photograph(int orientation)
    {
        var scene = CardScenes.Of(Stratum.Easy, 8001, belowMm: 0, Megapixels);
        // Easy scenes are stored upright.
        var upright = Found(TestPhotographs.Of(scene));
        var turned = Found(
            TestPhotographs.Of(scene with { Orientation = orientation, Name = $"{scene.Name}-turned-{orientation}" })
        );

        Assert.All(
            upright!.MarksPx.Zip(turned!.MarksPx),
            pair => Assert.InRange(pair.First.DistanceTo(pair.Second), 0, 3 * upright.MarkPx)
        );
    }

    [Fact]
    public void No_card_is_found_where_none_lies()
    {
        foreach (var stratum in Enum.GetValues<Stratum>())
        {
            foreach (var seed in TestPhotographs.Seeds(stratum))
                Assert.Null(Found(TestPhotographs.Of(stratum, seed)));
        }
    }

    private static FoundCard? Found(TestPhotograph photograph)
    {
        using var file = PhotographFile.Open(photograph.Truth.Name + ".jpg", photograph.Jpeg);
        using var photo = file.Decode(1);
        return CardFinder.Find(photo);
    }
}
