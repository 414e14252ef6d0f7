using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Workflows.Tests.Requirements;

public sealed class FindRequirementTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    private static readonly Enquiry Post = new()
    {
        Component = Component("fence post"),
        Section = new RectangularSection(75, 75),
        Species = Facts.Species.Get("Sitka spruce"),
        Life = new DesiredServiceLife(30),
        HasExposedHeartwood = true,
        IsIncised = false,
    };

    private static Component Component(string name) => Facts.Components.All.Single(each => each.Name == name);

    private static FoundRequirement Of(Enquiry enquiry, string rulebook = "british-2014") =>
        FindRequirement.Run(enquiry, Facts.Rulebooks.Named(rulebook), Facts, progress: null, CancellationToken.None);

    [Theory]
    [InlineData("british-2024")]
    [InlineData("irish-is-436")]
    [InlineData("european-2007")]
    public void Where_it_is_not_known_what_is_required_no_route_is_offered(string rulebook)
    {
        var found = Of(Post, rulebook);
        Assert.IsType<NotCovered>(found.Answer);
        Assert.Empty(found.Routes);
    }

    [Fact]
    public void A_no_is_answered_by_routes() =>
        Assert.NotEmpty(Of(Post with { UseClasses = [UseClass.Four] }, "spanish-se-m").Routes);

    [Fact]
    public void What_is_reached_is_worked_out_for_the_class_that_decides()
    {
        var rafter = new Enquiry
        {
            Component = Component("dry roof timber"),
            Section = new RectangularSection(50, 150),
            Species = Facts.Species.Get("Norway spruce"),
            Exposure = new() { Insects = [] },
        };
        Assert.Null(Of(rafter).Expected);
        Assert.NotNull(Of(rafter with { StatedClass = "NP3" }).Expected);

        var post = Post with { Life = new(15), HasExposedHeartwood = false, StatedClass = "NP5" };
        var found = Of(post);
        Assert.Equal(StricterDemand.Contract, Assert.IsType<ContractDemand>(found.Contract).Stricter);
        // Incising reaches the code's 6 mm, and not the whole sapwood that the contract asks for.
        Assert.Contains(Of(post with { StatedClass = null }).Ways, route => route.Route.Kind == RouteKind.Incise);
        Assert.DoesNotContain(found.Ways, route => route.Route.Kind == RouteKind.Incise);
    }

    [Theory]
    [InlineData("nordic-classes", "AB")]
    [InlineData("american-use-categories", "UC3B")]
    [InlineData("australian-hazard-classes", "H3")]
    public void A_fence_post_to_a_class_for_above_ground_is_warned_of_and_holds_up_the_order(
        string rulebook,
        string stated
    )
    {
        var found = Of(
            Post with
            {
                Species = Facts.Species.Get("Scots pine"),
                StatedClass = stated,
                Life = null,
            },
            rulebook
        );

        var odd = Assert.Single(
            found.Warnings.Take(1).OfType<FactsAtOdds>().Select(each => each.Discrepancy).OfType<UseClassesDiffer>()
        );
        Assert.True(odd.IsContractTooWeak);
        Assert.Equal([UseClass.Four], odd.Other.Classes);
        Assert.True(found.IsHeldUpByContract);
        Assert.DoesNotContain(found.Remarks, remark => remark is FactsAtOdds { Discrepancy: UseClassesDiffer });
    }

    [Fact]
    public void A_class_for_a_harsher_use_than_the_one_stated_is_warned_of_and_may_be_ordered()
    {
        var found = Of(
            new()
            {
                Component = new("rafter"),
                Species = Facts.Species.Get("Scots pine"),
                UseClasses = [UseClass.Two],
                StatedClass = "A",
            },
            "nordic-classes"
        );

        Assert.Single(found.Warnings.OfType<FactsAtOdds>());
        Assert.False(found.IsHeldUpByContract);
    }

    [Theory]
    [InlineData("deck post")]
    [InlineData("retaining wall")]
    public void What_the_code_is_silent_on_stands_behind_every_way_that_it_answers(string component)
    {
        var ways = Of(
            Post with
            {
                Component = Component(component),
                Section = new RectangularSection(100, 200),
                Species = Facts.Species.Get("Norway spruce"),
            }
        )
            .Ways.Select(way => way.Route.Answer is NotCovered)
            .ToList();

        Assert.Equal([false, true], ways.Distinct().Order());
        Assert.Equal(ways.Order(), ways);
    }

    [Fact]
    public void A_post_that_stands_by_being_set_in_the_ground_is_not_lifted_out_of_it() =>
        Assert.DoesNotContain(Of(Post).Routes, found => found.Route.Kind == RouteKind.LowerUseClass);

    [Fact]
    public void A_rulebook_that_answers_by_the_contracts_class_alone_asks_for_it() =>
        Assert.Equal(
            [Field.StatedClass],
            Assert.IsType<NotCovered>(Of(Post with { Life = null }, "european-2007").Answer).Missing
        );

    [Theory]
    [InlineData("UC4", true)]
    [InlineData("HC4", true)]
    [InlineData("UC4A", false)]
    [InlineData("H4", false)]
    public void A_mark_of_EN_335_is_its_use_class_itself(string mark, bool isItself) =>
        Assert.All(Facts.Marks.Find(mark), each => Assert.Equal(isItself, each.IsUseClassItself));

    [Fact]
    public void Where_heartwood_reaches_a_face_its_own_depth_is_predicted()
    {
        var pine = Post with { Species = Facts.Species.Get("Scots pine") };

        var shown = Of(pine);

        Assert.True(shown.Expected!.Quick.PieceShare.Value < 0.5, $"{shown.Expected.Quick.PieceShare.Value}");
    }

    [Fact]
    public void Of_sapwood_and_heartwood_that_must_both_be_reached_the_share_is_that_of_the_harder()
    {
        var incised = Of(Post with { Species = Facts.Species.Get("Norway spruce"), IsIncised = true });
        var shorter = Of(Post with { Species = Facts.Species.Get("Norway spruce"), IsIncised = true, Life = new(15) });

        // 12 mm of the sapwood are no easier than 6 mm of it.
        Assert.Equal(WoodZone.Sapwood, incised.Expected!.LesserPart);
        Assert.Null(shorter.Expected!.LesserPart);
        Assert.True(incised.Expected.Quick.PieceShare.Value < shorter.Expected.Quick.PieceShare.Value);
    }

    private static readonly Enquiry Pine = Post with
    {
        Species = Facts.Species.Get("Scots pine"),
        Section = new RectangularSection(100, 100),
        Life = new(15),
        HasExposedHeartwood = null,
    };

    [Theory]
    [InlineData("british-2014", "NP6")]
    [InlineData("british-2014", "AS 1604 H4")]
    [InlineData("australian-hazard-classes", "H4")]
    public void Where_heartwood_may_reach_a_face_the_figure_is_that_of_a_piece_where_it_does(
        string rulebook,
        string stated
    )
    {
        var post = Pine with { StatedClass = stated, StatedClassMeans = Facts.Marks.Meant(stated) };
        var open = Of(post, rulebook).Expected!;
        var shown = Of(post with { HasExposedHeartwood = true }, rulebook).Expected!;
        var hidden = Of(post with { HasExposedHeartwood = false }, rulebook).Expected!;

        Assert.Equal(shown.Quick.PieceShare, open.Quick.PieceShare);
        Assert.Equal(WoodZone.ExposedHeartwood, open.LesserPart);
        Assert.Equal(ReachVerdict.Unlikely, open.Usual!.Verdict);
        Assert.Equal(hidden.Quick.PieceShare, open.WithoutHeartwoodAtFace!.Quick.PieceShare);
        Assert.Equal(ReachVerdict.Likely, open.WithoutHeartwoodAtFace.Usual!.Verdict);
        Assert.Null(shown.WithoutHeartwoodAtFace);
        Assert.Null(hidden.LesserPart);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(true)]
    public void Where_untreated_heartwood_is_limited_the_figure_is_of_the_sapwood_alone(bool? hasExposedHeartwood) =>
        Assert.Equal(
            WoodZone.Sapwood,
            Of(
                Pine with
                {
                    Species = Facts.Species.Get("radiata pine"),
                    StatedClass = "NZS 3640 H4",
                    StatedClassMeans = Facts.Marks.Meant("NZS 3640 H4"),
                    HasExposedHeartwood = hasExposedHeartwood,
                }
            ).Expected!.LesserPart
        );

    [Theory]
    [InlineData(35)]
    [InlineData(60)]
    public void Of_timber_too_wet_to_treat_nothing_is_predicted_but_what_it_reaches_when_dried(double moisturePercent)
    {
        var wet = Of(Pine with { MoisturePercent = moisturePercent });

        Assert.Null(wet.Expected);
        var way = Assert.Single(wet.Ways, way => way.Route.Kind == RouteKind.Dry);
        Assert.Equal(Of(Pine).Expected!.Quick.PieceShare, way.Expected!.Quick.PieceShare);
    }

    [Fact]
    public void Where_the_contracts_class_is_out_of_reach_the_codes_own_is_offered()
    {
        var post = Post with { Species = Facts.Species.Get("Norway spruce"), Life = new(15) };

        Assert.Contains(
            Of(post with { StatedClass = "NP5" }).Ways,
            way => way.Route.Change == new TakeCodesClass("NP5") && way.Route.Depth is LeastDepth { DepthMm: 6 }
        );
        Assert.DoesNotContain(Of(post).Routes, route => route.Route.Kind == RouteKind.CodesClass);
    }

    [Theory]
    [InlineData("fence post", "European oak", "A")]
    [InlineData("deck board", "Norway spruce", "AB")]
    [InlineData("deck board", "Scots pine", "HW")]
    public void Timber_outside_a_class_is_not_covered_by_it(string component, string species, string stated)
    {
        var found = Of(
            new()
            {
                Component = Component(component),
                Species = Facts.Species.Get(species),
                Section = new RectangularSection(28, 120),
                StatedClass = stated,
            },
            "nordic-classes"
        );

        Assert.Contains(
            stated,
            Assert.IsType<TimberNotCovered>(Assert.IsType<NotCovered>(found.Answer).Reason).Covers,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("tiling batten", "british-2014")]
    [InlineData("dry roof timber", "spanish-se-m")]
    public void Every_insect_that_is_stated_is_answered_or_said_not_to_be(string component, string rulebook)
    {
        var found = Of(
            new()
            {
                Component = Component(component),
                Species = Facts.Species.Get("Norway spruce"),
                Section = new RectangularSection(25, 50),
                Exposure = new() { Insects = Facts.Insects },
            },
            rulebook
        );

        Assert.Equal(
            ["furniture beetle", "house longhorn beetle", "termites"],
            found.Warnings.OfType<InsectNotAnswered>().Select(remark => remark.Insect.Name).Order()
        );
        Assert.Equal("powder-post beetle", Assert.Single(found.Warnings.OfType<InsectNoThreat>()).Insect.Name);
    }

    [Fact]
    public void An_insect_that_a_row_answers_is_not_said_to_be_unanswered() =>
        Assert.Empty(
            Of(
                new()
                {
                    Component = Component("dry roof timber"),
                    Species = Facts.Species.Get("Norway spruce"),
                    Exposure = new()
                    {
                        Insects = [.. Facts.Insects.Where(each => each.Name == "house longhorn beetle")],
                    },
                }
            )
                .Warnings.OfType<InsectNotAnswered>()
        );

    [Theory]
    [InlineData("borate", typeof(ShareOfZone))]
    [InlineData("copper-azole", typeof(NoDepth))]
    public void Of_boron_in_a_sole_plate_the_full_cross_section_is_asked_and_nothing_else(string key, Type depth)
    {
        var kind = Facts.Preservatives.All.Single(each => each.Key == key);
        var found = Of(
            new()
            {
                Component = Component("sole plate"),
                Species = Facts.Species.Get("Norway spruce"),
                Section = new RectangularSection(38, 89),
                Preservative = key == "borate" ? "boron" : kind.Name,
                PreservativeKind = kind,
            }
        );

        Assert.IsType(depth, Assert.IsType<Required>(found.Answer).Requirement.Penetration);
        Assert.Empty(found.Routes);
    }

    [Fact]
    public void Of_a_sole_plate_without_a_named_preservative_both_depths_are_given()
    {
        var open = Assert.IsType<NotCovered>(
            Of(
                new()
                {
                    Component = Component("sole plate"),
                    Species = Facts.Species.Get("Norway spruce"),
                    Section = new RectangularSection(38, 89),
                }
            ).Answer
        );

        Assert.Equal([Field.Preservative], open.Missing);
        Assert.Equal(
            [("full cross-section", true), ("NP1", false)],
            open.Possible.Select(each =>
                (Assert.IsType<Required>(each.Answer).Requirement.PenetrationName, each.Where[0].IsSo)
            )
        );
    }

    [Fact]
    public void What_usually_lasts_under_a_roof_is_no_life_for_the_ground()
    {
        Enquiry rafter = new() { Component = Component("dry roof timber"), Species = Facts.Species.Get("Scots pine") };

        Assert.Equal(60, Of(rafter).Answer.Trace.Life!.Value.Years);
        Assert.Null(Of(rafter with { UseClasses = [UseClass.Four] }).Answer.Trace.Life);
    }

    [Fact]
    public void Insects_are_asked_after_only_where_the_contract_leaves_it_untreated()
    {
        Enquiry rafter = new() { Component = Component("dry roof timber"), Species = Facts.Species.Get("Scots pine") };

        Assert.NotEmpty(Of(rafter).Insects);
        Assert.Empty(Of(rafter with { StatedClass = "NP3" }).Insects);
    }

    /// <summary>A route of which nothing is known stands below those of which something is, whatever is sold.</summary>
    [Theory]
    [InlineData("spanish-se-m", "fence rail", 3)]
    [InlineData("british-2014", "fence post", 4)]
    public void What_is_not_known_at_all_stands_below_what_is_half_known(string rulebook, string component, int use)
    {
        var routes = Of(
            Post with
            {
                Component = Component(component),
                UseClasses = [use == 4 ? UseClass.Four : UseClass.ThreeTwo],
            },
            rulebook
        ).Ways;

        var known = routes.Select(route => route.IsNotKnownAtAll).ToList();
        Assert.Contains(false, known);
        Assert.Equal(known.Order(), known);
    }

    [Fact]
    public void What_goes_in_with_oil_is_not_predicted_and_this_is_said()
    {
        var tarred = Of(
            Post with
            {
                Preservative = "creosote",
                PreservativeKind = Facts.Preservatives.All.Single(kind => kind.Key == "creosote"),
            }
        );
        Assert.NotNull(Of(Post).Expected);
        Assert.Null(tarred.Expected);
        Assert.Single(tarred.Remarks.OfType<OtherCarrier>());
        Assert.All(tarred.Routes, route => Assert.Null(route.Expected));
        Assert.NotEmpty(tarred.Routes);
    }

    [Fact]
    public void A_search_for_routes_reports_its_share_and_can_be_stopped()
    {
        var post = Post with { UseClasses = [UseClass.Four] };
        var book = Facts.Rulebooks.Named("spanish-se-m");
        var told = new Told();

        var found = FindRequirement.Run(post, book, Facts, told, CancellationToken.None);

        Assert.Equal(found.Routes.Count, told.Shares.Count);
        Assert.Equal(1, told.Shares[^1]);
        Assert.Throws<OperationCanceledException>(() =>
            FindRequirement.Run(post, book, Facts, progress: null, new CancellationToken(canceled: true))
        );
    }

    private sealed class Told : IProgress<WorkDone>
    {
        public List<double> Shares { get; } = [];

        public void Report(WorkDone value) => Shares.Add(value.Share);
    }

    [Fact]
    public void Where_none_is_needed_the_insects_that_nobody_ruled_out_are_named()
    {
        var rafter = new Enquiry
        {
            Component = Component("dry roof timber"),
            Species = Facts.Species.Get("Norway spruce"),
        };
        Assert.Equal(["house longhorn beetle", "furniture beetle", "termites"], Names(rafter));
        Assert.Equal(
            ["furniture beetle", "powder-post beetle", "termites"],
            Names(rafter with { Species = Facts.Species.Get("European oak") })
        );
        Assert.Empty(Names(rafter with { Exposure = new() { Insects = [] } }));

        static IEnumerable<string> Names(Enquiry enquiry)
        {
            var found = Of(enquiry);
            Assert.IsType<NotNeeded>(found.Answer);
            return found.Insects.Select(insect => insect.Name);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_expected_is_what_a_prediction_with_the_usual_schedule_says(bool isIncised)
    {
        var found = Of(Post with { Life = new DesiredServiceLife(15), IsIncised = isIncised });
        var demand = Assert.IsType<Required>(found.Answer).Requirement.Penetration;
        var predicted = Predict.Run(
            new()
            {
                Treating = new()
                {
                    Species = Post.Species!,
                    Section = Post.Section!,
                    Demand = demand,
                    Incising = isIncised ? "usual" : null,
                },
                Pieces = Draws.Pieces,
                Seed = Draws.Seed,
            },
            Facts,
            progress: null,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(predicted.Quick.PieceShare, found.Expected!.Quick.PieceShare);
        Assert.Equal(predicted.Usual!.Verdict, found.Expected.Usual!.Verdict);
    }

    [Fact]
    public void A_batten_that_the_weather_reaches_is_not_left_in_the_code_s_class_for_one_under_a_roof()
    {
        var batten = Post with { Component = Component("tiling batten"), Life = null };
        Answer Under(Exposure exposure) => Of(batten with { Exposure = exposure }).Answer;

        Assert.Equal([UseClass.Two], Under(new()).Trace.UseClasses);
        Assert.Equal([UseClass.Two], Under(new() { IsInSaltWater = false }).Trace.UseClasses);
        Assert.DoesNotContain(UseClass.Two, Under(new() { IsExposedToWeather = true }).Trace.UseClasses);
        Assert.All(
            Under(new() { IsExposedToWeather = true }).Trace.UseClasses,
            each => Assert.True(each > UseClass.Two)
        );
    }

    [Fact]
    public void Where_what_is_usual_and_what_is_predicted_differ_a_route_is_not_called_usually_reached()
    {
        var shorter = Of(Post).Routes.Single(found => found.Route.Kind == RouteKind.ShorterLife);
        Assert.True(shorter.Expected!.DiffersFromUsual);
        Assert.Equal((ReachVerdict.Likely, ReachVerdict.NotKnown), (shorter.Route.Reach, shorter.Reach));
    }

    [Fact]
    public void A_route_that_the_prediction_keeps_from_being_usual_names_what_is_usual()
    {
        var routes = Of(Post).Routes;

        Assert.Contains(routes, route => route.UsualAgainstPrediction == ReachVerdict.Likely);
        Assert.All(
            routes.Where(route => route.UsualAgainstPrediction is not null),
            route => Assert.Equal(route.Expected!.Usual!.Verdict, route.UsualAgainstPrediction)
        );
        Assert.All(
            routes.Where(route => route.Reach == ReachVerdict.Likely),
            route => Assert.Null(route.UsualAgainstPrediction)
        );
    }

    [Theory]
    [InlineData("use class 4")]
    [InlineData("UC4")]
    [InlineData("HC4")]
    public void A_use_class_is_no_stranger_to_a_code_that_goes_by_use_class(string stated)
    {
        var found = Stated(stated);

        Assert.Null(found.Contract);
        var remark = Assert.IsType<UseClassOfCode>(Assert.Single(found.Warnings));
        Assert.Equal((stated, true), (remark.Stated, remark.IsAnswered));
        Assert.False(Assert.IsType<UseClassOfCode>(Assert.Single(Stated("UC3.2").Warnings)).IsAnswered);
    }

    [Fact]
    public void A_foreign_class_with_its_system_before_it_is_compared_with_the_code()
    {
        var demand = Assert.IsType<ContractDemand>(Stated("AS 1604 H4").Contract);

        Assert.Equal("australian-hazard-classes", demand.Answer.Trace.RulebookName);
        Assert.Equal(
            ["AS 1604 H4", "NZS 3640 H4"],
            Assert.IsType<ContractClassOfSeveral>(Stated("H4").Contract).WrittenOut
        );
    }

    private static FoundRequirement Stated(string stated) =>
        Of(
            Post with
            {
                Life = new DesiredServiceLife(15),
                StatedClass = stated,
                StatedClassMeans = Facts.Marks.Meant(stated),
            }
        );

    [Fact]
    public void What_is_predicted_in_few_pieces_is_no_way_and_what_is_predicted_in_half_is_not_called_usual()
    {
        var found = Of(
            Post with
            {
                Species = Facts.Species.Get("Scots pine"),
                Section = new RectangularSection(100, 100),
            }
        );
        Assert.Empty(found.Ways.Intersect(found.Failing));
        Assert.All(found.Ways, way => Assert.NotEqual(ReachVerdict.Unlikely, way.Reach));
        Assert.All(
            found.Ways.Where(way => way.Reach == ReachVerdict.Likely),
            way => Assert.False(way.Expected?.Quick.PieceShare.Value < 0.75)
        );
        Assert.Contains(found.Routes, way => way.Expected?.Quick.PieceShare.Value is > 0.25 and < 0.75);
    }

    [Fact]
    public void Routes_come_the_likeliest_first_with_what_is_sold_for_a_fence_post_at_their_head()
    {
        var routes = Of(Post).Routes;
        Assert.Equal(routes.OrderBy(found => found.Reach), routes);
        Assert.Equal("Scots pine", Assert.IsType<TakeSpecies>(routes[0].Route.Change).Species.Name);
    }

    [Fact]
    public void What_too_little_is_known_of_is_not_predicted()
    {
        var shorter = Post with { Life = new DesiredServiceLife(15) };
        Assert.NotNull(Of(shorter).Expected);
        Assert.Null(Of(shorter with { Section = null, Form = TimberForm.Sawn }).Expected);
        Assert.Null(Of(shorter with { Species = Post.Species! with { Density = null } }).Expected);
    }

    [Theory]
    [InlineData("Norway spruce", false, Standing.Published)]
    [InlineData("Scots pine", true, Standing.WorkedOut)]
    public void Years_of_the_worse_end_of_a_range_are_worked_out(string species, bool isOfWorseEnd, Standing standing)
    {
        var enquiry = new Enquiry { Species = Facts.Species.Get(species), UseClasses = [UseClass.Four] };
        var found = FindRequirement.Run(
            enquiry,
            Facts.Rulebooks.Named("european-2007"),
            Facts,
            progress: null,
            CancellationToken.None
        );

        var lasted = Assert.Single(found.Remarks.OfType<LastedInGround>());
        Assert.Equal(isOfWorseEnd, lasted.IsOfWorseEnd);
        Assert.Equal(standing, lasted.Standing);
    }

    [Fact]
    public void What_is_sold_is_known_of_a_users_copy_as_it_is_of_the_rulebook_it_is_based_on()
    {
        var copy = RulebookFile.Read("basedOn: british-2014\n"u8.ToArray(), "min.yaml", "min", Facts);
        var spruce = Post with { Species = Facts.Species.Get("Norway spruce"), Life = null };

        var own = FindRequirement.Run(spruce, copy, Facts, progress: null, CancellationToken.None).Routes;

        Assert.Equal(
            Of(spruce).Routes.Select(each => (each.Route.Change, each.Route.CommonlySold)),
            own.Select(each => (each.Route.Change, each.Route.CommonlySold))
        );
        Assert.Contains(own, each => each.Route.CommonlySold is not null);
    }
}
