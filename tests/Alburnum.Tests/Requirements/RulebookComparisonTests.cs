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

        Assert.True(Assert.Single(RulebookComparison.Of(Before, silent, enquiries).Changes).IsNotRead);
        Assert.True(Assert.Single(RulebookComparison.Of(silent, Before, enquiries).Changes).IsNotRead);
        Assert.False(Assert.Single(RulebookComparison.Of(Before, After, enquiries).Changes).IsNotRead);
        Assert.Equal(0, RulebookComparison.Of(Before, silent, enquiries).AnsweredByNeither);
        Assert.Equal(1, RulebookComparison.Of(silent, silent, enquiries).AnsweredByNeither);
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
