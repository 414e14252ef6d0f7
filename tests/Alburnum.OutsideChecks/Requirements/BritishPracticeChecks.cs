using Alburnum.Requirements;
using Alburnum.Timber;
using static Alburnum.OutsideChecks.Requirements.Shipped;

namespace Alburnum.OutsideChecks.Requirements;

[Transcription]
public sealed class BritishPracticeChecks
{
    private const string Amendment = "BS 8417, 2011+A1:2014";

    [Fact]
    [Published(Amendment, "use class 4, 30 years, at second hand")]
    public void A_sawn_pine_post_with_exposed_heartwood_for_30_years_in_the_ground_needs_NP6()
    {
        var demand = Demand("british-2014", Sawn("Scots pine", UseClass.Four, 30, exposedHeartwood: true));
        Assert.Equal("NP6", demand.PenetrationName);
        Assert.Equal(new AllOf([AllSapwood, new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75)]), demand.Penetration);
    }

    [Fact]
    [Published(Amendment, "use class 4, 30 years, at second hand")]
    public void A_sawn_spruce_post_for_30_years_needs_12_mm_of_sapwood_and_6_mm_of_exposed_heartwood_and_incising()
    {
        var post = Sawn("Norway spruce", UseClass.Four, 30, exposedHeartwood: true) with
        {
            Component = Library.Components.Named("fence post"),
        };
        var demand = Demand("british-2014", post);
        Assert.Equal(new AllOf([Sapwood(12), new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75)]), demand.Penetration);
        Assert.Contains(AdviceOn(demand), each => each.Contains("incised", StringComparison.Ordinal));
    }

    [Fact]
    [Published(Amendment, "75 % of the exposed heartwood zone, at second hand")]
    public void Exposed_heartwood_is_read_over_75_percent_of_its_zone_on_every_face()
    {
        var demand = Demand("british-2014", Sawn("Scots pine", UseClass.Four, 30, exposedHeartwood: true));
        var heartwood = Assert.IsType<AllOf>(demand.Penetration).Parts.OfType<LeastDepth>().Single();
        Assert.Equal(0.75, heartwood.Coverage);
    }

    [Theory]
    [Published(Amendment, "only pine counts as permeable among softwoods, at second hand")]
    [InlineData("Scots pine", "permeable")]
    [InlineData("radiata pine", "permeable")]
    [InlineData("Sitka spruce", "resistant")]
    [InlineData("European larch", "resistant")]
    [InlineData("Douglas fir (Europe)", "resistant")]
    public void Among_softwoods_only_pine_counts_as_permeable(string species, string group) =>
        Assert.Equal([group], Library.Rulebooks.Named("british-2014").GroupsOf(Library.Species.Get(species)));

    [Fact]
    [Published(
        "British trade technical note on specifying treated joinery, 11 December 2020",
        "service life and retention"
    )]
    public void A_window_frame_without_a_stated_life_is_asked_for_30_years_and_a_quarter_more_retention()
    {
        var frame = new Enquiry
        {
            Component = Library.Components.Get("window frame"),
            UseClasses = [UseClass.ThreeOne],
            Exposure = new() { IsCoated = true },
            CriticalValue = new PreservativeAmount(8, AmountUnit.KgPerM3),
        };
        var trace = Ask("british-2014", frame).Trace;
        var shorter = Ask("british-2014", frame with { Life = new DesiredServiceLife(15) }).Trace;

        Assert.Equal(new Settled(new LifeDemand(new DesiredServiceLife(30))), trace.Step(Subject.Life)!.Finding);
        Assert.Equal(10.0, 8.0 * Factor(trace));
        Assert.Equal(8.0, 8.0 * Factor(shorter));

        static double Factor(Trace trace) =>
            Assert
                .IsType<RetentionFactor>(Assert.IsType<Settled>(trace.Step(Subject.Retention)!.Finding).Demand)
                .Factor;
    }

    [Theory]
    [Published("House-building warranty standards, 2019", "clause 3.3.2, notes to table 1")]
    [InlineData("packs-hold-sapwood", "contains sapwood")]
    [InlineData("sole-plate", "boron through the full cross-section")]
    [InlineData("meranti-joinery", "as if it were European redwood")]
    [InlineData("high-decking", "more than 600 mm above ground is expected to last 60 years")]
    public void The_house_building_standards_add_to_the_code(string key, string says)
    {
        var row = Library.Rulebooks.Named("british-2014").Rows.Single(each => each.Key == key);
        Assert.Equal(Standing.Published, row.Provenance.Standing);
        Assert.Contains(says, Assert.IsType<Advice>(row.Demand).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    [Published("BS 8417, 2024", "use classes, at second hand")]
    public void A_deck_joist_belongs_in_use_class_4_in_the_2024_edition() =>
        Assert.Equal("4", UseOf("british-2024", "deck joist"));

    [Theory]
    [Published(
        "Specification increase for timber deck substructure components, 27 January 2020",
        "2011+A1:2014 put all uncoated uses above ground in class 3u; class 4 is the trade's rule of January 2020"
    )]
    [InlineData("british-2014", "3u")]
    [InlineData("british-trade-2020", "4")]
    public void A_deck_joist_is_class_3u_in_the_edition_of_2014_and_class_4_by_the_rule_of_2020(
        string rulebook,
        string useClass
    ) => Assert.Equal(useClass, UseOf(rulebook, "deck joist"));

    [Theory]
    [Published("article on the revised draft of BS 8417, late 2010", "AQL for penetration by treatability and form")]
    [InlineData("Scots pine", TimberForm.Sawn, 1)]
    [InlineData("Scots pine", TimberForm.Round, 1)]
    [InlineData("Norway spruce", TimberForm.Sawn, 25)]
    [InlineData("Norway spruce", TimberForm.Round, 10)]
    public void Penetration_is_accepted_by_an_AQL_of_the_timber(string species, TimberForm form, double aqlPercent)
    {
        var timber = new Enquiry { Species = Library.Species.Get(species), Form = form };
        Assert.Equal(aqlPercent, Ask("british-2014", timber).Trace.AqlPercent!.Value);
    }

    [Theory]
    [Published(Amendment, "NP5 before, raised to NP6 for sawn faces that show heartwood; trade journal, 2014")]
    [InlineData(true, "NP6")]
    [InlineData(false, "NP5")]
    public void The_step_to_NP6_concerns_only_faces_that_show_heartwood(bool isExposed, string penetration)
    {
        var demand = Demand("british-2014", Sawn("Scots pine", UseClass.Four, 30, exposedHeartwood: isExposed));
        Assert.Equal(penetration, demand.PenetrationName);
    }

    [Fact]
    [Published("BS 8417, 2024", "use classes, at second hand")]
    public void An_external_structural_support_belongs_in_use_class_4_in_the_2024_edition() =>
        Assert.Equal("4", UseOf("british-2024", "external structural support"));

    [Fact]
    [Published("BS 8417, 2024", "above-ground fencing, at second hand")]
    public void The_thickness_that_divides_NP1_from_NP2_in_2024_is_not_guessed()
    {
        var rail = new Enquiry
        {
            Component = Library.Components.Get("fence rail"),
            Species = Library.Species.Get("Sitka spruce"),
            Section = new RectangularSection(38, 87),
        };
        var answer = Assert.IsType<NotCovered>(Ask("british-2024", rail));
        Assert.Contains(
            "NP1 or NP2, depending on thickness",
            Assert.IsType<CellNotRead>(answer.Reason).Note,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [Published("British buyers' guide to preservative-treated wood, December 2020", "use classes by component")]
    [InlineData("fence post", "4")]
    [InlineData("agricultural post", "4")]
    [InlineData("retaining wall", "4")]
    [InlineData("playground timber", "4")]
    [InlineData("deck post", "4")]
    [InlineData("deck board", "3u")]
    [InlineData("fence rail", "3u")]
    [InlineData("fascia", "3u")]
    public void Outdoor_components_have_their_use_class(string component, string useClass) =>
        Assert.Equal(useClass, UseOf("british-2014", component));

    [Theory]
    [Published("House-building warranty standard, 2011", "timber preservation appendix")]
    [InlineData("tiling batten", "2")]
    [InlineData("sole plate", "2")]
    [InlineData("external wall stud", "2")]
    [InlineData("ground-floor joist", "2")]
    [InlineData("dry roof timber", "1")]
    [InlineData("intermediate floor joist", "1")]
    public void Components_of_a_house_have_their_use_class_and_60_years(string component, string useClass)
    {
        Assert.Equal(useClass, UseOf("british-2014", component));
        Assert.Equal(60, LifeOf("british-2014", component));
    }

    [Theory]
    [Published("British trade advice on fencing and decking", "usual service life")]
    [InlineData("fence post", 15)]
    [InlineData("deck board", 15)]
    [InlineData("highway fence post", 30)]
    public void Fencing_and_decking_have_a_usual_life(string component, int years) =>
        Assert.Equal(years, LifeOf("british-2014", component));

    [Fact]
    [Published("British trade advice", "desired service lives")]
    public void Service_lives_are_15_30_and_60_years() =>
        Assert.Equal([15, 30, 60], Library.Rulebooks.Named("british-2014").Lives);

    [Fact]
    [Published("British trade advice on treated timber", "moisture before treatment")]
    public void Timber_at_27_percent_moisture_is_dry_enough_in_British_practice()
    {
        var demand = Demand("british-2014", Sawn("Scots pine", UseClass.Four, 15) with { MoisturePercent = 27 });
        Assert.Equal(28, demand.MoistureMaxPercent);
        Assert.Empty(demand.Conditions.OfType<TooWet>());
    }

    [Fact]
    [Published("British trade advice on fencing and decking", "unseasoned spruce posts")]
    public void A_wet_spruce_post_is_warned_of_and_a_dry_one_is_not()
    {
        var post = Sawn("Norway spruce", UseClass.Four, 15) with { Component = Library.Components.Get("fence post") };
        Assert.Contains(AdviceOn(Demand("british-2014", post with { MoisturePercent = 60 })), IsWarning);
        Assert.DoesNotContain(AdviceOn(Demand("british-2014", post with { MoisturePercent = 24 })), IsWarning);

        static bool IsWarning(string each) => each.Contains("unseasoned spruce", StringComparison.Ordinal);
    }

    [Theory]
    [Transcription]
    [Published("Building construction handbook, 8", "timber roofs, preservation, at second hand")]
    [InlineData("house longhorn beetle", "Norway spruce", true)]
    [InlineData("powder-post beetle", "Norway spruce", false)]
    [InlineData("powder-post beetle", "European oak", true)]
    [InlineData("furniture beetle", "Norway spruce", true)]
    [InlineData("furniture beetle", "European oak", true)]
    public void An_insect_attacks_softwood_hardwood_or_both(string insect, string species, bool attacks) =>
        Assert.Equal(
            attacks,
            Library.Insects.Single(each => each.Name == insect).MayAttack(Library.Species.Get(species))
        );

    [Fact]
    [Calibration]
    [CommonPractice("what spruce takes up")]
    public void Spruce_without_incising_usually_stays_short_of_6_mm_and_incised_usually_reaches_it()
    {
        var spruce = Library.Species.Get("Sitka spruce");
        Assert.Equal(
            ReachVerdict.Unlikely,
            Library.UsualReach.Judge(Sapwood(6), spruce, isIncised: false, hasHeartwoodAtFace: null)
        );
        Assert.Equal(
            ReachVerdict.Likely,
            Library.UsualReach.Judge(Sapwood(6), spruce, isIncised: true, hasHeartwoodAtFace: null)
        );
    }

    private static string UseOf(string rulebook, string component)
    {
        var trace = Ask(rulebook, new Enquiry { Component = Library.Components.Get(component) }).Trace;
        return Assert
            .IsType<UseClassDemand>(Assert.IsType<Settled>(trace.Step(Subject.UseClass)!.Finding).Demand)
            .Label;
    }

    private static int LifeOf(string rulebook, string component)
    {
        var trace = Ask(rulebook, new Enquiry { Component = Library.Components.Get(component) }).Trace;
        return Assert.IsType<LifeDemand>(Assert.IsType<Settled>(trace.Step(Subject.Life)!.Finding).Demand).Life.Years;
    }
}
