using Alburnum.Requirements;
using Alburnum.Timber;
using static Alburnum.Tests.Requirements.Rows;

namespace Alburnum.Tests.Requirements;

public sealed class RouteSearchTests
{
    private static readonly Species Robust = Pine with
    {
        Name = "test robinia",
        BotanicalNames = ["Robinia probata"],
        Type = WoodType.Hardwood,
        Durability = Cell(1, 1),
    };

    private static readonly Rulebook Table = Book(
        DepthRow("rain", Depth(3), [Use("3.1", "3.2")]),
        DepthRow("ground-15", Depth(6), [Use("4"), Life(15)]),
        DepthRow("ground-30", Depth(12), [Use("4"), Life(30)])
    );

    private static readonly Enquiry Post = new()
    {
        Section = new RectangularSection(75, 75),
        Species = Spruce,
        UseClasses = [UseClass.Four],
        Life = new DesiredServiceLife(30),
        IsIncised = false,
    };

    private static readonly RouteSearch Search = SearchIn(Table);

    private static CommonChoices Nothing => new([], [], []);

    private static RouteSearch SearchIn(Rulebook rulebook, CommonChoices? common = null, params Species[] timbers) =>
        new(
            rulebook,
            new SpeciesCatalogue(timbers.Length > 0 ? timbers : [Pine, Spruce, Robust], []),
            new NaturalDurability(
                [
                    .. Enum.GetValues<UseClass>()
                        .Select(each => new DurabilityRow(
                            [each],
                            [
                                DurabilityVerdict.Enough,
                                DurabilityVerdict.NormallyEnough,
                                DurabilityVerdict.NormallyTreat,
                                DurabilityVerdict.Treat,
                                DurabilityVerdict.Treat,
                            ],
                            Published
                        )),
                ],
                [new(1, 25, null, Published), new(2, 15, 25, Published)]
            ),
            new UsualReach([
                new(1, false, 25, Published),
                new(1, true, 25, Published),
                new(3, false, 1, Published),
                new(3, true, 6, Published),
            ]),
            common ?? Nothing
        );

    [Fact]
    public void Spruce_in_the_ground_for_30_years_gets_every_kind_of_route_likeliest_first()
    {
        var routes = Search.Find(Post);

        Assert.Equal(
            [
                (RouteKind.OtherSpecies, ReachVerdict.Likely),
                (RouteKind.ShorterLife, ReachVerdict.Likely),
                (RouteKind.LowerUseClass, ReachVerdict.Likely),
                (RouteKind.LowerUseClass, ReachVerdict.Likely),
            ],
            routes.Where(route => route.Reach == ReachVerdict.Likely).Select(route => (route.Kind, route.Reach))
        );
        Assert.Equal(routes.OrderBy(route => route.Reach).ThenBy(route => route.Kind), routes);
        Assert.Contains(routes, route => route is { Kind: RouteKind.DurableHeartwood, Reach: ReachVerdict.NotKnown });
        Assert.Contains(routes, route => route is { Kind: RouteKind.Incise, Reach: ReachVerdict.Unlikely });
        Assert.Contains(routes, route => route.Kind == RouteKind.UseRound);
    }

    [Fact]
    public void Within_a_kind_nothing_unlikely_stands_beside_what_is_likely() =>
        Assert.All(
            Search.Find(Post).GroupBy(route => route.Kind),
            kind =>
                Assert.False(
                    kind.Any(route => route.Reach == ReachVerdict.Likely)
                        && kind.Any(route => route.Reach == ReachVerdict.Unlikely)
                )
        );

    [Fact]
    public void What_is_not_known_of_the_heartwood_is_taken_as_exposed()
    {
        var heartwood = Book(
            DepthRow("hidden", Depth(6), [new OneOf(Field.ExposedHeartwood, ["no"])]),
            DepthRow("exposed", Depth(12), [new OneOf(Field.ExposedHeartwood, ["yes"])])
        );
        var routes = SearchIn(heartwood).Find(Post);
        Assert.Equal(
            "12 mm",
            Assert
                .IsType<Required>(routes.First(route => route.Kind == RouteKind.Incise).Answer)
                .Requirement.PenetrationName
        );
    }

    [Fact]
    public void A_kind_of_change_on_which_the_rulebook_is_silent_is_named_once_with_that_answer()
    {
        var sawnOnly = Book(DepthRow("ground", Depth(12), [Use("4"), new OneOf(Field.Form, ["sawn"])]));
        var routes = SearchIn(sawnOnly).Find(Post);
        Assert.IsType<NotCovered>(Assert.Single(routes, route => route.Kind == RouteKind.UseRound).Answer);
        Assert.IsType<NotCovered>(Assert.Single(routes, route => route.Kind == RouteKind.LowerUseClass).Answer);
        var notKnown = routes.Where(route => route.Reach == ReachVerdict.NotKnown).ToList();
        Assert.Equal(notKnown.OrderBy(route => route.Answer is NotCovered), notKnown);
    }

    [Fact]
    public void Where_the_rulebook_is_silent_on_the_enquiry_itself_its_silence_is_no_route()
    {
        var elsewhere = Book(DepthRow("sea", Depth(12), [Use("5")]));
        Assert.All(SearchIn(elsewhere).Find(Post), route => Assert.Equal(RouteKind.DurableHeartwood, route.Kind));
    }

    [Fact]
    public void What_the_code_does_not_permit_is_no_route()
    {
        var forbidden = Book(
            DepthRow("ground", Depth(12), [Use("4")]),
            DepthRow("rain", new Forbidden("No."), [Use("3.2")])
        );
        Assert.DoesNotContain(
            SearchIn(forbidden).Find(Post),
            route => route.Change is LowerClass { UseClass: UseClass.ThreeTwo }
        );
    }

    [Fact]
    public void Every_route_carries_the_answer_to_its_own_enquiry()
    {
        Assert.All(
            Search.Find(Post).Where(route => route.Answer is not null),
            route => Assert.Equal(Table.Answer(route.Enquiry).GetType(), route.Answer!.GetType())
        );
        Assert.All(Search.Find(Post), route => Assert.True(route.Answer is not null || route.Untreated is not null));
    }

    [Fact]
    public void A_shorter_life_that_needs_incising_says_so()
    {
        var shorter = Assert.Single(
            Search.Find(Post),
            route => route is { Kind: RouteKind.ShorterLife, Reach: ReachVerdict.Likely }
        );
        Assert.Equal((new ShortenLife(new DesiredServiceLife(15)), true), (shorter.Change, shorter.IsIncisedToo));
        Assert.Equal("6 mm", Assert.IsType<Required>(shorter.Answer).Requirement.PenetrationName);
    }

    [Fact]
    public void Wet_wood_is_to_be_dried()
    {
        var search = new RouteSearch(
            Book(DepthRow("x", Depth(6), []), Of(Subject.Moisture, "m", new MoistureLimit(28))),
            new SpeciesCatalogue([Pine], []),
            new NaturalDurability(
                [
                    .. Enum.GetValues<UseClass>()
                        .Select(each => new DurabilityRow(
                            [each],
                            [.. Enumerable.Repeat(DurabilityVerdict.Treat, 5)],
                            Published
                        )),
                ],
                []
            ),
            new UsualReach([]),
            Nothing
        );
        var routes = search.Find(new Enquiry { MoisturePercent = 40 });
        Assert.Contains(routes, route => route is { Change: DryFirst { MaxPercent: 28 }, IsIncisedToo: false });
        // What stays too wet is not treated by incising it.
        Assert.DoesNotContain(routes, route => route.Change is InciseFaces);
    }

    [Theory]
    [InlineData(2, 15, ReachVerdict.Likely)]
    [InlineData(2, 30, null)]
    [InlineData(1, 15, ReachVerdict.Likely)]
    [InlineData(1, 30, ReachVerdict.NotKnown)]
    public void Heartwood_in_the_ground_is_offered_for_the_years_that_it_lasted(
        int durability,
        int life,
        ReachVerdict? expected
    )
    {
        var search = SearchIn(Table, null, Robust with { Durability = Cell(durability, durability) });
        var routes = search.Find(Post with { Life = new DesiredServiceLife(life) });
        Assert.Equal(expected, routes.FirstOrDefault(route => route.Kind == RouteKind.DurableHeartwood)?.Reach);
    }

    [Fact]
    public void Trials_in_the_ground_do_not_speak_against_heartwood_that_hangs_clear_of_it()
    {
        var search = SearchIn(Table, null, Robust with { Durability = Cell(2, 2) });
        var joist = Post with
        {
            Life = new DesiredServiceLife(30),
            Exposure = new() { TouchesGroundOrFreshWater = false },
        };

        var heartwood = Assert.Single(search.Find(joist), route => route.Kind == RouteKind.DurableHeartwood);
        Assert.Equal((ReachVerdict.NotKnown, null), (heartwood.Reach, heartwood.Trial));
    }

    [Fact]
    public void In_salt_water_only_heartwood_that_is_used_there_is_offered_and_nobody_knows_whether_it_lasts()
    {
        var pile = Post with { Component = Stake, UseClasses = [UseClass.Five] };
        var sea = Book(DepthRow("sea", Depth(12), [Use("5")]));
        Assert.DoesNotContain(SearchIn(sea).Find(pile), route => route.Kind == RouteKind.DurableHeartwood);

        var used = Assert.Single(
            SearchIn(sea, Sells(isTreated: false, Robust)).Find(pile),
            route => route.Kind == RouteKind.DurableHeartwood
        );
        Assert.Equal(ReachVerdict.NotKnown, used.Reach);
        Assert.Null(used.Untreated!.Heartwood);
    }

    [Fact]
    public void What_is_sold_for_the_component_keeps_out_what_is_not()
    {
        var other = Pine with { Name = "nearer pine", BotanicalNames = ["Pinus propior"] };
        var post = Post with { Component = Stake };
        var all = SearchIn(Table, null, other, Pine).Find(post);
        var sold = SearchIn(Table, Sells(isTreated: true, Pine), other, Pine).Find(post);

        Assert.Equal([other, Pine], Others(all));
        Assert.Equal([Pine], Others(sold));
        Assert.All(
            sold.Where(route => route.Kind == RouteKind.OtherSpecies),
            route => Assert.NotNull(route.CommonlySold)
        );

        static IEnumerable<Species> Others(IEnumerable<Route> routes) =>
            routes.Select(route => route.Change).OfType<TakeSpecies>().Select(change => change.Species).Distinct();
    }

    [Fact]
    public void Of_equally_likely_routes_what_is_sold_for_the_component_comes_first()
    {
        var post = Post with { Component = Stake, Life = new DesiredServiceLife(15) };
        Assert.Equal(RouteKind.Incise, SearchIn(Table).Find(post)[0].Kind);
        Assert.Equal(RouteKind.OtherSpecies, SearchIn(Table, Sells(isTreated: true, Pine)).Find(post)[0].Kind);
        Assert.Equal(RouteKind.DurableHeartwood, SearchIn(Table, Sells(isTreated: false, Robust)).Find(post)[0].Kind);
    }

    [Fact]
    public void What_is_sold_elsewhere_or_only_in_smaller_sizes_does_not_count()
    {
        var post = Post with { Component = Stake };
        var row = Sells(isTreated: true, Pine).Timbers[0];
        Assert.Single(Listed(row));
        Assert.Single(Listed(row with { Where = ["own"], ThicknessMaxMm = 75 }));
        Assert.Empty(Listed(row with { Where = ["elsewhere"] }));
        Assert.Empty(Listed(row with { ThicknessMaxMm = 50 }));
        Assert.Empty(Listed(row with { Component = "beam" }));

        IReadOnlyList<CommonTimber> Listed(CommonTimber each) =>
            new CommonChoices([each], [], []).For(post, Table.Name, isTreated: true);
    }

    [Fact]
    public void A_design_that_is_not_open_to_the_component_is_no_route()
    {
        var common = new CommonChoices([], [new(UseClass.ThreeTwo, [Stake.Name])], []);
        var routes = SearchIn(Table, common).Find(Post with { Component = Stake });
        Assert.Equal(
            [UseClass.ThreeTwo],
            routes.Select(route => route.Change).OfType<LowerClass>().Select(change => change.UseClass).Distinct()
        );
        Assert.DoesNotContain(
            SearchIn(Table).Find(Post with { Component = Stake }),
            route => route.Kind == RouteKind.LowerUseClass
        );
    }

    [Fact]
    public void Out_of_the_ground_no_route_leads_to_where_no_water_stays_but_one_that_leaves_the_ground()
    {
        var drained = new CommonDesign(UseClass.ThreeOne, [Stake.Name]);
        var table = Book(
            DepthRow("ground", Depth(12), [Use("4")]),
            DepthRow("rain", Depth(3), [Use("3.2")]),
            DepthRow("drained", new PenetrationDemand("any", new NoDepth(), null, null), [Use("3.1")])
        );
        IEnumerable<LowerClass> Lower(params IReadOnlyList<CommonDesign> designs) =>
            SearchIn(table, new CommonChoices([], designs, []))
                .Find(Post with { Component = Stake })
                .Select(route => route.Change)
                .OfType<LowerClass>();

        Assert.Empty(Lower(drained));
        Assert.Contains(
            new LowerClass(UseClass.ThreeOne, From: UseClass.Four),
            Lower(drained, new CommonDesign(UseClass.ThreeTwo, [Stake.Name]))
        );
    }

    [Fact]
    public void A_shorter_life_or_a_lower_class_that_asks_the_same_depth_is_no_route()
    {
        var same = Book(
            DepthRow("rain", Depth(12), [Use("3.1", "3.2")]),
            DepthRow("ground-15", Depth(12), [Use("4"), Life(15)]),
            DepthRow("ground-30", Depth(12), [Use("4"), Life(30)])
        );
        Assert.DoesNotContain(
            SearchIn(same).Find(Post),
            route => route.Kind is RouteKind.ShorterLife or RouteKind.LowerUseClass
        );
    }

    [Fact]
    public void A_lower_class_says_nothing_of_the_coating_that_the_old_one_spoke_of() =>
        Assert.All(
            Search.Find(Post with { IsCoatedByClass = true }).Where(route => route.Kind == RouteKind.LowerUseClass),
            route => Assert.Null(route.Enquiry.IsCoatedByClass)
        );

    [Fact]
    public void Round_timber_is_as_strong_in_bending_as_the_sawn_piece_that_it_takes_the_place_of()
    {
        var sawn = new RectangularSection(100, 150);
        var round = Assert.IsType<RoundSection>(
            Search.Find(Post with { Section = sawn }).First(route => route.Kind == RouteKind.UseRound).Enquiry.Section
        );
        var modulus = Math.PI * Math.Pow(round.DiameterMm, 3) / 32;
        Assert.InRange(modulus, 100 * 150 * 150 / 6, 1.15 * 100 * 150 * 150 / 6);
    }

    [Fact]
    public void Round_timber_is_offered_only_for_what_is_made_of_it()
    {
        var post = Post with { Component = Stake };
        Assert.DoesNotContain(SearchIn(Table).Find(post), route => route.Kind == RouteKind.UseRound);
        Assert.Contains(
            SearchIn(Table, new CommonChoices([], [], [Stake.Name])).Find(post),
            route => route.Kind == RouteKind.UseRound
        );
    }

    [Fact]
    public void What_is_sold_treated_only_is_not_offered_as_heartwood() =>
        Assert.DoesNotContain(
            SearchIn(Table, Sells(isTreated: true, Pine)).Find(Post with { Component = Stake }),
            route => route.Kind == RouteKind.DurableHeartwood
        );

    [Fact]
    public void Where_nothing_is_known_of_the_component_what_is_sold_there_at_all_is_offered()
    {
        var other = Pine with { Name = "nearer pine", BotanicalNames = ["Pinus propior"] };
        var country = Table.Name.Split('-')[0];
        var elsewhere = Sells(isTreated: true, Pine).Timbers[0] with { Component = "beam", Where = [country] };
        var routes = SearchIn(Table, new([elsewhere], [], []), other, Pine).Find(Post with { Component = Stake });
        Assert.All(
            routes.Select(route => route.Change).OfType<TakeSpecies>(),
            change => Assert.Equal(Pine, change.Species)
        );
        Assert.Contains(routes, route => route is { Kind: RouteKind.OtherSpecies, CommonlySold: null });
    }

    [Fact]
    public void Round_timber_is_offered_as_heartwood_only_where_it_is_sold_so()
    {
        var round = Post with { Section = new RoundSection(120), Component = Stake };
        Assert.DoesNotContain(SearchIn(Table).Find(round), route => route.Kind == RouteKind.DurableHeartwood);
        Assert.Contains(
            SearchIn(Table, Sells(isTreated: false, Robust)).Find(round),
            route => route.Kind == RouteKind.DurableHeartwood
        );
    }

    [Theory]
    [InlineData(15, ReachVerdict.Likely)]
    [InlineData(25, ReachVerdict.Likely)]
    [InlineData(30, ReachVerdict.Likely)]
    [InlineData(60, ReachVerdict.NotKnown)]
    public void Above_the_ground_durable_heartwood_is_likely_for_the_usual_life_and_for_what_it_lasts_in_the_ground(
        int life,
        ReachVerdict expected
    )
    {
        var usual = Book(
            DepthRow("rain", Depth(12), [Use("3.2")]),
            Of(Subject.Life, "usual", new LifeDemand(new DesiredServiceLife(30)))
        );
        var routes = SearchIn(usual)
            .Find(Post with { UseClasses = [UseClass.ThreeTwo], Life = new DesiredServiceLife(life) });
        Assert.Equal(expected, Assert.Single(routes, route => route.Kind == RouteKind.DurableHeartwood).Reach);
    }

    [Fact]
    public void Heartwood_that_is_sold_is_not_known_where_only_its_best_lasts_and_told_of_where_none_does()
    {
        var varied = Robust with { Name = "test oak", BotanicalNames = ["Quercus probata"], Durability = Cell(2, 4) };
        var poor = varied with { Durability = Cell(4, 4) };
        Assert.Equal(ReachVerdict.NotKnown, Reach(varied, isSold: true));
        Assert.Equal(ReachVerdict.Unlikely, Reach(poor, isSold: true));
        Assert.Null(Reach(varied, isSold: false));
        Assert.Null(Reach(poor, isSold: false));

        static ReachVerdict? Reach(Species wood, bool isSold) =>
            SearchIn(Table, isSold ? Sells(isTreated: false, wood) : null, wood)
                .Find(Post with { Component = Stake, Life = new DesiredServiceLife(15) })
                .FirstOrDefault(route => route.Kind == RouteKind.DurableHeartwood)
                ?.Reach;
    }

    private static Component Stake { get; } = new("stake");

    private static CommonChoices Sells(bool isTreated, params IReadOnlyList<Species> timbers) =>
        new([new(Stake.Name, [], isTreated, [.. timbers.Select(each => each.Name)], null, Published)], [], []);
}
