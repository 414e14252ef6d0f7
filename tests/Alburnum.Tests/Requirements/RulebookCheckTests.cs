using Alburnum.Requirements;
using static Alburnum.Tests.Requirements.Rows;

namespace Alburnum.Tests.Requirements;

/// <summary>Each kind of fault is planted once and must be found, with its rows and its cases.</summary>
public sealed class RulebookCheckTests
{
    [Fact]
    public void A_sound_table_has_no_faults()
    {
        var book = Book(
            DepthRow("dry", Depth(3), [Use("1", "2", "3.1", "3.2")]),
            DepthRow("ground-15", Depth(6), [Use("4", "5"), Life(15)]),
            DepthRow("ground-30", Depth(12), [Use("4", "5"), Life(30)])
        );
        Assert.DoesNotContain(RulebookCheck.Run(book), finding => finding.IsFault);
    }

    [Fact]
    public void A_gap_in_a_table_that_claims_to_be_complete_is_found_with_its_cases()
    {
        Row[] rows = [DepthRow("dry", Depth(3), [Use("1", "2", "3.1", "3.2")]), DepthRow("sea", Depth(12), [Use("5")])];
        var complete = new Rulebook(rows)
        {
            Name = "own",
            Title = "Own",
            Document = "Own",
            Edition = "1",
            CompleteOver = [Field.UseClass],
        };

        var gap = Assert.Single(RulebookCheck.Run(complete), finding => finding.Kind == RulebookFindingKind.Gap);
        Assert.Equal([(Field.UseClass, "4")], Cases(gap));
        Assert.Equal(RulebookFindingKind.Silent, Assert.Single(RulebookCheck.Run(Book(rows))).Kind);
    }

    [Fact]
    public void Rows_that_disagree_are_found_with_the_cases_they_share()
    {
        var book = Book(
            DepthRow("thin", Depth(3), [Use("4"), Thickness(10, 50)]),
            DepthRow("thick", Depth(12), [Use("4"), Thickness(40, 100)])
        );
        var clash = Assert.Single(
            RulebookCheck.Run(book),
            finding => finding.Kind == RulebookFindingKind.Contradiction
        );
        Assert.Equal(["thin", "thick"], clash.Rows.Select(row => row.Key));
        Assert.Equal([(Field.UseClass, "4"), (Field.Thickness, "40"), (Field.Thickness, "45")], Cases(clash));
    }

    [Fact]
    public void Rows_that_say_the_same_of_one_case_overlap()
    {
        var book = Book(DepthRow("a", Depth(3), [Use("4", "5")]), DepthRow("b", Depth(3), [Use("3.2", "4")]));
        var overlap = Assert.Single(RulebookCheck.Run(book), finding => finding.Kind == RulebookFindingKind.Overlap);
        Assert.False(overlap.IsFault);
        Assert.Equal([(Field.UseClass, "4")], Cases(overlap));
    }

    [Fact]
    public void A_row_hidden_by_an_exception_everywhere_is_unreachable()
    {
        var book = Book(
            DepthRow("hidden", Depth(3), [Use("4")]),
            DepthRow("wide", Depth(6), [Use("3.2", "4")], "hidden")
        );
        var found = Assert.Single(RulebookCheck.Run(book), finding => finding.Kind == RulebookFindingKind.Unreachable);
        Assert.Equal("hidden", Assert.Single(found.Rows).Key);
    }

    [Fact]
    public void A_longer_life_that_asks_for_less_is_found()
    {
        var book = Book(
            DepthRow("y15", Depth(12), [Use("4"), Life(15)]),
            DepthRow("y30", Depth(6), [Use("4"), Life(30)])
        );
        var found = Assert.Single(RulebookCheck.Run(book), finding => finding.Kind == RulebookFindingKind.AsksLess);
        Assert.Equal(["y15", "y30"], found.Rows.Select(row => row.Key));
    }

    [Fact]
    public void A_harsher_class_that_asks_for_less_is_found_even_across_unknown_cells()
    {
        var book = Book(
            DepthRow("under-cover", new Forbidden("No."), [Use("2")]),
            DepthRow("rain", new UnknownCell("Not read."), [Use("3.1", "3.2")]),
            DepthRow("ground", Depth(6), [Use("4")])
        );
        var found = Assert.Single(RulebookCheck.Run(book), finding => finding.Kind == RulebookFindingKind.AsksLess);
        Assert.Equal(["under-cover", "ground"], found.Rows.Select(row => row.Key));
    }

    [Fact]
    public void A_lower_retention_for_a_longer_life_is_found()
    {
        var book = Book(
            Of(Subject.Retention, "r15", new RetentionFactor(1.5), Life(15)),
            Of(Subject.Retention, "r30", new RetentionFactor(1.0), Life(30))
        );
        Assert.Contains(
            RulebookCheck.Run(book),
            finding => finding.Kind == RulebookFindingKind.AsksLess && finding.Subject == Subject.Retention
        );
    }

    [Fact]
    public void A_check_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            RulebookCheck.Run(Book(DepthRow("x", Depth(3), [Use("4")])), stop.Token)
        );
    }

    // Field and value, one for each value of the only group of like cases that a finding names.
    private static IEnumerable<(Field, string)> Cases(RulebookFinding finding) =>
        from each in Assert.Single(finding.Cases).Fields
        from value in each.Values
        select (each.Field, value.Words?.Single() ?? FormattableString.Invariant($"{value.Low}"));
}
