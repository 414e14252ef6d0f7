using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Judging;

/// <summary>What is wrong with a photograph is said in words with what to do; what cannot be read is no number.</summary>
public class QualityTests
{
    [Fact]
    public void A_good_photograph_has_no_findings()
    {
        var reading = DrawnReading.Of(new PlainSection());

        Assert.Equal(QualityGrade.Good, reading.Quality.Grade);
        Assert.Empty(reading.Quality.Findings);
    }

    [Theory]
    [InlineData(5, QualityGrade.Fair)]
    [InlineData(11, QualityGrade.Poor)]
    public void Out_of_focus(float blurPx, QualityGrade grade) =>
        Says(DrawnReading.Of(new PlainSection { BlurPx = blurPx }), grade, "Out of focus", "take it again");

    [Fact]
    public void Too_few_pixels_are_read_with_care()
    {
        var reading = DrawnReading.Of(new PlainSection { PxPerMm = 2.2, MarginPx = 60 });

        Says(reading, QualityGrade.Poor, "Only 2.2 pixels per mm", "go closer");
        Assert.NotNull(reading.Profile);
    }

    [Fact]
    public void Far_too_few_pixels_are_not_determined()
    {
        var reading = DrawnReading.Of(new PlainSection { PxPerMm = 0.8, MarginPx = 60 });

        Says(reading, QualityGrade.Unusable, "Only 0.8 pixels per mm", "go closer");
        NotDetermined(reading);
    }

    [Fact]
    public void A_section_with_glare_is_said_to_be_over_exposed() =>
        Says(
            DrawnReading.Of(
                new PlainSection { Over = (x, y) => x is > 12 and < 88 && y is > 12 and < 63 ? 0xFFFFFF : null }
            ),
            QualityGrade.Poor,
            "Over-exposed",
            "Keep flash and sun off"
        );

    [Fact]
    public void A_section_burnt_out_is_not_determined()
    {
        var reading = DrawnReading.Of(new PlainSection { Untreated = 0xFFFFFF, Treated = 0xFFFFFF });

        Says(reading, QualityGrade.Unusable, "Over-exposed", "take it again");
        NotDetermined(reading);
    }

    [Fact]
    public void A_section_in_the_dark_is_said_to_be_under_exposed() =>
        Says(
            DrawnReading.Of(new PlainSection { Untreated = 0x180804, Treated = 0x04060C }),
            QualityGrade.Poor,
            "Under-exposed",
            "even light"
        );

    [Fact]
    public void An_indicator_that_has_not_developed_is_not_determined()
    {
        var reading = DrawnReading.Of(new PlainSection { Treated = 0xC9583A });

        NotDetermined(reading);
        Assert.Contains(reading.Notes, note => note.Contains("indicator has developed", StringComparison.Ordinal));
    }

    [Fact]
    public void A_border_seen_without_an_indicator_is_weak_evidence()
    {
        var none = KnownIndicators.Sharp("none");
        var drawn = new PlainSection { Treated = none.TreatedColours[0], Untreated = none.UntreatedColours[0] };

        Says(
            DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { Indicator = none }),
            QualityGrade.Fair,
            "without a reagent"
        );
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

        NotDetermined(reading);
        Assert.Contains(reading.Notes, note => note.Contains("it may be copper-blue", StringComparison.Ordinal));
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
        Assert.Equal(key, told.Indicator!.Key);
    }

    private static void NotDetermined(SectionReading reading)
    {
        Assert.Null(reading.Profile);
        Assert.Empty(reading.BoundaryPx);
        Assert.Contains(reading.Notes, note => note.StartsWith("Not determined", StringComparison.Ordinal));
    }

    private static void Says(SectionReading reading, QualityGrade grade, params string[] words)
    {
        Assert.True(
            grade == reading.Quality.Grade,
            $"{reading.Quality.Grade}: {string.Join(" ", reading.Quality.Findings)}"
        );
        Assert.All(
            words,
            word => Assert.Contains(reading.Quality.Findings, said => said.Contains(word, StringComparison.Ordinal))
        );
    }
}
