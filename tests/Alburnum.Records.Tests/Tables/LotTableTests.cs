using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Tables;

public sealed class LotTableTests : IDisposable
{
    private const string Names = "lot,pieces,cut,failures,reduction_agreed,begins_again\n";
    private static readonly LotSequence Sequence = Level(new FactLibrary(Repository.At("data")).Sampling);
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private static LotSequence Level(SamplingStandard standard) =>
        new(standard.Tables, standard.Switching, InspectionLevel.II, 10);

    private IReadOnlyList<LotStep> Follow(string rows, string names = Names) =>
        LotTable.Follow(Table.Open(_folder.Write("lots.csv", names + rows), null), Sequence);

    private string Refusal(string rows, string names = Names) =>
        Assert.Throws<InputRefusedException>(() => Follow(rows, names)).Message;

    [Fact]
    public void Two_rejected_lots_tighten_and_five_accepted_ones_relax()
    {
        // Lots of 500 at AQL 10: normal 50 with 10 allowed, tightened 50 with 8.
        var steps = Follow(
            "L1,500,50,11,,\nL2,500,50,12,,\n" + string.Concat(Enumerable.Range(3, 5).Select(i => $"L{i},500,50,8,,\n"))
        );

        Assert.Equal(
            [Severity.Normal, Severity.Normal, .. Enumerable.Repeat(Severity.Tightened, 5)],
            steps.Select(step => step.Plan.Severity)
        );
        Assert.Equal(8, steps[2].Plan.Plan.AcceptanceNumber);
        Assert.Equal(Severity.Normal, steps[^1].After.Severity);
        Assert.Equal(new AcceptedInARow(5), steps[^1].After.Reason);
    }

    [Fact]
    public void Reduced_inspection_cuts_less_once_it_is_agreed()
    {
        var ten = string.Concat(Enumerable.Range(1, 10).Select(i => $"L{i},500,50,1,yes,\n"));

        Assert.Equal(Severity.Reduced, Follow(ten)[^1].After.Severity);
        Assert.Equal(20, Follow(ten + "L11,500,20,1,yes,\n")[^1].Plan.Plan.SampleSize);
        Assert.Contains(
            "line 12, row \"L11\", field cut: found 50, expected 20, the sample of reduced inspection",
            Refusal(ten + "L11,500,50,1,yes,\n"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void After_a_stop_no_lot_is_judged_until_inspection_begins_again()
    {
        // Rejected, then one accepted, in turn: never five accepted in a row, so the fifth rejected on tightened inspection stops it.
        var rows =
            "L1,500,50,11,,\nL2,500,50,11,,\n"
            + string.Concat(Enumerable.Range(3, 9).Select(i => $"L{i},500,50,{(i % 2 == 0 ? 0 : 9)},,\n"));

        Assert.True(Follow(rows)[^1].After.IsStopped);
        Assert.Contains(
            "row \"L12\", field begins_again: found no, expected yes, once the cause has been put right",
            Refusal(rows + "L12,500,50,0,,\n"),
            StringComparison.Ordinal
        );
        var again = Follow(rows + "L12,500,50,0,,yes\n")[^1];
        Assert.Equal(Severity.Tightened, again.Plan.Severity);
        Assert.False(again.After.IsStopped);
        Assert.Contains("acceptance had not stopped", Refusal("L1,500,50,0,,yes\n"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("L1,500,50,51,,\n", "line 2, row \"L1\", field failures: found 51, expected at most the 50 pieces")]
    [InlineData("L1,1,1,0,,\n", "field pieces: found 1, expected 2 or more, the smallest lot of the tables")]
    [InlineData("L1,500,50,3,,\nL1,500,50,3,,\n", "line 3, field lot: found \"L1\", already on line 2")]
    [InlineData("L1,500,50,2.5,,\n", "field failures: found \"2.5\", expected a whole number, 0 to 100000000 failures")]
    [InlineData("L1,500,50,-1,,\n", "field failures: found \"-1\", expected a whole number, 0 to")]
    [InlineData("L1,500,50,1,perhaps,\n", "field reduction_agreed: found \"perhaps\", expected yes or no")]
    [InlineData("", "no lots")]
    public void Rows_that_do_not_fit_are_refused_in_words(string rows, string said) =>
        Assert.Contains(said, Refusal(rows), StringComparison.Ordinal);
}
