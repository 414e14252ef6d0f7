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

    private static readonly RouteSearch Search = new(
        Table,
        new SpeciesCatalogue([Pine, Spruce, Robust]),
        new NaturalDurability([
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
        ]),
        new UsualReach([
            new(1, false, 25, Published),
            new(1, true, 25, Published),
            new(3, false, 1, Published),
            new(3, true, 6, Published),
        ])
    );

    [Fact]
    public void Spruce_in_the_ground_for_30_years_gets_every_kind_of_route_likeliest_first()
    {
        var routes = Search.Find(Post);

        Assert.Equal(
            [
                (RouteKind.OtherSpecies, ReachVerdict.Likely),
                (RouteKind.DurableHeartwood, ReachVerdict.Likely),
                (RouteKind.ShorterLife, ReachVerdict.Likely),
                (RouteKind.LowerUseClass, ReachVerdict.Likely),
                (RouteKind.LowerUseClass, ReachVerdict.Likely),
            ],
            routes.Where(route => route.Reach == ReachVerdict.Likely).Select(route => (route.Kind, route.Reach))
        );
        Assert.Equal(routes.OrderBy(route => route.Reach).ThenBy(route => route.Kind), routes);
        Assert.Contains(routes, route => route is { Kind: RouteKind.Incise, Reach: ReachVerdict.Unlikely });
        Assert.Contains(routes, route => route.Kind == RouteKind.UseRound);
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
        Assert.Equal("a service life of 15 years and incise the faces", shorter.InWords);
        Assert.Equal("6 mm", shorter.Answer!.Requirement.PenetrationName);
    }

    [Fact]
    public void Wet_wood_is_to_be_dried()
    {
        var search = new RouteSearch(
            Book(DepthRow("x", Depth(6), []), Of(Subject.Moisture, "m", new MoistureLimit(28))),
            new SpeciesCatalogue([Pine]),
            new NaturalDurability([
                .. Enum.GetValues<UseClass>()
                    .Select(each => new DurabilityRow(
                        [each],
                        [.. Enumerable.Repeat(DurabilityVerdict.Treat, 5)],
                        Published
                    )),
            ]),
            new UsualReach([])
        );
        Assert.Contains(
            search.Find(new Enquiry { MoisturePercent = 40 }),
            route => route is { Kind: RouteKind.Dry, InWords: "dry to 28 % or less" }
        );
    }
}
