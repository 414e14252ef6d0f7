using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Outline;

/// <summary>Plain drawings through a lens whose bow is known.</summary>
public class LensFinderTests
{
    // Drawn at r·(1 + bow·r²), the straight picture's r: to first order the division model's bow with the other sign.
    [Theory]
    [InlineData(0.06)]
    [InlineData(-0.05)]
    public void The_sides_of_a_section_show_the_lens(double bow)
    {
        var drawn = new PlainSection { LensBow = -bow };
        var with = DrawnReading.Of(drawn);
        var without = DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { OutlineIsExact = true });

        var found = DrawnReading.Read(with).Scale.LensBow!.Value;
        // The drawing's model and the reader's differ by about the square of the bow.
        Assert.Equal(bow, found.Value, (2 * found.StandardUncertainty) + (3 * bow * bow));
        Assert.Null(DrawnReading.Read(without).Scale.LensBow);
        Assert.True(Error(with) < 0.1, $"{Error(with):0.000} mm");
        Assert.True(Error(with) < 0.4 * Error(without), $"{Error(with):0.000} against {Error(without):0.000} mm");
    }

    [Fact]
    public void Straight_sides_show_no_lens() =>
        Assert.Null(DrawnReading.Read(DrawnReading.Of(new PlainSection())).Scale.LensBow);

    [Fact]
    public void A_round_section_shows_no_lens() =>
        Assert.Null(
            DrawnReading
                .Read(
                    DrawnReading.Of(
                        new PlainSection
                        {
                            Kind = DrawnOutline.Round,
                            WidthMm = 100,
                            LensBow = -0.06,
                        }
                    )
                )
                .Scale.LensBow
        );

    [Fact]
    public void Touched_places_and_what_is_drawn_over_keep_to_the_photograph()
    {
        var drawn = new PlainSection { LensBow = -0.08 };
        var reading = DrawnReading.Of(drawn);

        // Corners and front where the lens drew them.
        Assert.All(
            drawn.Outline.Zip(DrawnReading.Read(reading).Outline.PointsPx),
            pair => Assert.Equal(0, pair.First.DistanceTo(pair.Second), 2.0)
        );
        var front = DrawnReading
            .Read(reading)
            .BoundaryPx.SelectMany(line => line)
            .MinBy(p => p.DistanceTo(drawn.Place(50, 9)));
        Assert.Equal(0, front.DistanceTo(drawn.Place(50, 9)), 6.0);
    }

    private static double Error(SectionReading reading) =>
        DrawnReading
            .Profile(reading)
            .Faces.SelectMany(face => face.DepthMm.Where((_, i) => !face.Excluded[i]))
            .Average(mm => Math.Abs(mm - 9));
}
