using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Tests.Facts;

/// <summary>From names and files to an answer, once through.</summary>
public sealed class FirstAnswersTests
{
    private static readonly FactLibrary Library = ShippedData.Library;

    [Fact]
    public void A_sawn_pine_orchard_post_for_30_years_needs_NP6()
    {
        var answer = Library
            .Rulebooks.Named("british-2014")
            .Answer(
                new Enquiry
                {
                    Component = Component("orchard post"),
                    Section = new RectangularSection(100, 100),
                    Species = Library.Species.Get("Scots pine"),
                    Life = new DesiredServiceLife(30),
                    HasExposedHeartwood = true,
                }
            );

        var required = Assert.IsType<Required>(answer);
        Assert.Equal("NP6", required.Requirement.PenetrationName);
        Assert.Equal(28, required.Requirement.MoistureMaxPercent);
        Assert.Equal(
            [new OneOf(Field.Component, ["fence post"])],
            Assert.Single(required.Trace.Step(Subject.UseClass)!.Matched).When
        );
    }

    [Fact]
    public void A_footbridge_joist_for_which_the_contract_asks_NP3_needs_6_mm_of_sapwood()
    {
        var answer = Library
            .Rulebooks.Named("european-2007")
            .Answer(
                new Enquiry
                {
                    Component = Component("footbridge joist"),
                    Section = new RectangularSection(75, 150),
                    Species = Library.Species.Get("Norway spruce"),
                    UseClasses = [UseClass.ThreeTwo],
                    StatedClass = "NP3",
                }
            );

        var required = Assert.IsType<Required>(answer);
        Assert.Equal(new LeastDepth(WoodZone.Sapwood, 6), required.Requirement.Penetration);
        Assert.Equal(6, required.Requirement.Zone!.DepthMm);
        Assert.Equal(Standing.FromMemory, required.Trace.WeakestStanding);
    }

    [Fact]
    public void NP4_is_refused_for_a_sawn_piece()
    {
        var sawn = new Enquiry { Section = new RectangularSection(100, 100), StatedClass = "NP4" };
        var round = new Enquiry { Section = new RoundSection(120), StatedClass = "NP4" };

        Assert.IsType<NotPermitted>(Library.Rulebooks.Named("european-2007").Answer(sawn));
        Assert.IsType<Required>(Library.Rulebooks.Named("european-2007").Answer(round));
    }

    [Fact]
    public void Without_knowing_whether_heartwood_is_exposed_the_answer_names_what_is_missing()
    {
        var answer = Library
            .Rulebooks.Named("british-2014")
            .Answer(
                new Enquiry
                {
                    Section = new RectangularSection(100, 100),
                    Species = Library.Species.Get("Sitka spruce"),
                    UseClasses = [UseClass.Four],
                    Life = new DesiredServiceLife(30),
                }
            );

        Assert.Equal([Field.ExposedHeartwood], Assert.IsType<NotCovered>(answer).Missing);
    }

    private static Component Component(string name) => Assert.IsType<Component>(Library.Components.Named(name));
}
