using Alburnum.Requirements;

namespace Alburnum.Tests.Requirements;

public sealed class ContractClassTests
{
    private static readonly Provenance Invented = new(Standing.CommonPractice, "common practice", "", "", "");
    private static readonly DepthRule SixMm = new LeastDepth(WoodZone.Sapwood, 6);
    private static readonly DepthRule AllSapwood = new ShareOfZone(WoodZone.Sapwood, 1);
    private static readonly DepthRule OpenHeartwood = new LeastDepth(WoodZone.ExposedHeartwood, 6);

    [Theory]
    [InlineData("deep", StricterDemand.Contract)]
    [InlineData("shallow", StricterDemand.Code)]
    [InlineData("equal", StricterDemand.Neither)]
    [InlineData("other", StricterDemand.NotComparable)]
    public void A_class_that_the_code_does_not_know_gives_a_demand_of_its_own(string name, StricterDemand stricter)
    {
        var demand = Assert.IsType<ContractDemand>(Of(name, Code(), Classes("classes")));

        Assert.Equal((name, stricter), (demand.Name, demand.Stricter));
    }

    [Fact]
    public void No_class_and_a_class_that_the_code_answers_by_itself_give_none()
    {
        Assert.Null(Of(null, Code(), Classes("classes")));
        Assert.Null(Of("DEEP", Classes("classes"), Classes("classes")));
    }

    [Fact]
    public void A_class_that_nobody_defines_is_said_to_be_not_known() =>
        Assert.Equal(new ContractClassNotKnown("NP7"), Of("NP7", Code(), Classes("classes")));

    [Fact]
    public void A_class_of_two_systems_is_a_question()
    {
        var several = Assert.IsType<ContractClassOfSeveral>(Of("deep", Code(), Classes("one"), Classes("two")));

        Assert.Equal(2, several.Rulebooks.Count);
    }

    [Fact]
    public void A_class_that_is_not_for_such_a_piece_is_no_demand() =>
        Assert.IsType<NotPermitted>(
            Assert.IsType<ContractClassNotAnswered>(Of("round only", Code(), Classes("classes"))).Answer
        );

    [Fact]
    public void A_use_class_is_the_codes_own_where_the_code_goes_by_use_class()
    {
        var code = Book(
            "code",
            new Row(
                "in ground",
                Subject.Penetration,
                [new OneOf(Field.UseClass, ["4"])],
                Demand("NP5", AllSapwood),
                [],
                Invented
            ),
            new Row(
                "above",
                Subject.Penetration,
                [new OneOf(Field.UseClass, ["3.2"])],
                Demand("NP3", SixMm),
                [],
                Invented
            )
        );
        Enquiry enquiry = new()
        {
            StatedClass = "use class 4",
            StatedClassMeans = new([UseClass.Four], null, null, [], []),
            UseClasses = [UseClass.Four],
        };

        Assert.Null(ContractClass.Of(code.Answer(enquiry), code, []));
        var other = ContractClass.Of(code.Answer(enquiry with { UseClasses = [UseClass.ThreeTwo] }), code, []);
        var demand = Assert.IsType<ContractDemand>(other);
        Assert.Equal(
            ("use class 4", AllSapwood, StricterDemand.Contract),
            (demand.Name, demand.Penetration, demand.Stricter)
        );
        // A code that goes by classes of its own leaves it a stranger.
        Assert.IsType<ContractClassNotKnown>(ContractClass.Of(Code().Answer(enquiry), Code(), []));
    }

    [Fact]
    public void A_class_with_its_system_before_it_is_looked_up_in_that_systems_rulebook()
    {
        Enquiry enquiry = new() { StatedClass = "S deep", StatedClassMeans = new([], null, "deep", ["two"], []) };
        var demand = Assert.IsType<ContractDemand>(
            ContractClass.Of(Code().Answer(enquiry), Code(), [Classes("one"), Classes("two")])
        );

        Assert.Equal(("S deep", "two"), (demand.Name, demand.Answer.Trace.RulebookName));
    }

    [Theory]
    [InlineData(true, StricterDemand.Contract)]
    [InlineData(false, StricterDemand.Neither)]
    public void Heartwood_that_no_face_shows_makes_no_class_stricter(bool isShown, StricterDemand stricter)
    {
        var standard = Book("standard", Row("NP6", Demand("NP6", new AllOf([AllSapwood, OpenHeartwood]))));
        var code = Book("code", new Row("only", Subject.Penetration, [], Demand("NP5", AllSapwood), [], Invented));
        var asked = new Enquiry { StatedClass = "NP6", HasExposedHeartwood = isShown };

        var demand = Assert.IsType<ContractDemand>(ContractClass.Of(code.Answer(asked), code, [standard]));

        Assert.Equal((stricter, !isShown), (demand.Stricter, demand.IsSameForWantOfHeartwood));
    }

    [Fact]
    public void A_class_that_the_code_spells_out_itself_means_what_the_code_says_with_the_standard_beside_it()
    {
        var looser = new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75);
        var standard = Book("standard", Row("NP6", Demand("NP6", OpenHeartwood)));
        var code = Book(
            "code",
            new Row(
                "own",
                Subject.Penetration,
                [new OneOf(Field.UseClass, ["4"])],
                new PenetrationDemand("NP6", looser, null, DefinedBy: null),
                [],
                Invented
            ),
            new Row("dry", Subject.Penetration, [new OneOf(Field.UseClass, ["1"])], Demand("NP3", SixMm), [], Invented)
        );
        ContractDemand In(UseClass use)
        {
            var asked = new Enquiry
            {
                StatedClass = "NP6",
                UseClasses = [use],
                HasExposedHeartwood = true,
            };
            return Assert.IsType<ContractDemand>(ContractClass.Of(code.Answer(asked), code, [standard]));
        }

        Assert.Equal((looser, StricterDemand.Neither), (In(UseClass.Four).Penetration, In(UseClass.Four).Stricter));
        Assert.Equal(OpenHeartwood, In(UseClass.Four).OfStandard!.Requirement.Penetration);
        Assert.Equal((looser, StricterDemand.NotComparable), (In(UseClass.One).Penetration, In(UseClass.One).Stricter));
    }

    private static ContractClass? Of(string? stated, Rulebook governing, params IReadOnlyList<Rulebook> known)
    {
        var code = governing.Answer(new Enquiry { StatedClass = stated });
        return ContractClass.Of(code, governing, known);
    }

    private static Rulebook Code() =>
        Book("code", new Row("only", Subject.Penetration, [], Demand("NP3", SixMm), [], Invented));

    private static Rulebook Classes(string name) =>
        Book(
            name,
            Row("deep", Demand("deep", AllSapwood)),
            Row("shallow", Demand("shallow", new LeastDepth(WoodZone.Sapwood, 3))),
            Row("equal", Demand("equal", SixMm)),
            Row("other", Demand("other", OpenHeartwood)),
            Row("round only", new Forbidden("For round timber only."))
        );

    private static Row Row(string stated, Demand demand) =>
        new(stated, Subject.Penetration, [new OneOf(Field.StatedClass, [stated])], demand, [], Invented);

    private static PenetrationDemand Demand(string name, DepthRule depth) => new(name, depth, null, Invented);

    private static Rulebook Book(string name, params IReadOnlyList<Row> rows) =>
        new(rows)
        {
            Name = name,
            Title = name,
            Document = "Invented",
            Edition = "1",
        };
}
