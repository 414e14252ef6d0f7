using Alburnum.Requirements;
using CsCheck;
using static Alburnum.Tests.Requirements.Rows;

namespace Alburnum.Tests.Requirements;

public sealed class RulebookComparisonTests
{
    private static readonly Rulebook Before = Book(
        DepthRow("g15", Depth(6), [Use("4"), Life(15)]),
        DepthRow("g30", Depth(6), [Use("4"), Life(30)])
    );
    private static readonly Rulebook After = Book(
        DepthRow("g15", Depth(6), [Use("4"), Life(15)]),
        DepthRow("g30", Depth(12), [Use("4"), Life(30)])
    );

    private static readonly Gen<Enquiry> Enquiries = Gen.Select(
        Gen.Enum<UseClass>(),
        Gen.Int[1, 2].Select(times => 15 * times),
        (useClass, years) => new Enquiry { UseClasses = [useClass], Life = new DesiredServiceLife(years) }
    );

    [Fact]
    public void Only_the_cases_that_change_are_listed_with_both_answers()
    {
        Enquiry[] enquiries =
        [
            new() { UseClasses = [UseClass.Four], Life = new DesiredServiceLife(15) },
            new() { UseClasses = [UseClass.Four], Life = new DesiredServiceLife(30) },
            new() { UseClasses = [UseClass.One], Life = new DesiredServiceLife(30) },
        ];
        var change = Assert.Single(RulebookComparison.Of(Before, After, enquiries).Changes);
        Assert.Equal((1, "6 mm", "12 mm"), (change.Index, Name(change.Before), Name(change.After)));
    }

    [Fact]
    public void A_cell_that_one_has_not_read_is_no_change_of_the_code()
    {
        Enquiry[] enquiries = [new() { UseClasses = [UseClass.Four], Life = new DesiredServiceLife(30) }];
        var silent = Book(DepthRow("g15", Depth(6), [Use("4"), Life(15)]));

        Assert.Equal(ChangeKind.NotRead, Assert.Single(RulebookComparison.Of(Before, silent, enquiries).Changes).Kind);
        Assert.Equal(ChangeKind.NotRead, Assert.Single(RulebookComparison.Of(silent, Before, enquiries).Changes).Kind);
        Assert.Equal(ChangeKind.Changed, Assert.Single(RulebookComparison.Of(Before, After, enquiries).Changes).Kind);
        Assert.Equal(0, RulebookComparison.Of(Before, silent, enquiries).AnsweredByNeither);
        Assert.Equal(1, RulebookComparison.Of(silent, silent, enquiries).AnsweredByNeither);
    }

    [Fact]
    public void A_class_that_only_one_has_is_neither_unread_nor_a_change()
    {
        var old = Book(DepthRow("P2", Depth(3), [Stated("P2")]), DepthRow("P5", Depth(6), [Stated("P5")]));
        var young = Book(DepthRow("P2", Depth(4), [Stated("P2")]), DepthRow("NP5", Depth(9), [Stated("NP5")]));

        var enquiries = RulebookComparison.EnquiriesByClass(old, young, [Pine, Spruce]);
        var changes = RulebookComparison.Of(old, young, enquiries).Changes;

        // Two forms of each; the class that both have in both species.
        Assert.Equal(2 + 2 + 4, enquiries.Count);
        Assert.Equal(
            [
                ("P2", ChangeKind.Changed, false, false),
                ("P5", ChangeKind.NoSuchClass, false, true),
                ("NP5", ChangeKind.NoSuchClass, true, false),
            ],
            changes
                .Select(change =>
                    (change.Enquiry.StatedClass!, change.Kind, change.LacksClassBefore, change.LacksClassAfter)
                )
                .Distinct()
        );
        Assert.Equal(0, RulebookComparison.Of(old, young, enquiries).AnsweredByNeither);

        static OneOf Stated(string name) => new(Field.StatedClass, [name]);
    }

    [Fact]
    public void What_one_of_the_two_leaves_open_is_no_change_of_the_code()
    {
        var byClass = Book(DepthRow("NP5", Depth(9), [new OneOf(Field.StatedClass, ["NP5"])]));
        var byForm = Book(DepthRow("sawn", Depth(9), [new OneOf(Field.Form, ["sawn"])]));
        Enquiry[] enquiries = [new() { UseClasses = [UseClass.Four], Life = new DesiredServiceLife(30) }];

        Assert.All(
            new[] { byClass, byForm },
            open =>
                Assert.Equal(
                    ChangeKind.NotRead,
                    Assert.Single(RulebookComparison.Of(Before, open, enquiries).Changes).Kind
                )
        );
    }

    [Fact]
    public void Branches_of_one_preservative_are_held_against_the_same_branches()
    {
        static Rulebook WithBoron(double generalMm) =>
            Book(
                DepthRow("general", Depth(generalMm), [Use("2")]),
                DepthRow("boron", Depth(40), [Use("2"), new OneOf(Field.Preservative, ["boron"])], "general")
            );
        Enquiry[] enquiries = [new() { UseClasses = [UseClass.Two], Life = new DesiredServiceLife(30) }];
        var (same, other) = (
            RulebookComparison.Of(WithBoron(3), WithBoron(3), enquiries),
            RulebookComparison.Of(WithBoron(3), WithBoron(6), enquiries)
        );

        Assert.Empty(same.Changes);
        Assert.Equal(0, same.AnsweredByNeither);
        Assert.Equal(ChangeKind.Changed, Assert.Single(other.Changes).Kind);
    }

    private static string Name(Answer answer) => Assert.IsType<Required>(answer).Requirement.PenetrationName;

    [Fact]
    public void A_rulebook_does_not_differ_from_itself() =>
        Enquiries.List[0, 20].Sample(enquiries => RulebookComparison.Of(After, After, enquiries).Changes.Count == 0);

    [Fact]
    public void What_changes_one_way_changes_the_other_way() =>
        Enquiries
            .List[0, 20]
            .Sample(enquiries =>
                RulebookComparison
                    .Of(Before, After, enquiries)
                    .Changes.Select(change => change.Index)
                    .SequenceEqual(
                        RulebookComparison.Of(After, Before, enquiries).Changes.Select(change => change.Index)
                    )
            );
}
