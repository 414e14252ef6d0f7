using Alburnum.Reports.Requirements;
using Alburnum.Requirements;
using Alburnum.Timber;
using static Alburnum.Tests.Requirements.Rows;

namespace Alburnum.Reports.Tests.Requirements;

public sealed class SpecificationClauseTests
{
    [Fact]
    public void What_the_code_recommends_is_not_ordered()
    {
        var trace = new Trace("own-1", "Own table", new Enquiry(), [], []);
        Requirement Surface(bool isRecommended) =>
            new("NP1", new NoDepth(), null, null, null, []) { IsRecommended = isRecommended };
        Assert.Contains(
            "Own table recommends preservative treatment here and does not require it (no depth of penetration is required).",
            SpecificationClause.Write(new Required(Surface(isRecommended: true), trace)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Preservative treatment to Own table: no depth of penetration is required.",
            SpecificationClause.Write(new Required(Surface(isRecommended: false), trace)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_preservative_that_was_asked_about_is_ordered_by_the_name_of_its_kind()
    {
        var boron = new Preservative(
            "borate",
            "borate",
            ["SBX"],
            ["boron"],
            "diffusing",
            ["B"],
            [Agent.Decay],
            IsFixed: false,
            ["diffusion"],
            IsForSurfaces: false,
            [UseClass.Two],
            [],
            [],
            new(Standing.FromMemory, "a book", "", "", "")
        );
        var trace = new Trace(
            "own-1",
            "Own table",
            new Enquiry { Preservative = "boron", PreservativeKind = boron },
            [],
            []
        );
        var surface = new Requirement("NP1", new NoDepth(), null, null, null, []);

        Assert.Contains(
            "Treatment with borate to Own table: no depth of penetration is required.",
            SpecificationClause.Write(new Required(surface, trace)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Own table recommends preservative treatment here and does not require it (no depth of penetration is required). "
                + "Where treatment with borate is agreed, the following holds.",
            SpecificationClause.Write(new Required(surface with { IsRecommended = true }, trace)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_the_contract_orders_stands_in_the_clause_of_a_piece_for_which_the_code_asks_for_none()
    {
        var trace = new Trace("own-1", "Own table", new Enquiry(), [], []);
        var none = new NotNeeded("It is dry.", [], trace);
        var contract = new ContractDemand(
            "NP5",
            new(new("NP5", new ShareOfZone(WoodZone.Sapwood, 1), null, null, null, []), trace),
            Stricter: null
        );

        Assert.Contains(
            "Preservative treatment to the contract's NP5 (Own table, published): full penetration in the sapwood. Own table itself requires none. ",
            SpecificationClause.Write(none, [], contract),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("contract", SpecificationClause.Write(none, []), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Of_code_and_contract_the_clause_orders_the_depth_and_the_zone_of_the_one_that_decides()
    {
        var trace = new Trace("own-1", "Own table", new Enquiry(), [], []);
        Required Code(bool isRecommended) =>
            new(
                new("NP3", new LeastDepth(WoodZone.Sapwood, 6), new(6, "6 mm of sapwood"), null, null, [])
                {
                    IsRecommended = isRecommended,
                },
                trace
            );
        var contract = new ContractDemand(
            "H4",
            new(
                new("H4", new ShareOfZone(WoodZone.Sapwood, 1), new(null, "all the sapwood"), null, null, []),
                trace with
                {
                    RulebookTitle = "Other table",
                }
            ),
            StricterDemand.Contract
        );

        Assert.Contains(
            "Preservative treatment to the contract's H4 (Other table, published): full penetration in the sapwood. "
                + "That is more than Own table asks for: penetration NP3, at least 6 mm in the sapwood. Analytical zone: all the sapwood",
            SpecificationClause.Write(Code(isRecommended: false), contract),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "That is more than Own table recommends",
            SpecificationClause.Write(Code(isRecommended: true), contract),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_contracts_class_that_cannot_be_judged_is_named_in_the_clause_as_such()
    {
        var trace = new Trace("own-1", "Own table", new Enquiry(), [], []);
        Required code = new(new("NP3", new LeastDepth(WoodZone.Sapwood, 6), null, null, null, []), trace);
        var none = new NotNeeded("It is dry.", [], trace);

        Assert.All(
            (ContractClass[])
                [
                    new ContractClassOfSeveral("H4", ["One", "Another"], []),
                    new ContractClassNotAnswered("UC4A", new NotCovered(new CellNotRead(""), trace)),
                    new ContractClassNotKnown("NP9"),
                ],
            each =>
            {
                var said = $"The contract also names {each.Name}, which is not judged here. ";
                Assert.Equal(
                    SpecificationClause.Write(code),
                    SpecificationClause.Write(code, each).Replace(said, "", StringComparison.Ordinal)
                );
                Assert.Contains(said, SpecificationClause.Write(code, each), StringComparison.Ordinal);
                Assert.Contains(said, SpecificationClause.Write(none, [], each), StringComparison.Ordinal);
            }
        );
    }

    [Fact]
    public void What_the_insects_that_are_stated_and_may_attack_call_for_stands_in_the_order()
    {
        Insect Named(string name, WoodType? attacks) => new(name, [], attacks, "wood", Published);
        Required Of(params Insect[] insects) =>
            new(
                new("NP1", new NoDepth(), null, null, null, []),
                new Trace(
                    "own-1",
                    "Own table",
                    new Enquiry
                    {
                        Species = Spruce,
                        Exposure = new() { Insects = insects },
                    },
                    [],
                    []
                )
            );

        Assert.Contains(
            "The preservative is approved against termites and furniture beetle. ",
            SpecificationClause.Write(
                Of(
                    Named("termites", null),
                    Named("furniture beetle", WoodType.Softwood),
                    Named("lyctus", WoodType.Hardwood)
                )
            ),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            "approved against",
            SpecificationClause.Write(Of(Named("lyctus", WoodType.Hardwood))),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_clause_holds_everything_a_supplier_must_be_told()
    {
        var book = Book(
            DepthRow(
                "ground",
                Depth(6) with
                {
                    Zone = new(new AnalyticalZone(6, "6 mm of sapwood"), Published),
                },
                [Use("4"), Life(15)]
            ),
            Of(Subject.Retention, "r", new RetentionFactor(1.5)),
            Of(Subject.Moisture, "m", new MoistureLimit(28))
        );
        var required = Assert.IsType<Required>(
            book.Answer(
                new Enquiry
                {
                    Component = new Component("fence post"),
                    Section = new RectangularSection(75, 75),
                    Species = Spruce,
                    UseClasses = [UseClass.Four],
                    Life = new DesiredServiceLife(15),
                    IsIncised = true,
                    CriticalValue = new PreservativeAmount(8, AmountUnit.KgPerM3),
                }
            )
        );

        var clause = SpecificationClause.Write(required);

        Assert.All(
            [
                "Fence post",
                "75 × 75 mm",
                "sawn",
                "test spruce (Picea probata)",
                "Use class 4",
                "15 years",
                "Own:1",
                "at least 6 mm in the sapwood",
                "6 mm of sapwood",
                "12 kg/m³",
                "at most 28 %",
                "incised",
                "cut ends",
                "certificate names",
                "published",
                SpecificationClause.Caution,
            ],
            words => Assert.Contains(words, clause, StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(1, "at least the preservative's critical value for the use class: the amount that its tests found")]
    [InlineData(
        1.5,
        "at least 1.5 times the preservative's critical value for the use class: the amount that its tests"
    )]
    public void A_multiple_of_the_critical_value_says_what_that_is(double factor, string words)
    {
        var book = Book(
            DepthRow("ground", Depth(6), [Use("4")]),
            Of(Subject.Retention, "kept", new RetentionFactor(factor))
        );
        var required = Assert.IsType<Required>(
            book.Answer(new Enquiry { Species = Spruce, UseClasses = [UseClass.Four] })
        );

        Assert.Contains(words, SpecificationClause.Write(required), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Cut_ends_are_kept_out_of_the_ground_only_where_the_piece_touches_it(bool isInGround)
    {
        var book = Book(DepthRow("dry", Depth(3), [Use("1")]), DepthRow("ground", Depth(6), [Use("4")]));
        var required = Assert.IsType<Required>(
            book.Answer(
                new Enquiry
                {
                    Species = Spruce,
                    Exposure = new()
                    {
                        IsInSaltWater = false,
                        TouchesGroundOrFreshWater = isInGround,
                        IsExposedToWeather = false,
                        MayGetDamp = false,
                    },
                }
            )
        );

        Assert.Equal(
            isInGround,
            SpecificationClause.Write(required).Contains("Keep cut ends out of the ground", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void What_is_open_stays_visible_in_the_clause()
    {
        var required = Assert.IsType<Required>(Book(DepthRow("x", Depth(6), [])).Answer(new Enquiry()));
        var clause = SpecificationClause.Write(required);
        Assert.Contains("species to be stated", clause, StringComparison.Ordinal);
        Assert.All(
            ["Analytical zone", "Retention in the analytical zone", "Moisture content before treatment"],
            part => Assert.Contains($"{part}: to be stated, from the code. ", clause, StringComparison.Ordinal)
        );
        Assert.Contains("To be completed: Retention", clause, StringComparison.Ordinal);
    }
}
