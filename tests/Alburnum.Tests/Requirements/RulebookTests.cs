using Alburnum.Requirements;
using Alburnum.Timber;
using static Alburnum.Tests.Requirements.Rows;

namespace Alburnum.Tests.Requirements;

public sealed class RulebookTests
{
    [Fact]
    public void The_one_row_that_holds_is_the_answer()
    {
        var book = Book(DepthRow("mild", Depth(3), [Use("3.2")]), DepthRow("ground", Depth(12), [Use("4")]));

        var required = Assert.IsType<Required>(book.Answer(new Enquiry { UseClasses = [UseClass.Four] }));

        Assert.Equal(new LeastDepth(WoodZone.Sapwood, 12), required.Requirement.Penetration);
        Assert.Equal(["ground"], required.Trace.Step(Subject.Penetration)!.Matched.Select(row => row.Key));
    }

    [Fact]
    public void A_row_that_fails_on_one_field_is_a_near_miss_and_one_that_fails_on_two_is_not()
    {
        var book = Book(
            DepthRow("one-off", Depth(3), [Use("4"), Life(30)]),
            DepthRow("two-off", Depth(3), [Use("5"), Life(30)])
        );

        var trace = book.Answer(new Enquiry { UseClasses = [UseClass.Four], Life = new DesiredServiceLife(15) }).Trace;

        var miss = Assert.Single(trace.Step(Subject.Penetration)!.NearMisses);
        Assert.Equal(("one-off", Life(30), Known.Number(15)), (miss.Row.Key, miss.Asked, miss.Found));
    }

    // The general row, its exception for one preservative in one component, and a use of which nothing is said.
    private static readonly Rulebook WithBoron = Book(
        DepthRow("general", Depth(3), [Use("2")]),
        DepthRow(
            "boron",
            Depth(40),
            [new OneOf(Field.Component, ["sole plate"]), Use("2", "3.2"), new OneOf(Field.Preservative, ["boron"])],
            "general"
        )
    );

    private static readonly Enquiry Plate = new()
    {
        Component = new("sole plate"),
        UseClasses = [UseClass.Two],
        Life = new(30),
    };

    [Theory]
    [InlineData("boron", 40)]
    [InlineData("copper azole", 3)]
    public void An_exception_for_one_preservative_holds_where_that_one_is_named(string preservative, double depthMm) =>
        Assert.Equal(
            Depth(depthMm).Depth,
            Assert
                .IsType<Required>(WithBoron.Answer(Plate with { Preservative = preservative }))
                .Requirement.Penetration
        );

    [Fact]
    public void Without_a_named_preservative_both_branches_are_given_and_the_least_of_them_is_sure()
    {
        var open = Assert.IsType<NotCovered>(WithBoron.Answer(Plate));

        Assert.Equal([Field.Preservative], open.Missing);
        Assert.Equal(
            [(true, "40 mm"), (false, "3 mm")],
            open.Possible.Select(each =>
                (Assert.Single(each.Where).IsSo, Assert.IsType<Required>(each.Answer).Requirement.PenetrationName)
            )
        );
        Assert.All(open.Possible, each => Assert.Equal(["boron"], each.Where[0].Words));
        Assert.Equal("3 mm", open.Least!.Requirement.PenetrationName);
    }

    [Fact]
    public void A_piece_for_which_the_exception_may_not_hold_otherwise_is_answered_by_the_general_row() =>
        Assert.IsType<Required>(WithBoron.Answer(Plate with { Component = null }));

    [Fact]
    public void A_row_for_a_preservative_that_nobody_named_is_no_near_miss()
    {
        var rail = Plate with { Component = new("fence rail"), UseClasses = [UseClass.ThreeTwo] };

        Assert.Equal([Field.UseClass], Near(rail));
        Assert.Equal([Field.UseClass, Field.Component], Near(rail with { Preservative = "boron" }));

        static IReadOnlyList<Field> Near(Enquiry enquiry) =>
            Assert.IsType<NoRowHolds>(Assert.IsType<NotCovered>(WithBoron.Answer(enquiry)).Reason).NearestFailOn;
    }

    [Fact]
    public void Where_no_row_holds_the_code_must_be_consulted()
    {
        var answer = Book(DepthRow("ground", Depth(12), [Use("4")]))
            .Answer(new Enquiry { UseClasses = [UseClass.Five] });

        var open = Assert.IsType<NotCovered>(answer);
        Assert.Equal([Field.UseClass], Assert.IsType<NoRowHolds>(open.Reason).NearestFailOn);
        Assert.Empty(open.Missing);
    }

    [Fact]
    public void An_unknown_cell_is_said_to_be_unknown_and_never_guessed()
    {
        var answer = Book(DepthRow("x", new UnknownCell("The threshold is not known."), [Use("4")]))
            .Answer(new Enquiry { UseClasses = [UseClass.Four] });

        Assert.Equal(new CellNotRead("The threshold is not known."), Assert.IsType<NotCovered>(answer).Reason);
    }

    [Fact]
    public void Two_rows_that_disagree_are_reported_whichever_comes_first()
    {
        var thin = DepthRow("thin", Depth(3), [Use("4")]);
        var deep = DepthRow("deep", Depth(12), [Use("4", "5")]);

        foreach (var book in new[] { Book(thin, deep), Book(deep, thin) })
        {
            var answer = Assert.IsType<NotCovered>(book.Answer(new Enquiry { UseClasses = [UseClass.Four] }));
            Assert.Equal(book.Rows, Assert.IsType<RowsContradict>(answer.Reason).Rows);
            Assert.IsType<Contradicted>(answer.Trace.Step(Subject.Penetration)!.Finding);
        }
    }

    [Fact]
    public void An_exception_goes_before_the_general_row_it_names()
    {
        var general = DepthRow("general", Depth(3), [Use("4")]);
        var exception = DepthRow("exception", Depth(12), [Use("4"), Life(30)], "general");

        foreach (var book in new[] { Book(general, exception), Book(exception, general) })
        {
            var enquiry = new Enquiry { UseClasses = [UseClass.Four] };
            var long30 = Assert.IsType<Required>(book.Answer(enquiry with { Life = new DesiredServiceLife(30) }));
            var short15 = Assert.IsType<Required>(book.Answer(enquiry with { Life = new DesiredServiceLife(15) }));
            var open = Assert.IsType<NotCovered>(book.Answer(enquiry));

            Assert.Equal("12 mm", long30.Requirement.PenetrationName);
            Assert.Equal(["general"], long30.Trace.Step(Subject.Penetration)!.SetAside.Select(row => row.Key));
            Assert.Equal("3 mm", short15.Requirement.PenetrationName);
            Assert.Equal([Field.Life], open.Missing);
        }
    }

    [Fact]
    public void What_is_not_known_does_not_matter_where_every_row_says_the_same()
    {
        var book = Book(DepthRow("any", Depth(6), [Use("4")]), DepthRow("long", Depth(6), [Use("4"), Life(30)]));
        Assert.IsType<Required>(book.Answer(new Enquiry { UseClasses = [UseClass.Four] }));
    }

    [Fact]
    public void A_treatability_range_that_crosses_a_condition_leaves_the_answer_open()
    {
        var book = Book(
            DepthRow("easy", Depth(6), [new Between(Field.SapwoodTreatability, 1, true, 1, true)]),
            DepthRow(
                "hard",
                new Forbidden("Too hard to treat."),
                [new Between(Field.SapwoodTreatability, 2, true, double.PositiveInfinity, false)]
            )
        );
        var ranging = Pine with { SapwoodTreatability = Cell(1, 2) };

        Assert.IsType<Required>(book.Answer(new Enquiry { Species = Pine }));
        Assert.IsType<NotPermitted>(book.Answer(new Enquiry { Species = Spruce }));
        Assert.Equal(
            [Field.SapwoodTreatability],
            Assert.IsType<NotCovered>(book.Answer(new Enquiry { Species = ranging })).Missing
        );
    }

    [Fact]
    public void A_service_life_that_the_code_does_not_know_is_not_rounded()
    {
        var answer = Book(DepthRow("x", Depth(6), [Use("4")]))
            .Answer(new Enquiry { UseClasses = [UseClass.Four], Life = new DesiredServiceLife(20) });

        var reason = Assert.IsType<LifeNotKnown>(Assert.IsType<NotCovered>(answer).Reason);
        Assert.Equal([15, 30], reason.KnownYears);
        Assert.Equal((20, 30), (reason.AskedYears, reason.NextYears));
    }

    [Fact]
    public void A_usual_life_that_the_code_does_not_know_is_answered_with_the_lives_that_it_knows()
    {
        var invented = new Provenance(Standing.CommonPractice, "common practice", "", "", "");
        ComponentName gate = new("gate", "water", [], new(), new(new(25), invented), "", invented);
        var answer = Book(DepthRow("x", Depth(6), [Use("4"), Life(30)]))
            .Answer(new Enquiry { UseClasses = [UseClass.Four], CalledAs = gate });

        var reason = Assert.IsType<LifeNotKnown>(Assert.IsType<NotCovered>(answer).Reason);
        Assert.Equal((25, 30), (reason.AskedYears, reason.NextYears));
    }

    [Fact]
    public void The_codes_own_use_class_and_life_fill_in_for_a_component()
    {
        var post = new Component("post");
        var isPost = new OneOf(Field.Component, ["post"]);
        var book = Book(
            Of(Subject.UseClass, "use", new UseClassDemand("4", [UseClass.Four], null), isPost),
            Of(Subject.Life, "life", new LifeDemand(new DesiredServiceLife(30)), isPost),
            DepthRow("ground-30", Depth(12), [Use("4"), Life(30)]),
            DepthRow("ground-15", Depth(6), [Use("4"), Life(15)])
        );

        Assert.Equal(
            "12 mm",
            Assert.IsType<Required>(book.Answer(new Enquiry { Component = post })).Requirement.PenetrationName
        );
        var given = Assert.IsType<Required>(
            book.Answer(new Enquiry { Component = post, Life = new DesiredServiceLife(15) })
        );
        Assert.Equal("6 mm", given.Requirement.PenetrationName);
    }

    [Fact]
    public void A_place_in_another_use_class_than_the_codes_is_a_condition_and_a_class_that_is_stated_is_none()
    {
        var book = Book(
            Of(
                Subject.UseClass,
                "use",
                new UseClassDemand("4", [UseClass.Four], null),
                new OneOf(Field.Component, ["post"])
            ),
            DepthRow("rain", Depth(3), [Use("3.2")])
        );
        var post = new Enquiry { Component = new Component("post") };
        var placed = book.Answer(
            post with
            {
                Exposure = new()
                {
                    IsInSaltWater = false,
                    TouchesGroundOrFreshWater = false,
                    IsExposedToWeather = true,
                    LetsWaterStay = true,
                },
            }
        );
        var stated = book.Answer(post with { UseClasses = [UseClass.ThreeTwo] });

        // It is told among what does not go together, once.
        Assert.All(
            [placed, stated],
            answer =>
            {
                Assert.Empty(Assert.IsType<Required>(answer).Requirement.Conditions);
                var odd = Assert.IsType<UseClassesDiffer>(Assert.Single(Discrepancies.Of(answer, [])));
                Assert.Equal("4", Assert.IsType<UseClassByCode>(odd.Against).Label);
            }
        );
    }

    [Fact]
    public void A_row_for_the_class_that_a_contract_names_goes_before_those_for_the_use()
    {
        var book = Book(
            DepthRow("ground", Depth(12), [Use("4")]),
            DepthRow("named", Depth(3), [new OneOf(Field.StatedClass, ["AB"])])
        );
        var ground = new Enquiry { UseClasses = [UseClass.Four] };

        var named = Assert.IsType<Required>(book.Answer(ground with { StatedClass = "AB" }));

        Assert.Equal("ground", Assert.Single(named.Trace.Step(Subject.Penetration)!.SetAside).Key);
        Assert.Equal("12 mm", Assert.IsType<Required>(book.Answer(ground)).Requirement.PenetrationName);
    }

    [Fact]
    public void Retention_follows_the_preservatives_own_critical_value()
    {
        var book = Book(DepthRow("x", Depth(6), []), Of(Subject.Retention, "r", new RetentionFactor(1.25)));

        var known = Assert.IsType<Required>(
            book.Answer(new Enquiry { CriticalValue = new PreservativeAmount(8, AmountUnit.KgPerM3) })
        );
        var surface = Assert.IsType<Required>(
            book.Answer(new Enquiry { CriticalValue = new PreservativeAmount(120, AmountUnit.GramPerM2) })
        );
        var open = Assert.IsType<Required>(book.Answer(new Enquiry()));

        Assert.Equal("10 kg/m³", known.Requirement.RequiredRetention!.Value.Label);
        Assert.Equal("150 g/m²", surface.Requirement.RequiredRetention!.Value.Label);
        Assert.Null(open.Requirement.RequiredRetention);
        Assert.Equal(1.25, open.Requirement.Retention!.Factor);
    }

    [Fact]
    public void A_rulebook_silent_on_retention_says_so_in_the_requirement()
    {
        var required = Assert.IsType<Required>(Book(DepthRow("x", Depth(6), [])).Answer(new Enquiry()));
        Assert.Null(required.Requirement.Retention);
        Assert.IsType<NoRowHolds>(required.Requirement.RetentionOpen);
    }

    [Fact]
    public void Wood_above_the_moisture_limit_is_to_be_dried_first()
    {
        var book = Book(DepthRow("x", Depth(6), []), Of(Subject.Moisture, "m", new MoistureLimit(28)));
        bool IsTooWet(double percent) =>
            Assert
                .IsType<Required>(book.Answer(new Enquiry { MoisturePercent = percent }))
                .Requirement.Conditions.Contains(new TooWet(percent, 28));

        Assert.False(IsTooWet(28));
        Assert.True(IsTooWet(28.5));
    }

    [Fact]
    public void An_answer_is_as_weak_as_its_weakest_row_or_fact()
    {
        var published = Book(DepthRow("x", Depth(6), [Use("4")])).Answer(new Enquiry { UseClasses = [UseClass.Four] });
        var byMemory = Book(DepthRow("x", Depth(6), [new Between(Field.SapwoodTreatability, 1, true, 1, true)]))
            .Answer(new Enquiry { Species = Pine });

        Assert.Equal(Standing.Published, published.Trace.WeakestStanding);
        Assert.Equal(Standing.FromMemory, byMemory.Trace.WeakestStanding);
        Assert.Equal(
            new SapwoodTreatabilityUsed(Pine, Pine.SapwoodTreatability!),
            Assert.Single(byMemory.Trace.FactsUsed)
        );
    }

    [Fact]
    public void Rows_that_share_a_key_or_go_round_in_a_circle_are_not_a_rulebook()
    {
        var a = DepthRow("a", Depth(3), [], "b");
        var b = DepthRow("b", Depth(6), [], "a");
        Assert.Throws<ArgumentException>(() => Book(a, b));
        Assert.Throws<ArgumentException>(() => Book(a with { Overrides = [] }, a with { Overrides = [] }));
        Assert.Throws<ArgumentException>(() => Book(a));
    }

    private static readonly Insect Longhorn = new("longhorn", [], WoodType.Softwood, "sapwood", Published);

    private static readonly Rulebook Indoors = Book(
        DepthRow("dry", new NoTreatment("Dry wood does not decay."), [Use("1")]),
        DepthRow(
            "longhorn",
            new UnknownCell("Not read."),
            [Use("1"), new OneOf(Field.Component, ["rafter"]), new OneOf(Field.Insects, [Longhorn.Name])],
            "dry"
        )
    );

    private static readonly Enquiry Rafter = new()
    {
        Component = new Component("rafter"),
        Species = Spruce,
        UseClasses = [UseClass.One],
    };

    [Fact]
    public void Where_nobody_said_which_insects_live_there_no_treatment_is_needed_and_the_open_row_is_shown()
    {
        var answer = Assert.IsType<NotNeeded>(Indoors.Answer(Rafter));
        Assert.Equal("Dry wood does not decay.", answer.Reason);
        Assert.Equal("longhorn", Assert.Single(answer.Trace.Step(Subject.Penetration)!.Open).Row.Key);
    }

    [Fact]
    public void Where_no_insect_lives_no_treatment_is_needed() =>
        Assert.Empty(
            Assert
                .IsType<NotNeeded>(Indoors.Answer(Rafter with { Exposure = new() { Insects = [] } }))
                .Trace.Step(Subject.Penetration)!
                .Open
        );

    [Fact]
    public void Where_an_insect_lives_that_the_rulebook_speaks_of_its_row_answers() =>
        Assert.IsType<CellNotRead>(
            Assert.IsType<NotCovered>(Indoors.Answer(Rafter with { Exposure = new() { Insects = [Longhorn] } })).Reason
        );

    [Fact]
    public void Where_an_insect_lives_that_the_rulebook_does_not_speak_of_it_is_not_said_that_none_is_needed()
    {
        var termites = new Insect("termites", [], null, "wood", Published);
        var answer = Assert.IsType<NotCovered>(
            Indoors.Answer(Rafter with { Exposure = new() { Insects = [termites] } })
        );
        Assert.Equal([termites], Assert.IsType<InsectsAtWork>(answer.Reason).Insects);
    }

    [Fact]
    public void An_insect_that_spares_the_timber_changes_nothing()
    {
        var oak = Rafter with
        {
            Component = null,
            Species = Spruce with { Type = WoodType.Hardwood },
            Exposure = new() { Insects = [Longhorn with { Name = "other longhorn" }] },
        };
        Assert.IsType<NotNeeded>(Indoors.Answer(oak));
    }

    [Fact]
    public void What_else_is_not_known_is_still_asked_for()
    {
        var wetOrDry = Rafter with { UseClasses = [UseClass.One, UseClass.Two] };
        Assert.Equal([Field.UseClass], Assert.IsType<NotCovered>(Indoors.Answer(wetOrDry)).Missing);
    }
}
