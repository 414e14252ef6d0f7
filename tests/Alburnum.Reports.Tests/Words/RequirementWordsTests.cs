using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Requirements;
using static Alburnum.Tests.Requirements.Rows;

namespace Alburnum.Reports.Tests.Words;

/// <summary>What a rulebook asks, demands and answers, and what a check of it finds, each in its sentence.</summary>
public sealed class RequirementWordsTests
{
    private static readonly Preservative Boron = new(
        "borate",
        "borate",
        [],
        [],
        "diffusing",
        ["B"],
        [Agent.Beetles, Agent.MarineBorers],
        IsFixed: false,
        ["brush", "dip"],
        IsForSurfaces: true,
        [UseClass.One, UseClass.Two],
        [],
        [],
        Remembered
    );

    private static readonly Trace Nothing = new("invented", "Invented code", new Enquiry(), [], []);
    private static readonly Row Ground = DepthRow("ground", Depth(6), [Use("4"), Life(30)]);
    private static readonly Row Sea = DepthRow("sea", Depth(12), [Use("5")]);
    private static readonly CaseBox[] InTheGround = [new([(Field.UseClass, [Known.Word("4")])])];

    private static RequirementWords Words => RequirementWords.Current;

    [Theory]
    [InlineData(5, true, 10, false, "from 5 below 10")]
    [InlineData(5, false, double.PositiveInfinity, false, "above 5")]
    [InlineData(double.NegativeInfinity, true, 10, true, "up to 10")]
    [InlineData(30, true, 30, true, "30")]
    public void A_range_is_said(double low, bool includesLow, double high, bool includesHigh, string said) =>
        Assert.Equal(said, Words.Rows.Say(new Between(Field.Thickness, low, includesLow, high, includesHigh)));

    public static TheoryData<Known, string> WhatIsKnown =>
        new()
        {
            { default, "not known" },
            { Known.OneOfThese([]), "none" },
            { Known.YesNo(true), "yes" },
            { Known.OneOfThese(["3.1", "3.2"]), "3.1 or 3.2" },
            { Known.AllOfThese(["softwood", "pine"]), "softwood, pine" },
            { Known.Number(27.5), "27.5" },
            { Known.Number(1, 2), "1 to 2" },
        };

    [Theory]
    [MemberData(nameof(WhatIsKnown))]
    public void What_is_known_of_a_field_is_said(Known known, string said) => Assert.Equal(said, Words.Rows.Say(known));

    [Fact]
    public void A_set_of_cases_is_said_field_by_field()
    {
        Assert.Equal("every case", Words.Rows.Say(new CaseBox([])));
        Assert.Equal(
            "component: post, any other; thickness (mm): 40, 45; class stated by the contract: none",
            Words.Rows.Say(
                new CaseBox([
                    (Field.Component, [Known.Word("post"), Known.OneOfThese([])]),
                    (Field.Thickness, [Known.Number(40), Known.Number(45)]),
                    (Field.StatedClass, [Known.OneOfThese([])]),
                ])
            )
        );
    }

    [Fact]
    public void When_a_row_holds_is_said()
    {
        Assert.Equal("use class: 4; desired service life (years): 30", Words.Rows.When(Ground));
        Assert.Equal("always", Words.Rows.When(DepthRow("x", Depth(6), [])));
    }

    internal static IReadOnlyList<(NotCoveredReason Reason, string Sentence)> Silences { get; } =
    [
        (
            new LifeNotKnown([15, 30], 20),
            "The code has desired service lives of 15, 30 years, not 20; ask for 30 years."
        ),
        (new LifeNotKnown([15, 30], 60), "The code has desired service lives of 15, 30 years, not 60."),
        (
            new CellNotRead("The threshold is not known."),
            "The code must be consulted: this cell is not in the rulebook. The threshold is not known."
        ),
        (
            new InsectsAtWork([new("longhorn", [], null, "It bores.", Published)]),
            "No preservative is required here against decay. What is required against longhorn, which may attack such timber, is not in the rulebook: the code and the local rules must be consulted."
        ),
        (new NoRowHolds([]), "The code must be consulted: this cell is not in the rulebook."),
        (
            new NoRowHolds([Field.UseClass, Field.Life]),
            "The code must be consulted: this cell is not in the rulebook. Its nearest entries are for timber that differs in: use class, desired service life (years)."
        ),
        (
            new DependsOn([Field.ExposedHeartwood]),
            "The answer depends on something not known about the piece: exposed heartwood."
        ),
        (
            new ClassNotStated(),
            "This rulebook answers by the class that the contract names. Which class does the contract name?"
        ),
        (
            new RowsContradict([Ground, Sea]),
            "The rulebook contradicts itself in rows \"ground\", \"sea\"; the code must be consulted."
        ),
        (new TimberNotCovered("It is for pine."), "The code does not cover such timber here. It is for pine."),
        (
            new NotOneSpecies(Called("whitewood", TimberKind.Mixture, "A mix of the trade.", Pine, Spruce)),
            "whitewood: A mix of the trade. It may be test pine or test spruce; the least treatable of them is test spruce: ask for that to be on the careful side."
        ),
        (
            new NotOneSpecies(
                Called(
                    "whitewood",
                    TimberKind.Mixture,
                    "A mix of the trade.",
                    Pine,
                    Spruce with
                    {
                        HeartwoodTreatability = null,
                    }
                )
            ),
            "whitewood: A mix of the trade. It may be test pine or test spruce; which is the least treatable is not known here."
        ),
        (
            new NotOneSpecies(Called("plywood", TimberKind.Board, "Veneers glued crosswise.")),
            "plywood: Veneers glued crosswise. The rows of this rulebook are for solid timber of one species."
        ),
    ];

    private static IReadOnlyList<(PreservativeFinding Finding, string Says)> Against { get; } =
    [
        (new ProtectsAgainstNothing(Boron), "Borate is no preservative: it protects against neither decay nor insects"),
        (
            new NoFungicide(Boron),
            "Borate does nothing against decay (it protects against: beetles, marine borers), and timber can decay here"
        ),
        (
            new WashesOut(Boron, [UseClass.ThreeOne, UseClass.ThreeTwo]),
            "Borate is not fixed in the wood: in use class 3.1 or 3.2 water leaches it out"
        ),
        (new BeyondItsUse(Boron, [UseClass.Four]), "Borate is meant for use class 1 or 2, not for use class 4"),
        (new NoGuardAgainstBorers(Boron), "Borate does not protect against marine borers, which attack in sea water"),
        (
            new NoGuardAgainstSoftRot(Boron, [UseClass.Four]),
            "Borate does not protect against soft rot, which attacks in use class 4"
        ),
        (
            new NotForIndoors(Boron, new("borated wood is not for indoors", Remembered)),
            "borated wood is not for indoors"
        ),
        (
            new NotForPart(Boron, new("borated wood is kept from playgrounds", Remembered)),
            "borated wood is kept from playgrounds"
        ),
        (new StaysOnSurface(Boron), "Borate stays on the surface (brush, dip), and the code asks for depth"),
    ];

    [Fact]
    public void What_speaks_against_a_preservative_is_said_with_its_standing()
    {
        Assert.Equal(
            Against.Select(each => $"Will not do: {each.Says} (from memory: {Remembered.Citation})."),
            Against.Select(each => Words.Preservatives.Say(each.Finding))
        );
        Assert.Equal(
            $"Borate: Here: not in playgrounds (from memory: {Remembered.Citation}).",
            Words.Preservatives.Say(new RestrictedByLaw(Boron, new("Here: not in playgrounds.", Remembered), false))
        );
        Assert.Equal(
            $"Borate (brush, dip): for the upkeep of standing timber only; here it does not take the place of treatment (from memory: {Remembered.Citation}).",
            Words.Preservatives.Say(new OnlyForUpkeep(Boron))
        );
    }

    [Fact]
    public void A_mark_of_another_system_is_said_to_be_what_it_is()
    {
        var mark = new TreatmentMark("H4", "hazard class", "in the ground", UseClass.Four, Remembered);
        Assert.Equal(
            $"H4 is a mark of another system (hazard class): in the ground; roughly use class 4. No row of Own:1 read here names it, and whether a class of that code is its equal is not known here (of the mark, from memory: {Remembered.Citation}).",
            Words.Say(new MarkOfOtherSystem(mark, Book()))
        );
        Assert.StartsWith(
            "H4 is a mark of another system (hazard class): in the ground. ",
            Words.Say(new MarkOfOtherSystem(mark with { UseClass = null }, Book())),
            StringComparison.Ordinal
        );
        Assert.Equal(
            "H9 is a class neither of Own:1 nor of any system known here; near it: H4.",
            Words.Say(new MarkNotKnown("H9", ["H4"], Book()))
        );
    }

    [Fact]
    public void Why_a_rulebook_has_no_answer_is_said() =>
        Assert.Equal(Silences.Select(each => each.Sentence), Silences.Select(each => Words.Answers.Say(each.Reason)));

    [Theory]
    [InlineData(0, "Retention: the code must be consulted: this cell is not in the rulebook. Two levels are known.")]
    [InlineData(1, "Retention: the code must be consulted: this cell is not in the rulebook.")]
    [InlineData(2, "Retention depends on something not known: preservative.")]
    [InlineData(3, "Retention: the rulebook contradicts itself; the code must be consulted.")]
    public void What_a_demand_leaves_open_is_said(int which, string sentence)
    {
        NotCoveredReason[] reasons =
        [
            new CellNotRead("Two levels are known."),
            new NoRowHolds([Field.Preservative]),
            new DependsOn([Field.Preservative]),
            new RowsContradict([]),
        ];
        var demand = Demand("NP3", new LeastDepth(WoodZone.Sapwood, 6)) with { RetentionOpen = reasons[which] };
        Assert.Equal([sentence], Words.Answers.Open(demand));
        Assert.Empty(Words.Answers.Open(demand with { RetentionOpen = null }));
    }

    private static IReadOnlyList<(RequirementCondition Condition, string Sentence)> Conditions { get; } =
    [
        (new RowAdvises(Of(Subject.Advice, "a", new Advice("Dry it slowly."))), "Dry it slowly."),
        (new TooWet(45.5, 28), "Too wet to treat: 45.5 % moisture, at most 28 % allowed; dry it first."),
    ];

    [Fact]
    public void What_goes_with_a_demand_is_said() =>
        Assert.Equal(
            Conditions.Select(each => each.Sentence),
            Conditions.Select(each => Words.Answers.Say(each.Condition))
        );

    internal static IReadOnlyList<(RulebookFinding Finding, string Sentence)> Findings { get; } =
    [
        (
            new ContradictionFound(Subject.Penetration, [Ground, Sea], InTheGround),
            "Rows \"ground\" (6 mm: at least 6 mm in the sapwood) and \"sea\" (12 mm: at least 12 mm in the sapwood) require different things in the same case."
        ),
        (
            new OverlapFound(Subject.Penetration, [Ground, Sea], InTheGround),
            "Rows \"ground\" (6 mm: at least 6 mm in the sapwood) and \"sea\" (12 mm: at least 12 mm in the sapwood) say the same about the same case."
        ),
        (
            new LessAskedFound(
                Subject.Penetration,
                Field.UseClass,
                new(Known.Word("4"), Sea),
                new(Known.Word("5"), Ground),
                InTheGround
            ),
            "Use class 5 (row \"ground\", 6 mm: at least 6 mm in the sapwood) asks for less than 4 (row \"sea\", 12 mm: at least 12 mm in the sapwood)."
        ),
        (new UnreachableFound(Subject.Penetration, Sea), "No case reaches row \"sea\"."),
        (new GapFound(Subject.Penetration, InTheGround), "The rulebook claims to be complete, but has no row here."),
        (new SilenceFound(Subject.Penetration, InTheGround), "No row covers these cases."),
        (
            new TooLargeToCheck(Subject.Penetration, 4_000_000, 3_000_000),
            "4000000 combinations are too many to check (at most 3000000); split the rulebook."
        ),
    ];

    [Fact]
    public void What_a_check_found_is_said() =>
        Assert.Equal(Findings.Select(each => each.Sentence), Findings.Select(each => Words.Checks.Say(each.Finding)));

    internal static IReadOnlyList<(RouteChange Change, string Phrase)> Changes { get; } =
    [
        (new InciseFaces(), "incise the faces"),
        (new DryFirst(28), "dry to 28 % or less"),
        (new TakeRound(null), "round timber in place of sawn"),
        (
            new TakeRound(new RoundSection(120)),
            "round timber in place of sawn, ø 120 mm or thicker to be as strong in bending"
        ),
        (new TakeSpecies(Pine, Spruce), "test pine in place of test spruce"),
        (new TakeSpecies(Pine, null), "test pine in place of the species"),
        (new TakeHeartwood(Pine), "heartwood of test pine, free of sapwood, untreated"),
        (
            new TakeCodesClass("NP5"),
            "agree with the client on what the code itself asks, in place of the contract's NP5"
        ),
        (new ShortenLife(new DesiredServiceLife(15)), "accept a service life of 15 years"),
        (
            new LowerClass(UseClass.ThreeTwo, From: UseClass.Four),
            "hold it clear of the ground, on a metal shoe (use class 3.2)"
        ),
        (
            new LowerClass(UseClass.ThreeOne, From: UseClass.Four),
            "hold it clear of the ground, on a metal shoe, and shape joints and tops so that no water stays (use class 3.1)"
        ),
        (
            new LowerClass(UseClass.ThreeOne, From: UseClass.ThreeTwo),
            "shape joints and tops so that no water stays (use class 3.1)"
        ),
        (new LowerClass(UseClass.Two, From: UseClass.ThreeTwo), "bring it under a roof (use class 2)"),
    ];

    [Fact]
    public void What_would_make_it_possible_is_said()
    {
        Assert.Equal(
            Changes.Select(each => each.Phrase),
            Changes.Select(each => Words.Routes.Say(By(each.Change, isIncisedToo: false)))
        );
        Assert.Equal(
            "accept a service life of 15 years and incise the faces",
            Words.Routes.Say(By(new ShortenLife(new DesiredServiceLife(15)), isIncisedToo: true))
        );
    }

    [Fact]
    public void Of_another_timber_it_is_said_whether_it_is_sold_and_lasts()
    {
        var heartwood = By(new TakeHeartwood(Pine), isIncisedToo: false);
        Assert.Equal("not known whether it is sold for this use", Words.Routes.Sold(heartwood));
        Assert.Null(Words.Routes.Sold(By(new InciseFaces(), isIncisedToo: false)));
        Assert.Null(Words.Routes.Lasts(heartwood));
        Assert.Equal(
            "the worse end of such heartwood, durability class 1, lasted at least 25 years in the ground in trials (from memory), not known whether it lasts 30 years",
            Words.Routes.Lasts(
                heartwood with
                {
                    Reach = ReachVerdict.NotKnown,
                    Enquiry = new() { Life = new DesiredServiceLife(30) },
                    Trial = new(1, 25, null, Published),
                    Untreated = new(
                        Pine,
                        UseClass.Four,
                        DurabilityVerdict.Enough,
                        DurabilityVerdict.Enough,
                        DurabilityVerdict.Treat,
                        Standing.Published
                    ),
                }
            )
        );
    }

    [Fact]
    public void An_answer_is_named_in_a_few_words()
    {
        var demand = Demand("NP3", new LeastDepth(WoodZone.Sapwood, 6)) with { Retention = new(1.25) };
        Assert.Equal("NP3, 1.25 × critical value", Words.Answers.Short(new Required(demand, Nothing)));
        Assert.Equal(
            "NP3, 10 kg/m³, moisture up to 28 %",
            Words.Answers.Short(
                new Required(
                    demand with
                    {
                        RequiredRetention = new PreservativeAmount(10, AmountUnit.KgPerM3),
                        MoistureMaxPercent = 28,
                    },
                    Nothing
                )
            )
        );
        Assert.Equal("not permitted", Words.Answers.Short(new NotPermitted("No.", Nothing)));
        Assert.Equal("not covered", Words.Answers.Short(new NotCovered(new NoRowHolds([]), Nothing)));
    }

    [Theory]
    [InlineData(typeof(NotCoveredReason))]
    [InlineData(typeof(RequirementCondition))]
    [InlineData(typeof(RulebookFinding))]
    [InlineData(typeof(RouteChange))]
    [InlineData(typeof(PreservativeFinding))]
    public void Every_kind_of_the_core_has_its_words(Type kind) =>
        Assert.Equal(
            kind.Assembly.GetTypes()
                .Where(type => type.IsSubclassOf(kind))
                .Select(type => type.Name)
                .Order(StringComparer.Ordinal),
            Silences
                .Select(each => (object)each.Reason)
                .Concat(Conditions.Select(each => each.Condition))
                .Concat(Findings.Select(each => each.Finding))
                .Concat(Changes.Select(each => each.Change))
                .Concat(Against.Select(each => each.Finding))
                .Append(new RestrictedByLaw(Boron, new("", Remembered), HoldsUpOrder: false))
                .Append(new LawNotKnown(Boron, null!))
                .Append(new OnlyForUpkeep(Boron))
                .Where(kind.IsInstanceOfType)
                .Select(each => each.GetType().Name)
                .Distinct()
                .Order(StringComparer.Ordinal)
        );

    private static TimberName Called(string name, TimberKind kind, string says, params Species[] species) =>
        new(name, species, kind, "", says, [], Remembered);

    private static Requirement Demand(string name, DepthRule depth) => new(name, depth, null, null, null, []);

    private static Route By(RouteChange change, bool isIncisedToo) =>
        new(change, isIncisedToo, new Enquiry(), null, ReachVerdict.Likely, null);
}
