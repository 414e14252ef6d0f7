using Alburnum.Requirements;
using Alburnum.Timber;
using static Alburnum.OutsideChecks.Requirements.Shipped;

namespace Alburnum.OutsideChecks.Requirements;

[Transcription]
public sealed class OtherCodesChecks
{
    private const string Spanish = "CTE DB SE-M, as transcribed publicly";
    private const string Manual = "MO-312 wood protection manual";

    [Theory]
    [Published(Spanish, "protection by use class")]
    [InlineData(UseClass.One, "NP1")]
    [InlineData(UseClass.Two, "NP1")]
    [InlineData(UseClass.ThreeOne, "NP2")]
    [InlineData(UseClass.ThreeTwo, "NP3")]
    [InlineData(UseClass.Four, "NP5")]
    [InlineData(UseClass.Five, "NP6")]
    public void The_Spanish_grid_for_sawn_pine(UseClass useClass, string penetration) =>
        Assert.Equal(penetration, Demand("spanish-se-m", Sawn("Scots pine", useClass)).PenetrationName);

    [Theory]
    [Published(Spanish, "protection by use class")]
    [InlineData(UseClass.ThreeTwo)]
    [InlineData(UseClass.Four)]
    [InlineData(UseClass.Five)]
    public void The_Spanish_code_refuses_sapwood_of_treatability_3_outdoors(UseClass useClass) =>
        Assert.IsType<NotPermitted>(Ask("spanish-se-m", Sawn("Norway spruce", useClass)));

    [Theory]
    [Published(Spanish, "table 3.1 with note 3")]
    [InlineData("sweet chestnut", UseClass.ThreeTwo, "NP3")]
    [InlineData("sweet chestnut", UseClass.Four, "NP5")]
    [InlineData("greenheart", UseClass.Five, "NP6")]
    public void Naturally_durable_timber_is_not_refused_for_sapwood_that_is_hard_to_treat(
        string species,
        UseClass useClass,
        string penetration
    ) => Assert.Equal(penetration, Demand("spanish-se-m", Sawn(species, useClass)).PenetrationName);

    [Fact]
    [Published(Spanish, "table 3.1 with note 3")]
    public void Whether_timber_is_naturally_durable_in_salt_water_is_not_told_by_decay() =>
        Assert.IsType<CellNotRead>(
            Assert.IsType<NotCovered>(Ask("spanish-se-m", Sawn("sweet chestnut", UseClass.Five))).Reason
        );

    [Theory]
    [Published(Spanish, "table 3.1, classes 1 and 2")]
    [InlineData(UseClass.One, "recommends")]
    [InlineData(UseClass.Two, "requires")]
    public void A_surface_treatment_is_recommended_in_class_1_and_required_in_class_2(UseClass useClass, string verb) =>
        Assert.Contains(
            AdviceOn(Demand("spanish-se-m", Sawn("Norway spruce", useClass))),
            each => each.Contains($"{verb} a surface treatment", StringComparison.Ordinal)
        );

    [Theory]
    [Published(Spanish, "table 3.1, classes 1 and 2")]
    [InlineData(UseClass.One, AnswerOutcome.Recommended)]
    [InlineData(UseClass.Two, AnswerOutcome.Required)]
    public void What_is_recommended_in_class_1_is_not_required(UseClass useClass, AnswerOutcome outcome) =>
        Assert.Equal(outcome, Ask("spanish-se-m", Sawn("Norway spruce", useClass)).Outcome);

    [Fact]
    [Published(Spanish, "table 3.1, roofs")]
    public void A_roof_without_ventilation_is_class_3_1_in_Spain()
    {
        var rafter = Sawn("Scots pine", UseClass.Two) with { Component = Library.Components.Get("dry roof timber") };
        Assert.Contains(
            AdviceOn(Demand("spanish-se-m", rafter)),
            each => each.Contains("without ventilation is class 3.1", StringComparison.Ordinal)
        );
    }

    [Fact]
    [Published(Spanish, "use class 3.2")]
    public void Spanish_use_class_3_2_asks_for_6_mm_where_the_sapwood_is_easy_to_treat() =>
        Assert.Equal(Sapwood(6), Demand("spanish-se-m", Sawn("maritime pine", UseClass.ThreeTwo)).Penetration);

    [Fact]
    [Published(Spanish, "use class 4")]
    public void Round_timber_in_the_ground_may_be_NP4_in_Spain()
    {
        var round = Sawn("Scots pine", UseClass.Four) with { Section = new RoundSection(120) };
        Assert.Equal(new AnyOf([AllSapwood, Sapwood(25)]), Demand("spanish-se-m", round).Penetration);
    }

    [Theory]
    [Published("Nordic wood preservation classes", "end uses")]
    [InlineData("B", "NP3", "3.1")]
    [InlineData("AB", "NP5", "3.2")]
    [InlineData("A", "NP5", "4")]
    [InlineData("M", "NP5", "5")]
    public void A_Nordic_class_has_its_penetration_and_use_class(string name, string penetration, string useClass)
    {
        var answer = Assert.IsType<Required>(
            Ask("nordic-classes", new Enquiry { StatedClass = name, Species = Library.Species.Get("Scots pine") })
        );
        Assert.Equal(penetration, answer.Requirement.PenetrationName);
        Assert.Equal(useClass, UseOf(answer));
    }

    [Fact]
    [Published("Nordic wood preservation classes", "class GRAN, penetration not seen")]
    public void The_Nordic_spruce_class_is_known_by_name_only() =>
        Assert.IsType<NotCovered>(Ask("nordic-classes", new Enquiry { StatedClass = "GRAN" }));

    [Theory]
    [Published("Swedish description of the Nordic class AB, 2017", "timber")]
    [InlineData("Scots pine", null)]
    [InlineData("yellow cedar", null)]
    [InlineData("Norway spruce", "spruce")]
    [InlineData("European larch", "hard-to-impregnate")]
    [InlineData("European beech", "hardwood")]
    public void A_timber_that_is_no_easily_impregnated_softwood_is_outside_the_Nordic_class_AB(
        string species,
        string? outside
    )
    {
        var asked = new Enquiry { StatedClass = "AB", Species = Library.Species.Get(species) };
        var answer = Ask("nordic-classes", asked);

        if (outside is null)
            Assert.IsType<Required>(answer);
        else
        {
            Assert.IsType<TimberNotCovered>(Assert.IsType<NotCovered>(answer).Reason);
            Assert.Equal(outside, Assert.Single(answer.Trace.Step(Subject.Penetration)!.Matched).Key);
        }
    }

    [Fact]
    [Published("Swedish description of the Nordic class HW, 2017", "penetration class")]
    public void The_Nordic_class_HW_is_NP1_with_an_analytical_zone_of_3_mm()
    {
        var demand = Demand(
            "nordic-classes",
            new Enquiry
            {
                StatedClass = "HW",
                Component = Library.Components.Named("window frame"),
                Species = Library.Species.Get("Scots pine"),
            }
        );
        Assert.IsType<NoDepth>(demand.Penetration);
        Assert.Equal(3, demand.Zone!.DepthMm);
    }

    [Theory]
    [Published("Swedish rule on which sizes are treated to which class", "sizes")]
    [InlineData(34, false)]
    [InlineData(45, true)]
    public void Larger_Nordic_sizes_above_ground_are_pointed_to_class_A(double thicknessMm, bool isPointed)
    {
        var demand = Demand(
            "nordic-classes",
            new Enquiry
            {
                UseClasses = [UseClass.ThreeTwo],
                Species = Library.Species.Get("Scots pine"),
                Section = new RectangularSection(thicknessMm, 145),
            }
        );
        Assert.Equal(isPointed, AdviceOn(demand).Any(each => each.Contains("class A", StringComparison.Ordinal)));
    }

    [Fact]
    [Published("I.S. 436, as quoted by a supplier", "fence posts, at second hand")]
    public void An_Irish_fence_post_is_class_4_for_15_years_and_its_penetration_is_not_known()
    {
        var answer = Ask("irish-is-436", new Enquiry { Component = Library.Components.Get("fence post") });
        Assert.IsType<NotCovered>(answer);
        Assert.Equal("4", UseOf(answer));
        Assert.Equal(new Settled(new LifeDemand(new DesiredServiceLife(15))), answer.Trace.Step(Subject.Life)!.Finding);
    }

    [Theory]
    [Published(Manual, "penetration of round timber")]
    [InlineData("foundation pile", "Douglas fir (N America)", 0.75, true, 85)]
    [InlineData("foundation pile", "western hemlock", 0.75, true, 85)]
    [InlineData("foundation pile", "southern pine", 3.50, false, 90)]
    [InlineData("foundation pile", "jack pine", 1.50, false, 85)]
    [InlineData("foundation pile", "Pinus resinosa", 2.50, false, 85)]
    [InlineData("utility pole", "Douglas fir (N America)", 0.75, true, 85)]
    [InlineData("utility pole", "southern pine", 3.00, false, 90)]
    [InlineData("utility pole", "Pinus resinosa", 2.50, false, 85)]
    [InlineData("utility pole", "jack pine", 1.50, false, 85)]
    [InlineData("utility pole", "lodgepole pine", 0.75, true, 85)]
    [InlineData("utility pole", "western larch", 0.50, true, 100)]
    [InlineData("utility pole", "western red cedar (N America)", 0.50, false, 100)]
    public void The_American_table_for_round_timber(
        string use,
        string species,
        double inches,
        bool isAnd,
        double percent
    )
    {
        IReadOnlyList<DepthRule> parts =
        [
            new LeastDepth(WoodZone.Lateral, Math.Round(inches * 25.4, 6)),
            new ShareOfZone(WoodZone.Sapwood, percent / 100),
        ];
        DepthRule expected = isAnd ? new AllOf(parts) : new AnyOf(parts);
        Assert.Equal(expected, Pole(use, species).Penetration);
    }

    [Theory]
    [Published(Manual, "penetration of round timber, 2.5 in or half of the radius, and 90 % of the sapwood")]
    [InlineData("Douglas fir (N America)", 0.25, 1.00)]
    [InlineData("southern pine", 0.50, 2.00)]
    [InlineData("Pinus resinosa", 0.10, 1.60)]
    public void A_building_pole_is_treated_to_half_its_radius(string species, double fromInch, double toInch)
    {
        var sapwood = new ShareOfZone(WoodZone.Sapwood, 0.90);
        var pole = Pole("building pole", species);
        Assert.Equal(
            new AnyOf([
                new AllOf([new LeastDepth(WoodZone.Lateral, 63.5), sapwood]),
                new AllOf([new ShareOfZone(WoodZone.Lateral, 0.50), sapwood]),
            ]),
            pole.Penetration
        );
        Assert.Equal(fromInch * 25.4, pole.Zone!.FromMm, 1e-9);
        Assert.Equal(toInch * 25.4, pole.Zone.DepthMm!.Value, 1e-9);
    }

    [Fact]
    [Published(Manual, "assay zones of round timber")]
    public void The_assay_zone_of_a_southern_pine_pole_lies_between_half_an_inch_and_two_inches()
    {
        var zone = Pole("utility pole", "southern pine").Zone!;
        Assert.Equal((12.7, 50.8), (zone.FromMm, zone.DepthMm!.Value));
    }

    [Fact]
    [Published(Manual, "creosote retention of piles")]
    public void Creosote_in_a_Douglas_fir_pile_is_17_pounds_a_cubic_foot() =>
        Assert.Equal(
            17 * 16.018,
            Pole("foundation pile", "Douglas fir (N America)", "creosote").RequiredRetention!.Value.Value,
            tolerance: 0.02
        );

    [Fact]
    [Published(Manual, "two retention levels of poles, conditions not recorded")]
    public void Two_retention_levels_without_their_conditions_are_not_chosen_between()
    {
        var demand = Pole("utility pole", "southern pine", "creosote");
        Assert.Null(demand.RequiredRetention);
        Assert.Contains(
            "7.5 and 9 pcf",
            Assert.IsType<CellNotRead>(demand.RetentionOpen).Note,
            StringComparison.Ordinal
        );
    }

    // 1 lb = 0.45359237 kg and 1 in = 25.4 mm, exact by definition; the expected values were worked out by hand.
    [Theory]
    [Computed]
    [Published("International yard and pound agreement, 1959", "definition of the pound and the yard")]
    [InlineData("UC4A", 6.41)]
    [InlineData("UC4B", 9.61)]
    public void Pounds_a_cubic_foot_become_kilograms_a_cubic_metre(string category, double kgPerM3) =>
        Assert.Equal(kgPerM3, Sawn16(category, "ACQ-D").RequiredRetention!.Value.Value, tolerance: 0.005);

    [Theory]
    [Published("American use category retentions", "waterborne preservatives, at second hand")]
    [InlineData("UC3B", "ACQ-D", 0.15)]
    [InlineData("UC4A", "CA-B", 0.21)]
    [InlineData("UC4B", "CA-C", 0.31)]
    [InlineData("UC1", "CX-A", 0.206)]
    [InlineData("UC3B", "EL2", 0.019)]
    [InlineData("UC3B", "PTI", 0.018)]
    [InlineData("UC3B", "PTI-stabilised", 0.013)]
    [InlineData("UC4A", "CuN-W", 0.11)]
    public void An_American_retention_by_use_category(string category, string code, double pcf) =>
        Assert.Equal(pcf * 16.0185, Sawn16(category, code).RequiredRetention!.Value.Value, tolerance: 0.001);

    [Fact]
    [Published("American use category system", "sawn southern pine, at second hand")]
    public void Sawn_southern_pine_asks_for_two_and_a_half_inches_or_85_percent_of_the_sapwood() =>
        Assert.Equal(
            new AnyOf([new LeastDepth(WoodZone.Lateral, 63.5), new ShareOfZone(WoodZone.Sapwood, 0.85)]),
            Sawn16("UC4A", "CA-C").Penetration
        );

    [Fact]
    [Published(Manual, "moisture before treatment")]
    public void Timber_at_27_percent_moisture_is_too_wet_for_the_American_rule()
    {
        var enquiry = new Enquiry
        {
            StatedClass = "UC4A",
            Preservative = "CA-C",
            Species = Library.Species.Get("southern pine"),
            Section = new RectangularSection(89, 89),
            MoisturePercent = 27,
        };
        Assert.Contains(new TooWet(27, 25), Demand("american-use-categories", enquiry).Conditions);
    }

    [Theory]
    [Published(Manual, "incising and receipt")]
    [InlineData(60, false, true)]
    [InlineData(60, true, false)]
    [InlineData(50, false, false)]
    public void Coastal_Douglas_fir_over_two_inches_is_rejected_at_receipt_unless_incised(
        double thicknessMm,
        bool isIncised,
        bool isRejected
    )
    {
        var enquiry = new Enquiry
        {
            Species = Library.Species.Get("Douglas fir (N America)"),
            Section = new RectangularSection(thicknessMm, 150),
            IsIncised = isIncised,
            UseClasses = [UseClass.Four],
        };
        Assert.Equal(isRejected, Ask("american-use-categories", enquiry) is NotPermitted);
    }

    [Fact]
    [Published("New Zealand hazard class rules", "penetration, at second hand")]
    public void New_Zealand_limits_unpenetrated_heartwood_to_a_fifth_of_the_section_and_half_way_across()
    {
        var demand = Demand("new-zealand-hazard-classes", new Enquiry { StatedClass = "H4", Form = TimberForm.Sawn });
        Assert.Contains(new UntreatedHeartwoodLimit(0.20, 0.50, 0.50), Assert.IsType<AllOf>(demand.Penetration).Parts);
    }

    [Theory]
    [Published(Manual, "column of waterborne preservatives")]
    [InlineData("utility pole", "southern pine", 0.60)]
    [InlineData("foundation pile", "southern pine", 0.80)]
    [InlineData("foundation pile", "Douglas fir (N America)", 1.00)]
    public void An_American_pole_or_pile_asks_for_its_waterborne_retention(string use, string species, double pcf) =>
        Assert.Equal(pcf * 16.0185, Pole(use, species, "CCA").RequiredRetention!.Value.Value, tolerance: 0.001);

    private static Requirement Pole(string use, string species, string? preservative = null) =>
        Demand(
            "american-round",
            new Enquiry
            {
                Component = Library.Components.Get(use),
                Species = Library.Species.Get(species),
                Section = new RoundSection(300),
                Preservative = preservative,
            }
        );

    private static Requirement Sawn16(string category, string code) =>
        Demand(
            "american-use-categories",
            new Enquiry
            {
                StatedClass = category,
                Preservative = code,
                Species = Library.Species.Get("southern pine"),
                Section = new RectangularSection(89, 89),
            }
        );

    private static string UseOf(Answer answer) =>
        answer.Trace.Step(Subject.UseClass)!.Finding switch
        {
            UseClassOfContract { Demand: var ofClass } => ofClass.Label,
            var other => Assert.IsType<UseClassDemand>(Assert.IsType<Settled>(other).Demand).Label,
        };
}
