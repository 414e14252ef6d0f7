using Alburnum.Requirements;
using static Alburnum.OutsideChecks.Requirements.Shipped;

namespace Alburnum.OutsideChecks.Requirements;

/// <summary>
/// What codes ask for, against publications that the shipped rows were not taken from. Most of them are other copies of the
/// standard that the row repeats; national lists of where a component belongs were each drawn up by their own body.
/// </summary>
[Transcription]
public sealed class QuotedRequirementChecks
{
    private const string SwedishGuide = "a Swedish timber guide";
    private const string NorwegianProducer = "a Norwegian producer's page on class B";
    private const string DutchStandard = "NEN 5461";
    private const string GermanTable = "a German merchant's table of durability classes";
    private const string BelgianPage = "a Belgian fencing maker's page on durability classes";
    private const string Posts = "Treatment levels of posts in the American use categories";
    private const string AustralianLessons = "Australian lessons on building, hazard classes";
    private const string AustralianSupplier = "Hazard level types and classifications, an Australian supplier";
    private const string AustralianAssociation = "Hazard classes, an Australian preservation association";
    private const string DutchAssociation = "a Dutch wood preservation association on use classes";
    private const string EuropeanInstitute = "How to specify treated wood";
    private const string EstonianPage = "an Estonian trade page on treated wood";
    private const string AmendmentNote =
        "Why the specification for 30 years has changed, British wood protection trade body";
    private const string FrenchMerchant = "a French guide to use classes";

    [Theory]
    [Published("EN 351-1, 2007", "at second hand in " + SwedishGuide)]
    [InlineData("NP2", 3)]
    [InlineData("NP3", 6)]
    [InlineData("NP4", 25)]
    public void A_Swedish_guide_asks_for_the_same_depth_in_the_sapwood(string name, double mm) =>
        Assert.Equal(Sapwood(mm), European(name, SwedishGuide).Depth);

    [Fact]
    [Published("EN 351-1, 2007", "NP1, NP5 and NP6, at second hand in " + SwedishGuide)]
    public void A_Swedish_guide_asks_for_nothing_or_all_the_sapwood_in_the_same_classes()
    {
        Assert.IsType<NoDepth>(European("NP1", SwedishGuide).Depth);
        Assert.Equal(AllSapwood, European("NP5", SwedishGuide).Depth);
        Assert.Equal(
            new AllOf([AllSapwood, new LeastDepth(WoodZone.ExposedHeartwood, 6)]),
            European("NP6", SwedishGuide).Depth
        );
    }

    [Fact]
    [Published("EN 351-1, 1995", "6 mm from every side and 50 mm from each end, in words of " + NorwegianProducer)]
    public void A_Norwegian_producer_still_words_class_B_as_P5()
    {
        Assert.Equal(Sapwood(6), European("P5", NorwegianProducer).Depth);
        var old = Demand("european-1995", new Enquiry { StatedClass = "P5", Form = TimberForm.Round });
        Assert.Contains(AdviceOn(old), each => each.Contains("50 mm along the grain", StringComparison.Ordinal));
    }

    [Theory]
    [Published(DutchStandard, "life of heartwood in the ground, in a Dutch dictionary of building terms")]
    [InlineData("jarrah", 25, null)]
    [InlineData("sweet chestnut", 15, 25)]
    [InlineData("European walnut", 10, 15)]
    [InlineData("Norway spruce", 5, 10)]
    [InlineData("European beech", null, 5)]
    public void A_Dutch_standard_gives_the_same_years_in_the_ground(string species, int? from, int? to) =>
        HasYears(species, from, to, DutchStandard);

    [Theory]
    [Published("EN 350-2, 1994", "at second hand in " + GermanTable)]
    [InlineData("jarrah", 25, null)]
    [InlineData("sweet chestnut", 15, 25)]
    [InlineData("European walnut", 10, 15)]
    [InlineData("Norway spruce", 5, 10)]
    [InlineData("European beech", null, 5)]
    public void A_German_table_gives_the_same_years_in_the_ground(string species, int? from, int? to) =>
        HasYears(species, from, to, GermanTable);

    [Theory]
    [Published("Essences", "stakes of 50 × 50 mm, " + BelgianPage)]
    [InlineData("jarrah", 25, null)]
    [InlineData("sweet chestnut", 15, 25)]
    [InlineData("European walnut", 10, 15)]
    [InlineData("Norway spruce", 5, 10)]
    [InlineData("European beech", null, 5)]
    public void A_Belgian_page_gives_the_same_years_in_the_ground(string species, int? from, int? to) =>
        HasYears(species, from, to, BelgianPage);

    [Theory]
    [Published(Posts, "American use category system, at second hand")]
    [InlineData("ACC", "UC1", 0.25)]
    [InlineData("ACC", "UC3B", 0.25)]
    [InlineData("ACC", "UC4A", 0.50)]
    [InlineData("ACQ-B", "UC1", 0.25)]
    [InlineData("ACQ-B", "UC3B", 0.25)]
    [InlineData("ACQ-B", "UC4A", 0.40)]
    [InlineData("ACQ-B", "UC4B", 0.60)]
    [InlineData("ACQ-C", "UC1", 0.25)]
    [InlineData("ACQ-C", "UC3B", 0.25)]
    [InlineData("ACQ-C", "UC4A", 0.40)]
    [InlineData("ACQ-C", "UC4B", 0.60)]
    [InlineData("ACQ-D", "UC1", 0.15)]
    [InlineData("ACQ-D", "UC3B", 0.15)]
    [InlineData("ACQ-D", "UC4A", 0.40)]
    [InlineData("ACQ-D", "UC4B", 0.60)]
    [InlineData("ACZA", "UC1", 0.25)]
    [InlineData("ACZA", "UC3B", 0.25)]
    [InlineData("ACZA", "UC4A", 0.40)]
    [InlineData("ACZA", "UC4B", 0.60)]
    [InlineData("CA-B", "UC1", 0.10)]
    [InlineData("CA-B", "UC3B", 0.10)]
    [InlineData("CA-B", "UC4A", 0.21)]
    [InlineData("CA-B", "UC4B", 0.31)]
    [InlineData("CA-C", "UC1", 0.060)]
    [InlineData("CA-C", "UC3B", 0.060)]
    [InlineData("CA-C", "UC4A", 0.15)]
    [InlineData("CA-C", "UC4B", 0.31)]
    [InlineData("CuN-W", "UC1", 0.070)]
    [InlineData("CuN-W", "UC3B", 0.070)]
    [InlineData("CuN-W", "UC4A", 0.11)]
    [InlineData("CX-A", "UC1", 0.206)]
    [InlineData("CX-A", "UC3B", 0.206)]
    public void A_second_chart_gives_the_same_American_retention(string preservative, string category, double pcf)
    {
        var row = RowOf("american-use-categories", preservative + "-" + (category == "UC1" ? "UC1-UC2" : category));
        SecondSource.IsAnotherCopy(row.Provenance, Posts);
        Assert.Equal(pcf * 16.0185, Assert.IsType<FixedRetention>(row.Demand).Amount.Value, tolerance: 0.001);
    }

    [Theory]
    [Published(AustralianLessons, "service conditions and biological hazards")]
    [InlineData("H1", "indoors", "borers")]
    [InlineData("H2", "indoors", "termites")]
    [InlineData("H3", "outdoors above ground", "decay")]
    [InlineData("H4", "ground", "severe decay")]
    public void Australian_lessons_give_a_hazard_class_the_same_meaning(string name, string where, string hazard) =>
        Means("australian-hazard-classes", name, where, hazard, AustralianLessons);

    [Theory]
    [Published(AustralianSupplier, "exposure, environment and biological hazard")]
    [InlineData("H5", "fresh water", "very severe decay")]
    [InlineData("H6", "sea", "decay")]
    public void An_Australian_supplier_gives_a_hazard_class_the_same_meaning(
        string name,
        string where,
        string hazard
    ) => Means("australian-hazard-classes", name, where, hazard, AustralianSupplier);

    [Fact]
    [Published(AustralianAssociation, "H1.2, borers and decay, with possible exposure to moisture")]
    public void An_Australian_association_gives_H1_2_the_same_meaning() =>
        Means("new-zealand-hazard-classes", "H1.2", "moisture", "borers and decay", AustralianAssociation);

    [Theory]
    [SecondSource]
    [Published(DutchAssociation, "examples of EN 335")]
    [InlineData("fence post", "4")]
    [InlineData("playground timber", "4")]
    [InlineData("retaining wall", "4")]
    [InlineData("external wall stud", "2")]
    public void A_Dutch_association_puts_a_component_in_the_same_use_class(string component, string useClass) =>
        IsIn(component, useClass, DutchAssociation);

    [Theory]
    [SecondSource]
    [Published(FrenchMerchant, "examples of EN 335")]
    [InlineData("external wall stud", "2")]
    [InlineData("cladding", "3u")]
    [InlineData("fence rail", "3u")]
    [InlineData("retaining wall", "4")]
    public void A_French_guide_puts_a_component_in_the_same_use_class(string component, string useClass) =>
        IsIn(component, useClass, FrenchMerchant);

    [Theory]
    [SecondSource]
    [Published(EuropeanInstitute, "a European institute's examples of use classes")]
    [InlineData("fence post", "4")]
    [InlineData("fence rail", "3u")]
    [InlineData("tiling batten", "2")]
    [InlineData("intermediate floor joist", "1")]
    public void A_European_institute_puts_a_component_in_the_same_use_class(string component, string useClass) =>
        IsIn(component, useClass, EuropeanInstitute);

    [Theory]
    [Published(EstonianPage, "examples of use, EN 335")]
    [InlineData("window frame", "3.1")]
    [InlineData("garden timber", "3.2")]
    [InlineData("fence post", "4")]
    [InlineData("utility pole", "4")]
    [InlineData("sleeper", "4")]
    [InlineData("marine timber", "5")]
    public void An_Estonian_page_puts_a_component_in_the_same_Nordic_use_class(string component, string useClass)
    {
        var asked = new Enquiry { Component = Library.Components.Get(component) };
        var row = Ask("nordic-classes", asked).Trace.Step(Subject.UseClass)!.Matched.Single();
        SecondSource.IsAnotherCopy(row.Provenance, EstonianPage);
        Assert.Equal(useClass, Assert.IsType<UseClassDemand>(row.Demand).Label);
    }

    [Theory]
    [Published(EstonianPage, "penetration of the Nordic classes, EN 351-1 of 1995")]
    [InlineData("B", 6.0)]
    [InlineData("AB", null)]
    [InlineData("A", null)]
    [InlineData("M", null)]
    public void An_Estonian_page_asks_for_the_same_depth_in_a_Nordic_class(string name, double? mm)
    {
        var row = RowOf("nordic-classes", name);
        SecondSource.IsAnotherCopy(row.Provenance, EstonianPage);
        Assert.Equal(mm is { } depth ? Sapwood(depth) : AllSapwood, Assert.IsType<PenetrationDemand>(row.Demand).Depth);
    }

    [Fact]
    [Published(AmendmentNote, "acceptable quality level of resistant timber")]
    public void A_trade_body_gives_resistant_timber_the_same_AQL()
    {
        var row = RowOf("british-2014", "aql-resistant-sawn");
        SecondSource.IsAnotherCopy(row.Provenance, AmendmentNote);
        Assert.Equal(25, Assert.IsType<AcceptableQuality>(row.Demand).AqlPercent);
    }

    [Theory]
    [Published(AmendmentNote, "6 mm of heartwood, over 75 % of its surface")]
    [InlineData("in-ground-30-sawn-permeable")]
    [InlineData("in-ground-30-sawn-resistant")]
    public void A_trade_body_asks_for_the_same_depth_of_exposed_heartwood(string key)
    {
        var row = RowOf("british-2014", key);
        SecondSource.IsAnotherCopy(row.Provenance, AmendmentNote);
        var parts = Assert.IsType<AllOf>(Assert.IsType<PenetrationDemand>(row.Demand).Depth).Parts;
        Assert.Contains(new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75), parts);
    }

    private static PenetrationDemand European(string name, string publication)
    {
        var demand = Library.PenetrationClasses[name];
        SecondSource.IsAnotherCopy(demand.DefinedBy!, publication);
        return demand;
    }

    private static void HasYears(string species, int? from, int? to, string publication)
    {
        var row = Library.Durability.InGround(Library.Species.Get(species))!;
        SecondSource.IsAnotherCopy(row.Provenance, publication);
        Assert.Equal((from, to), (row.FromYears, row.ToYears));
    }

    private static void Means(string rulebook, string name, string where, string hazard, string publication)
    {
        var row = RowOf(rulebook, "meaning-" + name);
        SecondSource.IsAnotherCopy(row.Provenance, publication);
        var sentence = Assert.IsType<Advice>(row.Demand).Sentence;
        Assert.Contains(where, sentence, StringComparison.Ordinal);
        Assert.Contains(hazard, sentence, StringComparison.Ordinal);
    }

    private static void IsIn(string component, string useClass, string publication)
    {
        var row = RowOf("british-2014", "use-" + component.Replace(' ', '-'));
        SecondSource.IsAnother(row.Provenance, publication);
        Assert.Equal(useClass, Assert.IsType<UseClassDemand>(row.Demand).Label);
    }

    private static Row RowOf(string rulebook, string key) =>
        Library.Rulebooks.Named(rulebook).Rows.Single(row => row.Key == key);
}
