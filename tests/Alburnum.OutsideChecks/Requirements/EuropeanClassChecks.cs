using Alburnum.Requirements;
using Alburnum.Timber;
using static Alburnum.OutsideChecks.Requirements.Shipped;

namespace Alburnum.OutsideChecks.Requirements;

[Transcription]
public sealed class EuropeanClassChecks
{
    [Theory]
    [Published("EN 351-1, 2007", "penetration classes, at second hand")]
    [InlineData("NP2", 3)]
    [InlineData("NP3", 6)]
    [InlineData("NP4", 25)]
    public void A_class_of_2007_asks_for_a_depth_in_the_sapwood(string name, double mm) =>
        Assert.Equal(Sapwood(mm), Class("european-2007", name).Penetration);

    [Fact]
    [Published("EN 351-1, 2007", "penetration classes, at second hand")]
    public void NP1_asks_for_no_depth() => Assert.IsType<NoDepth>(Class("european-2007", "NP1").Penetration);

    [Fact]
    [Published("EN 351-1, 2007", "penetration classes, at second hand")]
    public void NP5_asks_for_all_the_sapwood() => Assert.Equal(AllSapwood, Class("european-2007", "NP5").Penetration);

    [Fact]
    [Published("EN 351-1, 2007", "penetration classes, at second hand")]
    public void NP6_asks_for_all_the_sapwood_and_6_mm_of_exposed_heartwood() =>
        Assert.Equal(
            new AllOf([AllSapwood, new LeastDepth(WoodZone.ExposedHeartwood, 6)]),
            Class("european-2007", "NP6").Penetration
        );

    [Fact]
    [Published("EN 351-1, 2007", "penetration classes, at second hand")]
    public void NP4_is_for_round_timber_only()
    {
        var sawn = new Enquiry { StatedClass = "NP4", Section = new RectangularSection(100, 100) };
        Assert.IsType<NotPermitted>(Ask("european-2007", sawn));
    }

    [Theory]
    [Published("EN 351-1, 1995", "penetration classes, at second hand")]
    [InlineData("P2", 3)]
    [InlineData("P3", 4)]
    [InlineData("P4", 6)]
    [InlineData("P5", 6)]
    [InlineData("P6", 12)]
    [InlineData("P7", 20)]
    public void A_class_of_1995_asks_for_a_depth_in_the_sapwood(string name, double mm) =>
        Assert.Equal(Sapwood(mm), Class("european-1995", name).Penetration);

    [Theory]
    [Published("EN 351-1, 1995", "penetration classes, at second hand")]
    [InlineData("P2", "40 mm")]
    [InlineData("P5", "50 mm")]
    public void Two_classes_of_1995_also_ask_for_a_depth_along_the_grain(string name, string depth) =>
        Assert.Contains(
            AdviceOn(Class("european-1995", name)),
            each => each.Contains(depth + " along the grain from", StringComparison.Ordinal)
        );

    [Fact]
    [Published("EN 351-1, 1995", "penetration classes, at second hand")]
    public void P7_is_for_round_timber_only() =>
        Assert.IsType<NotPermitted>(Ask("european-1995", new Enquiry { StatedClass = "P7", Form = TimberForm.Sawn }));

    [Fact]
    [Published("EN 351-1, 1995", "penetration classes, at second hand")]
    public void P1_asks_for_nothing() => Assert.IsType<NoDepth>(Class("european-1995", "P1").Penetration);

    [Fact]
    [Published("EN 351-1, 1995", "class P8, at second hand")]
    [Published(
        "Nordic classes A, AB and M",
        "P8 on a trade page of the 1995 edition, NP5 on the council's page of the 2007 edition"
    )]
    public void An_old_certificate_that_says_P8_means_all_the_sapwood_now_NP5()
    {
        var demand = Class("european-1995", "P8");
        Assert.Equal(AllSapwood, demand.Penetration);
        Assert.Contains("Nearest class of 2007 is NP5.", AdviceOn(demand));
    }

    private static Requirement Class(string rulebook, string name) =>
        Demand(rulebook, new Enquiry { StatedClass = name, Form = TimberForm.Round });
}
