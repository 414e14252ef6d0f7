using Alburnum.Acceptance;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Tests.Cases;

public sealed class AssayedZonesTests
{
    private static readonly Provenance Invented = new(Standing.CommonPractice, "common practice", "", "", "");

    private static readonly AnalyticalZone Outer = new(6, "outer 6 mm");
    private static readonly AnalyticalZone Sapwood = new(null, "all the sapwood");
    private static readonly IReadOnlyList<Condition> OfClass = [new OneOf(Field.StatedClass, ["H"])];

    [Fact]
    public void An_assay_of_a_zone_that_nobody_states_settles_the_shallowest_where_it_is_enough()
    {
        var judged = Judged(Outer, Sapwood, Assay("S1", 9.6));

        Assert.Equal([Verdict.Conforms, Verdict.Undecided], Each(judged));
        var missing = new ZoneNotAssayed("all the sapwood", 8, ZoneGap.NotStated);
        Assert.Contains(missing, judged.Findings.NotJudged);
        Assert.Equal([missing], judged.Batch!.Retention!.Reasons.OfType<ZoneNotAssayed>());
        Assert.Equal((Verdict.Undecided, Verdict.Undecided), (judged.Batch.Retention.Verdict, judged.Overall.Verdict));
        // As far as it was judged.
        Assert.InRange(judged.Overall.Probability!.Value.Low, 0.95, 1);
        Assert.Equal(ZonesAskedFor.Several, Assert.Single(judged.Overall.Reasons.OfType<RetentionsJudged>()).Zones);
        Assert.Single(judged.Measured.Remarks.OfType<ZoneLeftOpen>());
    }

    [Fact]
    public void An_assay_of_a_zone_that_nobody_states_settles_the_deepest_where_it_is_too_low()
    {
        var judged = Judged(Outer, Sapwood, Assay("S1", 6));

        Assert.Equal([Verdict.Undecided, Verdict.DoesNotConform], Each(judged));
        Assert.Contains(new ZoneNotAssayed(Outer.Name, 8, ZoneGap.NotStated), judged.Findings.NotJudged);
        Assert.Equal(Verdict.DoesNotConform, judged.Overall.Verdict);
    }

    [Fact]
    public void Where_some_assays_state_the_zone_the_verdict_must_hold_with_and_without_the_others()
    {
        Assay outer = Assay("S1", 9.6) with { Zone = new(6) },
            deep = Assay("S2", 9.2) with { Zone = new(DepthMm: null) };

        Assert.Equal([Verdict.Conforms, Verdict.Conforms], Each(Judged(Outer, Sapwood, outer, deep, Assay("S3", 9.4))));
        var turned = Judged(Outer, Sapwood, outer, deep, Assay("S3", 1));
        Assert.Equal([Verdict.Undecided, Verdict.Undecided], Each(turned));
        Assert.Contains(new ZoneNotAssayed(Outer.Name, 8, ZoneGap.SomeNotStated), turned.Findings.NotJudged);
    }

    [Fact]
    public void An_assay_of_a_zone_that_is_named_settles_nothing_where_the_zone_of_the_demand_is_not_known()
    {
        Assay outer = Assay("S1", 9.6) with { Zone = new(6) };
        var judged = Judged(null, null, outer, Assay("S2", 9.2) with { Zone = new(12) });

        var open = new ZoneNotAssayed(null, 8, ZoneGap.ZoneNotKnown);
        Assert.Equal([open], judged.Batch!.Retention!.Reasons);
        Assert.Equal(Verdict.Undecided, judged.Overall.Verdict);
        Assert.Equal([open], Judged(null, null, outer).Findings.NotJudged.OfType<ZoneNotAssayed>());
        // Of neither is a zone known: they are taken to be of the same, and that is said.
        var taken = Judged(null, null, Assay("S1", 9.6));
        Assert.Equal(Verdict.Conforms, taken.Overall.Verdict);
        Assert.Contains(new ZoneTakenForGranted(Zone: null), taken.Findings.NotJudged);
    }

    [Fact]
    public void Where_the_answer_is_open_an_assay_counts_only_where_every_answer_takes_its_zone()
    {
        var outer = Assay("S1", 9.6) with { Zone = new(6) };
        var same = Judged(Open(Outer, Outer with { Name = "6 mm of sapwood" }), [], [outer]);
        var others = Judged(Open(Outer, Sapwood), [], [outer]);

        Assert.Equal(Verdict.Conforms, same.Findings.Rule.Retention!.Verdict);
        Assert.Equal([Outer], same.Required.Retentions.Select(demand => demand.Zone));
        Assert.Equal((Outer, Standing.CommonPractice), (same.Required.CodesZone, same.Required.CodesZoneStanding));
        Assert.Null(others.Required.CodesZoneStanding);
        Assert.Equal([Verdict.Conforms], Each(same));
        Assert.Equal(
            [new ZoneNotAssayed(null, 8, ZoneGap.ZoneNotKnown)],
            others.Findings.NotJudged.OfType<ZoneNotAssayed>()
        );
        Assert.Equal([Verdict.Undecided], Each(others));
    }

    [Fact]
    public void Each_zone_that_was_assayed_is_judged_by_its_own_assays()
    {
        var outer = Assay("S1", 9.6) with { Zone = new(6) };

        Assert.Equal(
            Verdict.Conforms,
            Judged(Outer, Sapwood, outer, Assay("S1", 9) with { Zone = new(DepthMm: null) }).Overall.Verdict
        );
        Assert.Equal(
            Verdict.DoesNotConform,
            Judged(Outer, Sapwood, outer, Assay("S1", 6) with { Zone = new(DepthMm: null) }).Overall.Verdict
        );
        Assert.Equal([Verdict.Conforms, Verdict.Undecided], Each(Judged(Outer, Sapwood, outer)));
        Assert.Equal(
            [new ZoneNotAssayed(Outer.Name, 8, ZoneGap.OthersCut)],
            Judged(Outer, Sapwood, Assay("S1", 9.6) with { Zone = new(DepthMm: null) })
                .Findings.NotJudged.OfType<ZoneNotAssayed>()
        );
    }

    [Fact]
    public void Of_one_zone_by_two_names_the_greatest_retention_decides_as_ever()
    {
        var judged = Judged(Outer, Outer with { Name = "6 mm of sapwood" }, Assay("S1", 9.6));

        Assert.Equal([Verdict.Conforms, Verdict.Conforms], Each(judged));
        Assert.Equal(Verdict.Conforms, judged.Batch!.Retention!.Verdict);
        Assert.Single(judged.Batch.Retention.Reasons.OfType<RetentionMean>());
    }

    [Theory]
    [InlineData(6, 9.6, Verdict.Conforms)]
    [InlineData(3, 5, Verdict.DoesNotConform)]
    [InlineData(3, 9.6, Verdict.Undecided)]
    [InlineData(null, 9.6, Verdict.Undecided)]
    public void A_weaker_class_within_the_code_s_zone_is_judged_by_itself_only_where_its_zone_may_have_been_cut(
        int? cutMm,
        double kgPerM3,
        Verdict expected
    )
    {
        var shallow = new AnalyticalZone(3, "outer 3 mm");
        var judged = Judged(
            Book("code", Depth("code", [], Outer, new LeastDepth(WoodZone.Sapwood, 6)), Amount([])),
            [Book("classes", Depth("classes", OfClass, shallow, new LeastDepth(WoodZone.Sapwood, 3)), Amount(OfClass))],
            [Assay("S1", kgPerM3) with { Zone = cutMm is { } mm ? new(mm) : null }]
        );

        Assert.Equal(expected, judged.Batch!.Retention!.Verdict);
    }

    [Fact]
    public void An_assay_of_another_zone_than_the_one_that_is_asked_for_is_not_held_against_it()
    {
        var judged = Judged(Outer, null, Assay("S1", 9.6) with { Zone = new(20) });

        Assert.Equal(Verdict.Undecided, judged.Overall.Verdict);
        Assert.Equal([new ZoneNotAssayed(Outer.Name, 8, ZoneGap.OthersCut)], judged.Batch!.Retention!.Reasons);
        Assert.Equal(Verdict.Conforms, Judged(Outer, null, Assay("S1", 9.6) with { Zone = new(6.2) }).Overall.Verdict);
    }

    [Fact]
    public void An_assay_that_does_not_say_its_zone_is_taken_to_be_of_the_only_one_and_that_is_said()
    {
        var taken = new ZoneTakenForGranted(Outer.Name);

        Assert.Contains(taken, Judged(Outer, null, Assay("S1", 9.6)).Findings.NotJudged);
        Assert.DoesNotContain(taken, Judged(Outer, null, Assay("S1", 9.6) with { Zone = new(6) }).Findings.NotJudged);
        Assert.Empty(Judged(Outer, Sapwood, Assay("S1", 9.6)).Findings.NotJudged.OfType<ZoneTakenForGranted>());
    }

    [Fact]
    public void A_figure_of_the_contract_s_own_is_asked_for_of_the_zone_of_its_class()
    {
        var judged = Judged(Outer, Sapwood, ownKgPerM3: 7, Assay("S1", 9.6));

        Assert.Equal([Outer, Sapwood, Sapwood], judged.Required.Retentions.Select(demand => demand.Zone));
        Assert.Equal([Verdict.Conforms, Verdict.Undecided, Verdict.Undecided], Each(judged));
    }

    [Theory]
    [InlineData(false, Verdict.Conforms)]
    [InlineData(true, Verdict.Undecided)]
    [InlineData(null, Verdict.Undecided)]
    public void A_zone_with_heartwood_is_all_the_sapwood_where_none_lies_at_a_face(bool? isExposed, Verdict expected)
    {
        var zone = new AnalyticalZone(null, "all the sapwood and 6 mm into heartwood") { HeartwoodMm = 6 };
        var code = Book("code", Depth("code", [], zone, new LeastDepth(WoodZone.Sapwood, 6)), Amount([]));
        var judged = Judged(
            code,
            [],
            [Assay("S1", 9.6) with { Zone = new(DepthMm: null) }],
            isHeartwoodExposed: isExposed
        );

        Assert.Equal(expected, judged.Batch!.Retention!.Verdict);
    }

    // No depth that meets the one meets the other.
    private static Rulebook Open(AnalyticalZone withHeartwood, AnalyticalZone without) =>
        Book(
            "code",
            Depth(
                "with",
                [new OneOf(Field.ExposedHeartwood, ["yes"])],
                withHeartwood,
                new LeastDepth(WoodZone.ExposedHeartwood, 6)
            ),
            Depth("without", [new OneOf(Field.ExposedHeartwood, ["no"])], without, new LeastDepth(WoodZone.Sapwood, 6)),
            Amount([])
        );

    private static IEnumerable<Verdict> Each(JudgedCase judged) =>
        Assert.Single(judged.Overall.Reasons.OfType<RetentionsJudged>()).Each.Select(each => each.Judgement.Verdict);

    private static JudgedCase Judged(
        AnalyticalZone? ofCode,
        AnalyticalZone? ofClass,
        params IReadOnlyList<Assay> assays
    ) => Judged(ofCode, ofClass, ownKgPerM3: null, assays);

    private static JudgedCase Judged(
        AnalyticalZone? ofCode,
        AnalyticalZone? ofClass,
        double? ownKgPerM3,
        params IReadOnlyList<Assay> assays
    ) =>
        Judged(
            Book("code", Depth("code", [], ofCode, new LeastDepth(WoodZone.Sapwood, 6)), Amount([])),
            ofClass is null
                ? []
                :
                [
                    Book(
                        "classes",
                        Depth("classes", OfClass, ofClass, new LeastDepth(WoodZone.Sapwood, 6)),
                        Amount(OfClass)
                    ),
                ],
            assays,
            ownKgPerM3
        );

    private static JudgedCase Judged(
        Rulebook code,
        IReadOnlyList<Rulebook> classes,
        IReadOnlyList<Assay> assays,
        double? ownKgPerM3 = null,
        bool? isHeartwoodExposed = null
    )
    {
        var section = new RectangularSection(100, 100);
        HandReading[] readings = [.. Enumerable.Range(1, 4).Select(face => new HandReading(face, 50, 9, 0.3, 30))];
        return new EnquiredCase(
            "T-1",
            "Title",
            "Client",
            new DateOnly(2026, 5, 12),
            new Enquiry
            {
                Section = section,
                UseClasses = [UseClass.Four],
                StatedClass = classes.Count == 0 ? null : "H",
                HasExposedHeartwood = isHeartwoodExposed,
            },
            50,
            new ShareMustPass(0.75),
            assays,
            ownKgPerM3,
            null
        ).Under(code, classes).Predicted(null, null).Measured([new PieceEvidence("P01", EvidenceKind.Ruler, HandReadings.Profile(section, readings))]).Judged(DecisionRule.Usual);
    }

    private static Rulebook Book(string name, params IReadOnlyList<Row> rows) =>
        new(rows)
        {
            Name = name,
            Title = $"Invented {name}",
            Document = "Invented",
            Edition = "1",
        };

    private static Row Depth(string name, IReadOnlyList<Condition> when, AnalyticalZone? zone, DepthRule depth) =>
        new(
            $"depth-{name}",
            Subject.Penetration,
            when,
            new PenetrationDemand(name, depth, zone is null ? null : new(zone, Invented), Invented),
            [],
            Invented
        );

    private static Row Amount(IReadOnlyList<Condition> when) =>
        new(
            "amount",
            Subject.Retention,
            when,
            new FixedRetention(new PreservativeAmount(8, AmountUnit.KgPerM3)),
            [],
            Invented
        );

    private static MeasuredAssay Assay(string sample, double kgPerM3) => new(new Estimate(kgPerM3, 0.2), sample);
}
