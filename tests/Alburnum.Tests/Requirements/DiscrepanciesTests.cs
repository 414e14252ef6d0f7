using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Tests.Requirements;

public sealed class DiscrepanciesTests
{
    private static readonly Provenance Invented = new(Standing.CommonPractice, "common practice", "", "", "");
    private static readonly Component Rafter = new("rafter");
    private static readonly Component Window = new("window");

    private static readonly Rulebook Speaking = Book(
        Of(Rafter, Subject.UseClass, new UseClassDemand("1", [UseClass.One], null)),
        Of(Window, Subject.UseClass, new UseClassDemand("3c", [UseClass.ThreeOne, UseClass.ThreeTwo], IsCoated: true)),
        Of(Window, Subject.Life, new LifeDemand(new(30))),
        new Row("moisture", Subject.Moisture, [], new MoistureLimit(28), [], Invented),
        new Row("depth", Subject.Penetration, [], new PenetrationDemand("any", new NoDepth(), null, null), [], Invented)
    );

    private static readonly Rulebook Silent = Book();

    [Fact]
    public void A_component_in_another_class_than_the_codes_is_remarked_on() =>
        Assert.Equal(
            ("1", "rafter", Speaking.FullTitle),
            Single(new() { Component = Rafter, UseClasses = [UseClass.ThreeTwo] })
                is UseClassesDiffer { Against: UseClassByCode code }
                ? (code.Label, code.Component, code.RulebookTitle)
                : default
        );

    [Fact]
    public void A_class_of_coated_timber_is_against_one_of_uncoated()
    {
        Enquiry window = new()
        {
            Component = Window,
            UseClasses = [UseClass.ThreeOne, UseClass.ThreeTwo],
            UseClassAsWritten = "3u",
            IsCoatedByClass = false,
        };

        var odd = Assert.IsType<UseClassesDiffer>(Single(window));
        Assert.Equal(("3u", "3c"), (odd.Answering.Label, odd.Against.Label));
        Assert.Empty(Of(window with { UseClassAsWritten = "3c", IsCoatedByClass = true }));
    }

    [Fact]
    public void A_class_that_is_stated_is_held_against_where_the_piece_is_said_to_stand()
    {
        Enquiry post = new()
        {
            UseClasses = [UseClass.Four],
            Exposure = new() { TouchesGroundOrFreshWater = false },
        };

        var odd = Assert.IsType<UseClassesDiffer>(Single(post));
        Assert.DoesNotContain(UseClass.Four, Assert.IsType<UseClassByPlace>(odd.Against).Classes);
        Assert.Empty(Of(post with { Exposure = new() { TouchesGroundOrFreshWater = true } }));
    }

    [Fact]
    public void Of_a_stated_class_of_two_parts_that_is_meant_which_fits_where_the_piece_stands()
    {
        Enquiry board = new()
        {
            UseClasses = [UseClass.ThreeOne, UseClass.ThreeTwo],
            UseClassAsWritten = "3",
            Exposure = new() { LetsWaterStay = true },
        };

        var trace = Speaking.Answer(board).Trace;
        Assert.Equal([UseClass.ThreeTwo], trace.UseClasses);
        Assert.Equal("3", trace.UseClassGiven!.Label);
        Assert.Null(trace.NextQuestion);
        Assert.Equal(ExposureQuestion.WaterStays, Speaking.Answer(board with { Exposure = new() }).Trace.NextQuestion);
    }

    [Fact]
    public void The_use_of_a_contract_s_class_that_another_code_defines_is_told_and_holds_up_nothing()
    {
        Enquiry window = new() { Component = Window, StatedClass = "ground" };
        var ground = Book(
            new Row(
                "use",
                Subject.UseClass,
                [new OneOf(Field.StatedClass, ["ground"])],
                new UseClassDemand("4", [UseClass.Four], null),
                [],
                Invented
            )
        );

        var odd = Assert.IsType<UseClassesDiffer>(
            Assert.Single(Discrepancies.Of(Speaking.Answer(window), [Speaking, ground]))
        );
        Assert.Equal(("ground", "4", "3c"), (odd.Contract!.StatedClass, odd.Contract.Label, odd.Other.Label));
        Assert.False(odd.HoldsUpOrder);
        Assert.Empty(Discrepancies.Of(Speaking.Answer(window), [Speaking, ground, ground]));
    }

    [Theory]
    [InlineData(false, 0)]
    [InlineData(true, 1)]
    public void That_a_code_puts_a_part_in_a_wetter_class_than_its_usual_place_is_no_contradiction(
        bool isUsuallyInGround,
        int remarks
    )
    {
        var wetter = Book(Of(Rafter, Subject.UseClass, new UseClassDemand("4", [UseClass.Four], null)));
        var usual = new Exposure
        {
            IsInSaltWater = false,
            TouchesGroundOrFreshWater = isUsuallyInGround,
            IsExposedToWeather = true,
            LetsWaterStay = true,
        };
        Enquiry enquiry = new()
        {
            Component = Rafter,
            CalledAs = new("joist", "deck", [Rafter], usual, null, "", Invented),
            Exposure = new() { TouchesGroundOrFreshWater = false },
        };

        Assert.Equal(remarks, Discrepancies.Of(wetter.Answer(enquiry), []).Count);
    }

    [Fact]
    public void Where_the_governing_code_is_silent_another_speaks()
    {
        Enquiry enquiry = new() { Component = Rafter, UseClasses = [UseClass.ThreeTwo] };

        Assert.Empty(Discrepancies.Of(Silent.Answer(enquiry), []));
        var odd = Assert.IsType<UseClassesDiffer>(Assert.Single(Discrepancies.Of(Silent.Answer(enquiry), [Speaking])));
        Assert.Equal(Speaking.FullTitle, Assert.IsType<UseClassByCode>(odd.Against).RulebookTitle);
    }

    [Fact]
    public void A_component_in_the_codes_class_is_not_remarked_on() =>
        Assert.Empty(Of(new() { Component = Rafter, UseClasses = [UseClass.One] }));

    [Fact]
    public void Where_every_code_is_silent_the_name_speaks()
    {
        ComponentName name = new(
            "purlin",
            "roof",
            [],
            new()
            {
                IsInSaltWater = false,
                TouchesGroundOrFreshWater = false,
                IsExposedToWeather = false,
                MayGetDamp = false,
            },
            null,
            "",
            Invented
        );
        Enquiry enquiry = new() { CalledAs = name, UseClasses = [UseClass.Four] };

        var odd = Assert.IsType<UseClassesDiffer>(Single(enquiry));
        Assert.Equal([UseClass.One], Assert.IsType<UseClassByName>(odd.Against).Classes);
        Assert.Empty(Of(enquiry with { UseClasses = [UseClass.One] }));
    }

    [Fact]
    public void A_coating_denied_is_against_class_3c() =>
        Assert.Equal(
            new CoatingAgainstClass(IsCoated: false),
            Single(
                new()
                {
                    UseClasses = [UseClass.ThreeOne],
                    IsCoatedByClass = true,
                    Exposure = new() { IsCoated = false },
                }
            )
        );

    [Fact]
    public void A_coating_denied_is_against_the_codes_class_of_the_component() =>
        Assert.IsType<CoatingAgainstCode>(
            Single(
                new()
                {
                    Component = Window,
                    Exposure = new() { IsCoated = false },
                }
            )
        );

    [Fact]
    public void A_life_beyond_the_usual_one_is_remarked_on_and_a_shorter_one_is_not()
    {
        Enquiry enquiry = new()
        {
            Component = Window,
            Exposure = new() { IsCoated = true },
            Life = new(60),
        };

        Assert.Equal(new LifeBeyondUsual(Window, new(60), new(30)), Single(enquiry));
        Assert.Empty(Of(enquiry with { Life = new(15) }));
    }

    [Fact]
    public void A_life_that_is_long_elsewhere_is_remarked_on_where_the_code_knows_no_lives()
    {
        Enquiry enquiry = new() { Component = Window, Life = new(60) };

        Assert.Equal(
            new LifeNotOfCode("window", new(60), new(30), Speaking.FullTitle, Silent.FullTitle),
            Assert.Single(Discrepancies.Of(Silent.Answer(enquiry), [Speaking]))
        );
        Assert.Empty(Discrepancies.Of(Silent.Answer(enquiry with { Life = new(30) }), [Speaking]));
        ComponentName name = new("sash", "joinery", [], new(), new(new(20), Invented), "", Invented);
        Assert.Equal(
            new LifeNotOfCode("sash", new(60), new(20), null, Silent.FullTitle),
            Assert.Single(Discrepancies.Of(Silent.Answer(new() { CalledAs = name, Life = new(60) }), [Speaking]))
        );
    }

    [Fact]
    public void Moisture_above_the_codes_limit_is_remarked_on()
    {
        Assert.Equal(new TooMoist(40, 28), Single(new() { MoisturePercent = 40 }));
        Assert.Empty(Of(new() { MoisturePercent = 28 }));
    }

    [Fact]
    public void Heartwood_at_the_face_of_a_round_piece_is_remarked_on()
    {
        Section round = new RoundSection(100);

        Assert.Equal(new HeartwoodOnRound(round), Single(new() { Section = round, HasExposedHeartwood = true }));
        Assert.Equal(new HeartwoodOnRound(null), Single(new() { Form = TimberForm.Round, HasExposedHeartwood = true }));
        Assert.Empty(Of(new() { Section = new RectangularSection(75, 75), HasExposedHeartwood = true }));
    }

    private static readonly Rulebook ByClass = Book(
        new Row(
            "use of AB",
            Subject.UseClass,
            [new OneOf(Field.StatedClass, ["AB"])],
            new UseClassDemand("3.2", [UseClass.ThreeTwo], null),
            ["UseClass post"],
            Invented
        ),
        Of(new Component("post"), Subject.UseClass, new UseClassDemand("4", [UseClass.Four], null))
    );

    [Fact]
    public void A_contracts_class_for_a_milder_use_leaves_the_component_where_the_code_puts_it()
    {
        Enquiry post = new() { Component = new("post"), StatedClass = "AB" };
        var answer = ByClass.Answer(post);

        var finding = Assert.IsType<UseClassOfContract>(answer.Trace.Step(Subject.UseClass)!.Finding);
        Assert.Equal(("AB", "3.2", "4"), (finding.StatedClass, finding.Demand.Label, finding.Code!.Label));
        Assert.Equal([UseClass.ThreeTwo], answer.Trace.UseClasses);
        var odd = Assert.IsType<UseClassesDiffer>(Assert.Single(Discrepancies.Of(answer, [])));
        Assert.Equal(("AB", "3.2"), (odd.Contract!.StatedClass, odd.Contract.Label));
        var code = Assert.IsType<UseClassByCode>(odd.Other);
        Assert.Equal(("post", ByClass.FullTitle), (code.Component, code.RulebookTitle));
        Assert.Equal([UseClass.Four], code.Classes);
        Assert.True(odd is { IsContractTooWeak: true, IsUseLeftOut: true, HoldsUpOrder: true });
    }

    [Fact]
    public void A_use_class_that_is_stated_is_held_against_the_contracts_class_and_not_called_wrong_by_it()
    {
        Enquiry post = new()
        {
            Component = new("post"),
            StatedClass = "AB",
            UseClasses = [UseClass.Four],
        };

        var odd = Assert.IsType<UseClassesDiffer>(Assert.Single(Discrepancies.Of(ByClass.Answer(post), [])));
        Assert.IsType<UseClassStated>(odd.Other);
        Assert.Empty(Discrepancies.Of(ByClass.Answer(post with { StatedClass = null }), []));
    }

    [Fact]
    public void Where_the_governing_code_has_no_class_for_the_component_another_is_asked()
    {
        Enquiry window = new() { Component = Rafter, StatedClass = "AB" };

        var odd = Assert.IsType<UseClassesDiffer>(Assert.Single(Discrepancies.Of(ByClass.Answer(window), [Speaking])));
        Assert.Equal("rafter", Assert.IsType<UseClassByCode>(odd.Other).Component);
        Assert.False(odd.IsContractTooWeak);
    }

    private static IReadOnlyList<Discrepancy> Of(Enquiry enquiry) => Discrepancies.Of(Speaking.Answer(enquiry), []);

    private static Discrepancy Single(Enquiry enquiry) => Assert.Single(Of(enquiry));

    private static Row Of(Component component, Subject subject, Demand demand) =>
        new(
            $"{subject} {component.Name}",
            subject,
            [new OneOf(Field.Component, [component.Name])],
            demand,
            [],
            Invented
        );

    private static Rulebook Book(params Row[] rows) =>
        new(rows)
        {
            Name = "invented",
            Title = "An invented code",
            Document = "Invented",
            Edition = "1",
        };
}
