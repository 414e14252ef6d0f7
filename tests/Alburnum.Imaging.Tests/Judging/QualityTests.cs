using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Judging;

/// <summary>What is wrong with a photograph is told with its size; what cannot be read is no number.</summary>
public class QualityTests
{
    [Fact]
    public void A_good_photograph_has_no_findings()
    {
        var reading = DrawnReading.Of(new PlainSection());

        Assert.Equal(QualityGrade.Good, reading.Outcome.Quality.Grade);
        Assert.Empty(reading.Outcome.Quality.Findings);
    }

    [Fact]
    public void Without_a_reagent_what_is_not_known_of_the_front_is_in_the_budget()
    {
        var drawn = new PlainSection { Treated = 0x98A078, Untreated = 0xD8B98C };

        var read = DrawnReading.Read(
            DrawnReading.Of(
                drawn,
                DrawnReading.Request(drawn) with
                {
                    Indicator = KnownIndicators.All.Single(each => each.Key == "none"),
                }
            )
        );

        Assert.InRange(
            read.Budget.LeastMm.Components.Single(each => each.Cause.Key == "no-reagent").Contribution,
            1,
            1.1
        );
        Assert.True(read.Profile.Statistics.MinimumMm.StandardUncertainty > 1);
        Assert.All(read.Profile.Faces[0].StandardUncertaintyMm, u => Assert.True(u > 1));
    }

    [Theory]
    [InlineData(5, QualityGrade.Fair)]
    [InlineData(11, QualityGrade.Poor)]
    public void Out_of_focus(float blurPx, QualityGrade grade) =>
        Assert.InRange(Found<Blurred>(DrawnReading.Of(new PlainSection { BlurPx = blurPx }), grade).OverMm, 0.9, 3);

    [Fact]
    public void Too_few_pixels_are_read_with_care()
    {
        var reading = DrawnReading.Of(new PlainSection { PxPerMm = 2.2, MarginPx = 60 });

        Assert.Equal(2.2, Found<FewPixels>(reading, QualityGrade.Poor).PxPerMm, 0.05);
        Assert.IsType<Read>(reading.Outcome);
    }

    [Fact]
    public void Far_too_few_pixels_are_not_determined()
    {
        var reading = DrawnReading.Of(new PlainSection { PxPerMm = 0.8, MarginPx = 60 });

        Assert.Equal(0.8, Found<FewPixels>(reading, QualityGrade.Unusable).PxPerMm, 0.05);
        Ended(reading, ReadingStage.Quality, new TooLittleShown());
    }

    [Fact]
    public void A_section_with_glare_is_said_to_be_over_exposed() =>
        // The glare covers (88 − 12)·(63 − 12) of 100·75 mm².
        Assert.Equal(
            76.0 * 51 / 7500,
            Found<OverExposed>(
                DrawnReading.Of(
                    new PlainSection { Over = (x, y) => x is > 12 and < 88 && y is > 12 and < 63 ? 0xFFFFFF : null }
                ),
                QualityGrade.Poor
            ).Share,
            0.03
        );

    [Fact]
    public void A_section_burnt_out_is_not_determined()
    {
        var reading = DrawnReading.Of(new PlainSection { Untreated = 0xFFFFFF, Treated = 0xFFFFFF });

        Assert.InRange(Found<OverExposed>(reading, QualityGrade.Unusable).Share, 0.95, 1);
        Ended(reading, ReadingStage.Quality, new TooLittleShown());
    }

    [Fact]
    public void A_section_in_the_dark_is_said_to_be_under_exposed() =>
        Assert.InRange(
            Found<UnderExposed>(
                DrawnReading.Of(new PlainSection { Untreated = 0x180804, Treated = 0x04060C }),
                QualityGrade.Poor
            ).Light,
            1,
            16
        );

    [Fact]
    public void An_indicator_that_has_not_developed_is_not_determined()
    {
        var reading = DrawnReading.Of(new PlainSection { Treated = 0xC9583A });

        Ended(
            reading,
            ReadingStage.Zones,
            new NoFront(IsTreated: false) { Named = KnownIndicators.Sharp("copper-blue") }
        );
    }

    [Fact]
    public void A_border_seen_without_an_indicator_is_weak_evidence()
    {
        var none = KnownIndicators.Sharp("none");
        var drawn = new PlainSection { Treated = none.TreatedColours[0], Untreated = none.UntreatedColours[0] };

        var reading = DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { Indicator = none });

        Assert.Equal("none", Found<WeakEvidence>(reading, QualityGrade.Fair).Indicator.Key);
    }

    [Theory]
    [InlineData("copper-magenta")]
    [InlineData("boron-red")]
    [InlineData("copper-black")]
    [InlineData("none")]
    public void The_wrong_indicator_named_is_not_determined_and_the_right_one_suggested(string named)
    {
        var drawn = new PlainSection();
        var reading = DrawnReading.Of(
            drawn,
            DrawnReading.Request(drawn) with
            {
                Indicator = KnownIndicators.Sharp(named),
            }
        );

        var fault = Assert.IsType<OtherIndicator>(DrawnReading.Ended(reading).Fault);
        Assert.Equal((named, "copper-blue"), (fault.Named.Key, fault.Seen.Key));
        Assert.Equal(ReadingStage.Zones, DrawnReading.Ended(reading).Stage);
    }

    [Theory]
    [InlineData("copper-blue")]
    [InlineData("copper-black")]
    [InlineData("copper-magenta")]
    [InlineData("boron-red")]
    [InlineData("none")]
    public void Every_indicator_that_ships_is_read_whether_named_or_not(string key)
    {
        var sharp = KnownIndicators.Sharp(key);
        var drawn = new PlainSection { Treated = sharp.TreatedColours[0], Untreated = sharp.UntreatedColours[0] };
        var named = DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { Indicator = sharp });
        var told = DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { Indicator = null });

        Assert.Equal(9, DrawnReading.Profile(named).Statistics.MeanMm.Value, 0.15);
        // Unless said, the colour is taken to be drawn a little past the front.
        Assert.Equal(9, DrawnReading.Profile(told).Statistics.MeanMm.Value, 0.45);
        Assert.Equal(key, told.Outcome.Indicator!.Key);
    }

    private static void Ended(SectionReading reading, ReadingStage stage, ReadingFault fault)
    {
        var ended = DrawnReading.Ended(reading);
        Assert.Equal((stage, fault), (ended.Stage, ended.Fault));
    }

    private static T Found<T>(SectionReading reading, QualityGrade grade)
        where T : QualityFinding
    {
        Assert.Equal(grade, reading.Outcome.Quality.Grade);
        return Assert.Single(reading.Outcome.Quality.Findings.OfType<T>());
    }
}
