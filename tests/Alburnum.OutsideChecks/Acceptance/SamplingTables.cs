using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Acceptance;

[Transcription]
public class SamplingTables
{
    private const string Standard = "MIL-STD-105E, 10 May 1989";

    private static readonly SamplingStandard Read = new FactLibrary(Repository.At("data")).Sampling;
    private static readonly AttributeTables Tables = Read.Tables;

    // Preferred numbers behind the standard: sample sizes 2, 3, 5, 8, 13, … and AQLs step by about 10^(1/5).
    private static IEnumerable<(PlanRow Row, double Aql, PlanNumbers Numbers)> Plans(Severity severity) =>
        from row in Tables.Rows(severity)
        from column in Enumerable.Range(0, Tables.AqlsPercent.Count)
        where row.Cells[column] is PlanNumbers
        select (row, Tables.AqlsPercent[column], (PlanNumbers)row.Cells[column]);

    [Fact]
    [Computed]
    [Published(Standard, "tables I and II-A, at second hand")]
    public void A_lot_of_500_at_level_II_and_AQL_10_is_judged_on_50_pieces()
    {
        var plan = Tables.Find(500, InspectionLevel.II, 10);

        Assert.Equal(('H', 50, 10, 11), Numbers(plan));
    }

    [Fact]
    [Computed]
    [Published(Standard, "tables I and II-A, at second hand")]
    public void A_lot_of_1000_at_AQL_25_follows_the_arrow_up_to_50_pieces()
    {
        var plan = Tables.Find(1000, InspectionLevel.II, 25);

        Assert.Equal('J', plan.CodeLetter);
        Assert.Equal(('H', 50, 21, 22), Numbers(plan));
        Assert.Equal(LotOutcome.Accepted, plan.Outcome(21));
        Assert.Equal(LotOutcome.Rejected, plan.Outcome(22));
    }

    [Fact]
    [Computed]
    [Published(Standard, "tables I and II-A, at second hand")]
    public void A_lot_of_8_at_AQL_10_follows_the_arrow_down_and_is_sampled()
    {
        var plan = Tables.Find(8, InspectionLevel.II, 10);

        Assert.Equal(('C', 5, 1, 2), Numbers(plan));
        Assert.False(plan.IsEveryPieceInspected);
    }

    [Fact]
    [Computed]
    [Published(Standard, "tables I and II-A with their note on samples as large as the lot, at second hand")]
    public void A_lot_of_3_at_AQL_4_is_inspected_whole()
    {
        var plan = Tables.Find(3, InspectionLevel.II, 4.0);

        Assert.Equal(('B', 3, 0, 1), Numbers(plan));
        Assert.True(plan.IsEveryPieceInspected);
    }

    [Fact]
    [Published(Standard, "table II-C, at second hand")]
    public void Reduced_inspection_of_a_lot_of_1000_at_AQL_10_leaves_a_gap()
    {
        var plan = Tables.Find(1000, InspectionLevel.II, 10, Severity.Reduced);

        Assert.Equal(('J', 32, 7, 10), Numbers(plan));
    }

    [Fact]
    [Computed]
    [Published(Standard, "tables I and II-A, arrows followed by another program; at second hand")]
    public void Every_resolved_plan_of_the_reference_list_is_found()
    {
        var lines = File.ReadAllLines(
                Repository.At("tests", "Alburnum.OutsideChecks", "reference", "resolved-plans.csv")
            )
            .Skip(1)
            .ToList();

        Assert.Equal(90, lines.Count);
        foreach (var line in lines)
        {
            var f = line.Split(',');
            var bounds = f[0].Split('-').Select(Number).ToArray();
            foreach (var lot in bounds)
            {
                var plan = Tables.Find(lot, InspectionKeys.ReadLevel(f[1])!.Value, Aql(f[3]));
                Assert.Equal(f[2][0], plan.CodeLetter);
                Assert.Equal(
                    (Math.Min(Number(f[4]), lot), Number(f[5]), Number(f[6])),
                    (plan.Plan.SampleSize, plan.Plan.AcceptanceNumber, plan.Plan.RejectionNumber)
                );
            }
        }
    }

    [Theory]
    [Computed]
    [InlineData(Severity.Normal)]
    [InlineData(Severity.Tightened)]
    [WorkedOut("the tables are built on constant sample size × AQL along a diagonal: one acceptance number each")]
    public void The_acceptance_number_depends_on_sample_size_times_AQL_alone(Severity severity)
    {
        // Letters run in steps of 10^(1/5) as the AQLs do, so a diagonal of the table has one acceptance number.
        var rows = Tables.Rows(severity).ToList();
        var diagonals = Plans(severity)
            .Where(plan => plan.Row.Letter != 'S')
            .GroupBy(
                plan => rows.IndexOf(plan.Row) + Tables.AqlsPercent.ToList().IndexOf(plan.Aql),
                plan => plan.Numbers
            );

        Assert.All(diagonals, diagonal => Assert.Single(diagonal.Distinct()));
    }

    [Fact]
    [Computed]
    [WorkedOut("Poisson probabilities of every cell, tightened against normal at the same row and column")]
    public void Tightened_inspection_is_never_easier_than_normal()
    {
        foreach (var letter in Tables.Rows(Severity.Normal).Select(row => row.Letter))
        foreach (var aql in Tables.AqlsPercent)
        {
            var (normalRow, normal) = Tables.Follow(letter, aql, Severity.Normal)!.Value;
            var (tightRow, tight) = Tables.Follow(letter, aql, Severity.Tightened)!.Value;
            // At the limiting quality of the normal plan, tightened accepts no more lots.
            var limit = LimitingDefects(normal.Accept) / normalRow.SampleSize;
            Assert.True(
                Poisson.AtMost(tight.Accept, limit * tightRow.SampleSize) <= 0.1 + 1e-9,
                $"letter {letter}, AQL {aql}"
            );
        }
    }

    [Fact]
    [Computed]
    [WorkedOut("reduced samples are about two fifths of normal ones, and reduced inspection rejects fewer good lots")]
    public void Reduced_inspection_cuts_less_and_rejects_fewer_lots_at_the_AQL()
    {
        foreach (var (row, aql, numbers) in Plans(Severity.Reduced))
        {
            var normal = Tables.Rows(Severity.Normal).First(other => other.Letter == row.Letter);
            Assert.True(row.SampleSize <= normal.SampleSize);
            Assert.InRange(Poisson.AtMost(numbers.Reject - 1, row.SampleSize * aql / 100), 0.86, 1);
        }
    }

    [Fact]
    [Computed]
    [IndependentProgram(
        SciPyReference.Program,
        "tests/Alburnum.OutsideChecks/reference/acceptance_cells.py, output stored beside it"
    )]
    public void Every_cell_has_the_acceptance_at_its_AQL_and_the_limiting_quality_of_another_program()
    {
        var lines = File.ReadAllLines(
                Repository.At("tests", "Alburnum.OutsideChecks", "reference", "acceptance-cells.csv")
            )
            .Skip(2)
            .ToList();
        Assert.Equal(Enum.GetValues<Severity>().Sum(severity => Plans(severity).Count()), lines.Count);
        foreach (var line in lines)
        {
            var f = line.Split(',');
            var severity = InspectionKeys.ReadSeverity(f[0])!.Value;
            var (row, numbers) = Tables.Follow(f[1][0], Aql(f[2]), severity)!.Value;
            Assert.Equal((f[1][0], Number(f[3]), Number(f[4])), (row.Letter, row.SampleSize, numbers.Reject - 1));
            var plan = new SingleSamplingPlan(row.SampleSize, numbers.Accept, numbers.Reject);
            Supply supply = Aql(f[2]) > IndexedPlan.GreatestPercentAql ? new DefectsPerPiece() : new SteadyProcess();
            Assert.Equal(Aql(f[5]), plan.Acceptance(Aql(f[2]) / 100, supply), 1e-10);
            Assert.Equal(0.1, plan.Acceptance(Aql(f[6]), supply), 1e-10);
            // Where the limit is a share, the search finds it too.
            if (Aql(f[6]) < 1)
                Assert.Equal(Aql(f[6]), OperatingCharacteristic.ShareAccepted(plan, supply, 0.1), 1e-10);
        }
    }

    /// <summary>Mean number of defects that a sample with this acceptance number passes one time in ten: half a chi-squared quantile.</summary>
    private static double LimitingDefects(int accept) =>
        MathNet.Numerics.Distributions.ChiSquared.InvCDF(2 * (accept + 1), 0.9) / 2;

    private static (char Letter, int Sample, int Accept, int Reject) Numbers(IndexedPlan plan) =>
        (plan.UsedLetter, plan.Plan.SampleSize, plan.Plan.AcceptanceNumber, plan.Plan.RejectionNumber);

    private static int Number(string text) => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static double Aql(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
